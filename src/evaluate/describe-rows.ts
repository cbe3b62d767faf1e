import type { Result } from "../model/index.js";
import {
  isJsonObject,
  type JsonObject,
  type PreparedRequirement,
  type PreparedStep,
  type Row,
  type RowWords,
  readMember,
  type SpanWords,
  sayPlainly,
} from "../steps/index.js";
import type { AssessmentWords } from "../words/index.js";
import type { Judgement } from "./judgement.js";
import { pointToStep } from "./point-to-step.js";
import type { Envelope } from "./read-envelope.js";

/** One row with everything that its words are made from. */
export interface DescribedRow {
  readonly row: Row;
  readonly words: RowWords;
  /** Made for this row alone, so that they can be handed out. */
  readonly pointers: string[];
}

/** Finds the words of one row; `step` is undefined where the check itself asks. */
export function describeRow(
  row: Row,
  step: PreparedStep | undefined,
  judgement: Judgement,
  words: AssessmentWords,
): DescribedRow {
  const { envelope, context } = judgement;
  if (envelope === undefined || context === undefined) throw new Error("a row is described without its record");
  if (step !== undefined) {
    const entry = row.entries[0] === undefined ? undefined : envelope.steps[row.entries[0]]?.entry;
    const said = step.describe(row, entry, findMember(row, step, envelope), context, words.limits);
    return { row, words: said, pointers: pointToEntries(row) };
  }
  return { row, words: describeOwnWords(row, judgement, words), pointers: pointTo(row) };
}

function pointToEntries({ entries }: Row): string[] {
  const pointers: string[] = [];
  for (const place of entries) pointers.push(pointToStep(place));
  return pointers;
}

function pointTo(row: Row): string[] {
  if (row.pointer !== undefined) return [row.pointer];
  if (row.requirement.name === "competence") return ["/by/competence"];
  return pointToEntries(row);
}

/** The words of what the check itself asks: competence, order, intervals, rules. */
function describeOwnWords(
  { requirement, details = {} }: Row,
  { check }: Judgement,
  { limits, rules }: AssessmentWords,
): RowWords {
  switch (requirement.name) {
    case "competence": {
      const accept = limits.anyOf(check?.plan.competence ?? []);
      return sayPlainly(details.competence, accept);
    }
    case "due": {
      const good = details.due === undefined ? "" : limits.goodTo(details.due);
      return sayPlainly(details.date, details.every === undefined ? undefined : limits.notOlder(details.every) + good);
    }
    case "rule": {
      const rule = check?.rules.find(({ plan }) => plan.rule === requirement.label);
      return sayPlainly(undefined, rule?.describe(rules));
    }
    default:
      return sayPlainly(undefined, limits.orders[check?.plan.order ?? "any"]);
  }
}

function findMember(row: Row, step: PreparedStep, { subject }: Envelope): JsonObject | undefined {
  const list = row.member === -1 ? undefined : readMember(subject, step.plan.each?.slice("subject.".length) ?? "");
  const member: unknown = Array.isArray(list) ? list[row.member] : undefined;
  return isJsonObject(member) ? member : undefined;
}

/**
 * The result of one requirement, passes included; its keys in the order in which they are printed.
 *
 * Why: one key after the other, since spreading six objects into one took most of an evaluation's time.
 */
export function makeResult({ row, words, pointers }: DescribedRow): Result {
  const plain = makePlainResult(row, words, pointers);
  if (plain !== undefined) return plain;
  const result: Partial<Result> = nameAsker(row.requirement);
  nameOutcome(result, row);
  addWords(result, words);
  if (row.without !== undefined) result.without = row.without;
  if (row.adopted !== undefined) result.adopted = row.adopted.id;
  if (row.attested) result.evidence = "attested";
  result.pointers = pointers;
  if (!isWhole(result)) throw new Error("a result lacks what every result has");
  return result;
}

/**
 * The result of a step that is decided, of one of the forms that most results have; undefined for any other.
 *
 * Why: a literal is made at once where keys that are added one by one move what is there about.
 */
function makePlainResult(row: Row, words: RowWords, pointers: string[]): Result | undefined {
  const { requirement, part, outcome, undecidedFor, notApplicableFor, consequence } = row;
  const { step, name } = requirement;
  const { observed, accept, margin, span, confidence } = words;
  if (step === undefined || observed === undefined || accept === undefined || confidence !== undefined)
    return undefined;
  if (undecidedFor !== undefined || notApplicableFor !== undefined) return undefined;
  if (row.without !== undefined || row.adopted !== undefined || row.attested) return undefined;
  if (margin === undefined) {
    if (span !== undefined) return undefined;
    return part === undefined
      ? { step, requirement: name, outcome, consequence, observed, accept, pointers }
      : { step, part, requirement: name, outcome, consequence, observed, accept, pointers };
  }
  if (part !== undefined) return undefined;
  return span === undefined
    ? { step, requirement: name, outcome, consequence, observed, accept, margin, pointers }
    : { step, requirement: name, outcome, consequence, observed, span: copySpan(span), accept, margin, pointers };
}

/** Words may be shared with other records, so nothing of them is handed out. */
function copySpan({ from, to, ends }: SpanWords): SpanWords {
  return { from, to, ends };
}

function nameOutcome(result: Partial<Result>, row: Row): void {
  const { requirement, part, outcome, undecidedFor, notApplicableFor, consequence } = row;
  const reason = undecidedFor ?? notApplicableFor;
  if (part !== undefined) result.part = part;
  result.requirement = requirement.name;
  result.outcome = outcome;
  if (reason !== undefined) result.reason = reason;
  result.consequence = consequence;
}

function addWords(result: Partial<Result>, { observed, span, accept, margin, confidence }: RowWords): void {
  if (observed !== undefined) result.observed = observed;
  if (span !== undefined) result.span = copySpan(span);
  if (accept !== undefined) result.accept = accept;
  if (margin !== undefined) result.margin = margin;
  if (confidence !== undefined) result.confidence = confidence;
}

function isWhole(result: Partial<Result>): result is Result {
  const { requirement, outcome, consequence, pointers } = result;
  return requirement !== undefined && outcome !== undefined && consequence !== undefined && pointers !== undefined;
}

/** What asks: a step, an interval or a rule; nothing where the check itself does. */
export function nameAsker({ kind, step, label }: PreparedRequirement): Pick<Result, "step" | "interval" | "rule"> {
  if (step !== undefined) return { step };
  if (label === undefined) return {};
  return kind === "interval" ? { interval: label } : { rule: label };
}
