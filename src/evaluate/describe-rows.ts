import type { Finding, Result } from "../model/index.js";
import {
  isJsonObject,
  type JsonObject,
  type PreparedRequirement,
  type PreparedStep,
  type Row,
  type RowWords,
  readMember,
  weighRow,
} from "../steps/index.js";
import { CONSEQUENCES, type Consequence } from "../terms/index.js";
import { describeFinding, REASON_WORDS } from "./finding-words.js";
import { makeFingerprint } from "./fingerprint.js";
import type { BrokenPair, Judgement } from "./judgement.js";
import { findPosition } from "./positions.js";
import type { PreparedPolicy } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

/** One row with everything that its words are made from. */
export interface DescribedRow {
  readonly row: Row;
  readonly words: RowWords;
  readonly pointers: readonly string[];
}

/** Finds the words of one row; `step` is undefined where the check itself asks. */
export function describeRow(row: Row, step: PreparedStep | undefined, judgement: Judgement): DescribedRow {
  const { envelope, context } = judgement;
  if (envelope === undefined || context === undefined) throw new Error("a row is described without its record");
  if (step !== undefined) {
    const entry = row.entries[0] === undefined ? undefined : envelope.steps[row.entries[0]]?.entry;
    const words = step.describe(row, entry, findMember(row, step, envelope), context);
    return { row, words, pointers: row.entries.map((place) => `/steps/${place}`) };
  }
  return { row, words: describeOwnWords(row, judgement), pointers: pointTo(row) };
}

function pointTo(row: Row): readonly string[] {
  if (row.pointer !== undefined) return [row.pointer];
  if (row.requirement.name === "competence") return ["/by/competence"];
  return row.entries.map((place) => `/steps/${place}`);
}

/** The words of what the check itself asks: competence, order, intervals, rules. */
function describeOwnWords({ requirement, details = {} }: Row, { check }: Judgement): RowWords {
  switch (requirement.name) {
    case "competence": {
      const accept = (check?.plan.competence ?? []).map((name) => `\`${name}\``).join(" or ");
      return { ...(details.competence === undefined ? {} : { observed: details.competence }), accept };
    }
    case "due": {
      const good = details.due === undefined ? "" : ` (good to ${details.due})`;
      const accept = details.every === undefined ? {} : { accept: `at most ${details.every} old${good}` };
      return { ...(details.date === undefined ? {} : { observed: details.date }), ...accept };
    }
    case "rule": {
      const rule = check?.rules.find(({ plan }) => plan.rule === requirement.label);
      return rule === undefined ? {} : { accept: rule.words };
    }
    default:
      return { accept: ORDER_WORDS[check?.plan.order ?? "any"] };
  }
}

const ORDER_WORDS = {
  any: "each step after those that it names",
  position: "the steps as listed, by their places in the record",
  at: "the steps as listed, by their times",
} as const;

function findMember(row: Row, step: PreparedStep, { subject }: Envelope): JsonObject | undefined {
  const list = row.member === -1 ? undefined : readMember(subject, step.plan.each?.slice("subject.".length) ?? "");
  const member: unknown = Array.isArray(list) ? list[row.member] : undefined;
  return isJsonObject(member) ? member : undefined;
}

/** The result of one requirement, passes included. */
export function makeResult({ row, words, pointers }: DescribedRow): Result {
  const { name } = row.requirement;
  const reason = row.undecidedFor ?? row.notApplicableFor;
  return {
    ...nameAsker(row.requirement),
    ...(row.part === undefined ? {} : { part: row.part }),
    requirement: name,
    outcome: row.outcome,
    ...(reason === undefined ? {} : { reason }),
    consequence: row.consequence,
    ...words,
    ...(row.without === undefined ? {} : { without: row.without }),
    ...(row.adopted === undefined ? {} : { adopted: row.adopted }),
    ...(row.attested ? { evidence: "attested" } : {}),
    pointers: [...pointers],
  };
}

/** What asks: a step, an interval or a rule; nothing where the check itself does. */
function nameAsker({ kind, step, label }: PreparedRequirement): Pick<Result, "step" | "interval" | "rule"> {
  if (step !== undefined) return { step };
  if (label === undefined) return {};
  return kind === "interval" ? { interval: label } : { rule: label };
}

/** The findings of one row: none where it is within or not applicable, one for each broken pair of an order. */
export function makeRowFindings(
  described: DescribedRow,
  judgement: Judgement,
  policy: PreparedPolicy,
): readonly Finding[] {
  const { row } = described;
  if (row.outcome === "within" || row.outcome === "not-applicable" || row.undecidedFor === "not-yet") return [];
  if (row.requirement.name === "order" && row.outcome === "outside") {
    return judgement.brokenPairs.map((pair) => makeFinding(described, judgement, policy, pair));
  }
  return [makeFinding(described, judgement, policy, undefined)];
}

function makeFinding(
  { row, words, pointers }: DescribedRow,
  { envelope }: Judgement,
  policy: PreparedPolicy,
  pair: BrokenPair | undefined,
): Finding {
  const { requirement, outcome } = row;
  if (outcome === "within" || outcome === "not-applicable") throw new Error("what is within is no finding");
  const asker = pair === undefined ? nameAsker(requirement) : { step: pair.late };
  const params = collectParams(row, words, pair);
  const code = `${requirement.kind}/${requirement.name}-${outcome}`;
  const subject = envelope?.subjectId ?? "";
  const defect = pair?.early ?? row.details?.defect;
  const pointer =
    pair === undefined ? (pointers[0] ?? (requirement.kind === "rule" ? "" : "/steps")) : `/steps/${pair.lateEntry}`;
  const { reasonWords: _reasonWords, quantity: _quantity, ...data } = params;
  return {
    code,
    ...asker,
    ...(row.part === undefined ? {} : { part: row.part }),
    requirement: requirement.name,
    outcome,
    ...(row.undecidedFor === undefined ? {} : { reason: row.undecidedFor }),
    consequence: nameWeight(weighRow(row, policy.gapsAsOutside)),
    pointer,
    ...findPosition(policy.plan, requirement.key),
    params: data,
    ...(requirement.plan.basis === undefined ? {} : { basis: requirement.plan.basis }),
    message: describeFinding(requirement.name, outcome, params),
    fingerprint: makeFingerprint({
      policy: policy.plan.policy.id,
      subject,
      part: row.part,
      step: pair?.late ?? requirement.step ?? requirement.label,
      requirement: requirement.name,
      code,
      defect,
    }),
  };
}

function collectParams(row: Row, words: RowWords, pair: BrokenPair | undefined): Readonly<Record<string, string>> {
  const { observed, accept } = words;
  const quantity = row.requirement.tolerance?.dimension;
  return {
    ...row.details,
    ...(quantity === undefined ? {} : { quantity }),
    ...(observed === undefined ? {} : { observed }),
    ...(accept === undefined ? {} : { accept }),
    ...(pair === undefined ? {} : { late: pair.late, early: pair.early }),
    ...(row.undecidedFor === undefined
      ? {}
      : { reason: row.undecidedFor, reasonWords: REASON_WORDS[row.undecidedFor] }),
  };
}

/** The consequence at a position in `CONSEQUENCES`. */
export function nameWeight(weight: number): Consequence {
  return CONSEQUENCES[weight] ?? "note";
}
