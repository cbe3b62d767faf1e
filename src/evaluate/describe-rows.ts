import type { Finding, Result } from "../model/index.js";
import {
  isJsonObject,
  type JsonObject,
  type PreparedRequirement,
  type PreparedStep,
  type Row,
  type RowWords,
  readMember,
  sayPlainly,
  weighRow,
} from "../steps/index.js";
import { CONSEQUENCES, type Consequence } from "../terms/index.js";
import type { AssessmentWords, FindingParams } from "../words/index.js";
import { makeFingerprint } from "./fingerprint.js";
import type { BrokenPair, Judgement } from "./judgement.js";
import { findPosition } from "./positions.js";
import type { PreparedPolicy } from "./prepared-policy.js";
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
  for (const place of entries) pointers.push(`/steps/${place}`);
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
  const result = beginResult(row);
  addWords(result, words);
  if (row.without !== undefined) result.without = row.without;
  if (row.adopted !== undefined) result.adopted = row.adopted;
  if (row.attested) result.evidence = "attested";
  result.pointers = pointers;
  if (!isWhole(result)) throw new Error("a result lacks what every result has");
  return result;
}

/** The part of a result that comes before its words. */
function beginResult({
  requirement,
  part,
  outcome,
  undecidedFor,
  notApplicableFor,
  consequence,
}: Row): Partial<Result> {
  const { step, name } = requirement;
  const reason = undecidedFor ?? notApplicableFor;
  // Why: most results begin like this, and a literal is made at once where keys that are added one by one move it about.
  if (step !== undefined && part === undefined && reason === undefined) {
    return { step, requirement: name, outcome, consequence };
  }
  const result: Partial<Result> = nameAsker(requirement);
  if (part !== undefined) result.part = part;
  result.requirement = name;
  result.outcome = outcome;
  if (reason !== undefined) result.reason = reason;
  result.consequence = consequence;
  return result;
}

/** Words may be shared with other records, so nothing of them is handed out. */
function addWords(result: Partial<Result>, { observed, span, accept, margin, confidence }: RowWords): void {
  if (observed !== undefined) result.observed = observed;
  if (span !== undefined) result.span = { from: span.from, to: span.to, ends: span.ends };
  if (accept !== undefined) result.accept = accept;
  if (margin !== undefined) result.margin = margin;
  if (confidence !== undefined) result.confidence = confidence;
}

function isWhole(result: Partial<Result>): result is Result {
  const { requirement, outcome, consequence, pointers } = result;
  return requirement !== undefined && outcome !== undefined && consequence !== undefined && pointers !== undefined;
}

/** What asks: a step, an interval or a rule; nothing where the check itself does. */
function nameAsker({ kind, step, label }: PreparedRequirement): Pick<Result, "step" | "interval" | "rule"> {
  if (step !== undefined) return { step };
  if (label === undefined) return {};
  return kind === "interval" ? { interval: label } : { rule: label };
}

/** What is within or not applicable is no finding, nor is what a form does not hold yet. */
export function isFinding({ outcome, undecidedFor }: Row): boolean {
  return outcome !== "within" && outcome !== "not-applicable" && undecidedFor !== "not-yet";
}

/** The findings of a row that is one: one, or one for each broken pair of an order. */
export function makeRowFindings(
  described: DescribedRow,
  judgement: Judgement,
  policy: PreparedPolicy,
  words: AssessmentWords,
): readonly Finding[] {
  const { row } = described;
  if (row.requirement.name === "order" && row.outcome === "outside") {
    return judgement.brokenPairs.map((pair) => makeFinding(described, judgement, policy, pair, words));
  }
  return [makeFinding(described, judgement, policy, undefined, words)];
}

function makeFinding(
  { row, words, pointers }: DescribedRow,
  { envelope }: Judgement,
  policy: PreparedPolicy,
  pair: BrokenPair | undefined,
  catalogue: AssessmentWords,
): Finding {
  const { requirement, outcome } = row;
  if (outcome === "within" || outcome === "not-applicable") throw new Error("what is within is no finding");
  const params = collectParams(row, words, pair);
  const code = `${requirement.kind}/${requirement.name}-${outcome}`;
  const subject = envelope?.subjectId ?? "";
  const defect = pair?.early ?? row.details?.defect;
  const pointer =
    pair === undefined ? (pointers[0] ?? (requirement.kind === "rule" ? "" : "/steps")) : `/steps/${pair.lateEntry}`;
  // Why: one key after the other, as in a result.
  const finding: Partial<Finding> = { code };
  Object.assign(finding, pair === undefined ? nameAsker(requirement) : { step: pair.late });
  if (row.part !== undefined) finding.part = row.part;
  finding.requirement = requirement.name;
  finding.outcome = outcome;
  if (row.undecidedFor !== undefined) finding.reason = row.undecidedFor;
  finding.consequence = nameWeight(weighRow(row, policy.gapsAsOutside));
  finding.pointer = pointer;
  Object.assign(finding, findPosition(policy.plan, requirement.key));
  finding.params = params;
  if (requirement.plan.basis !== undefined) finding.basis = requirement.plan.basis;
  finding.message = describeMessage(row, params, catalogue);
  finding.fingerprint = makeFingerprint({
    policy: policy.plan.policy.id,
    subject,
    part: row.part,
    step: pair?.late ?? requirement.step ?? requirement.label,
    requirement: requirement.name,
    code,
    defect,
  });
  if (!isWholeFinding(finding)) throw new Error("a finding lacks what every finding has");
  return finding;
}

function isWholeFinding(finding: Partial<Finding>): finding is Finding {
  const { code, consequence, pointer, params, message, fingerprint } = finding;
  return [code, consequence, pointer, params, message, fingerprint].every((one) => one !== undefined);
}

function collectParams(row: Row, { observed, accept }: RowWords, pair: BrokenPair | undefined): Record<string, string> {
  const params: Record<string, string> = { ...row.details };
  if (observed !== undefined) params.observed = observed;
  if (accept !== undefined) params.accept = accept;
  if (pair !== undefined) {
    params.late = pair.late;
    params.early = pair.early;
  }
  if (row.undecidedFor !== undefined) params.reason = row.undecidedFor;
  return params;
}

function describeMessage(
  { requirement, outcome, undecidedFor }: Row,
  params: Readonly<Record<string, string>>,
  { findings, limits }: AssessmentWords,
): string {
  const { observed, accept = "", defect, late, early, forbids } = params;
  if (outcome !== "outside" && outcome !== "caution") {
    return findings.undecided(requirement.name, undecidedFor, observed);
  }
  const said: FindingParams = {
    outcome,
    observed,
    accept,
    never: observed === limits.didNotOccur,
    quantity: requirement.tolerance?.dimension,
    defect,
    late,
    early,
    forbids,
  };
  return findings.decided[requirement.name](said);
}

/** The consequence at a position in `CONSEQUENCES`. */
export function nameWeight(weight: number): Consequence {
  return CONSEQUENCES[weight] ?? "note";
}
