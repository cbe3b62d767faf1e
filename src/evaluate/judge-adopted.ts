import type { AdoptionStanding } from "../model/index.js";
import { type CalendarDate, compareDates, parseDate } from "../quantities/index.js";
import {
  type JudgeContext,
  makeNotApplicable,
  type PreparedStep,
  type Row,
  weighRow,
  worseRow,
} from "../steps/index.js";
import { weighConsequence } from "../terms/index.js";
import { judgeStep, type PlacedEntry } from "./judge-step.js";
import type { Remark } from "./judgement.js";
import type { PreparedCheck } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

const NOTE = weighConsequence("note");

/** Whether an adoption applies to a record: by the record's own date, and by its scope, which a missing fact leaves open. */
export type AdoptionState = "applies" | "may-apply" | "does-not-apply";

export function readAdoptionState(plan: AdoptionStanding, context: JudgeContext): AdoptionState {
  const from = parseDate(plan.from);
  const until = plan.until === undefined ? undefined : parseDate(plan.until);
  if (from === undefined || isAfter(from, context.recordDate)) return "does-not-apply";
  if (until !== undefined && isAfter(context.recordDate, until)) return "does-not-apply";
  const scope = plan.only === undefined ? true : context.scopeState(plan.only);
  if (scope === true) return "applies";
  return scope === false ? "does-not-apply" : "may-apply";
}

function isAfter(one: CalendarDate, other: CalendarDate): boolean {
  return compareDates(one, other) === 1;
}

/** A step that an adoption names as its `instead` is asked only while that adoption applies, or may. */
export function isAsked(place: number, check: PreparedCheck, context: JudgeContext): boolean {
  const asking = check.adoptionsAt[place]?.asking ?? [];
  return asking.length === 0 || asking.some(({ plan }) => readAdoptionState(plan, context) !== "does-not-apply");
}

/** A row, and the step by which it was judged, which knows its words. */
export interface AskedRow {
  readonly row: Row;
  readonly step: PreparedStep | undefined;
}

/**
 * Judges one step with the adoptions that name it. Where one applies, its limits decide and the result keeps what the outcome
 * would have been without it; where its scope cannot be told, both are judged and the worse stands. Where one that covers a
 * looser part of the policy does not apply, the parent's stands.
 */
export function judgeAdoptedStep(
  step: PreparedStep,
  place: number,
  check: PreparedCheck,
  entries: readonly PlacedEntry[],
  envelope: Envelope,
  context: JudgeContext,
): readonly AskedRow[] {
  const judge = (one: PreparedStep, recorded = entries): readonly AskedRow[] =>
    judgeStep(one, recorded, envelope, context).map((row) => ({ row, step: one }));
  const adoptions = check.adoptionsAt[place]?.naming ?? [];
  let asked = judge(step);
  for (const { plan, covers, otherwise } of adoptions) {
    if (otherwise === undefined) continue;
    // Why: what is recorded under a name that only this policy knows the step by is nothing to the parent.
    const known = entries.filter(({ entry }) => isKnownAs(otherwise, entry.step));
    asked = coverRows(asked, judge(otherwise, known), plan, readAdoptionState(plan, context), covers);
  }
  for (const { plan, covers, alternative, otherwise } of adoptions) {
    const state = readAdoptionState(plan, context);
    if (state === "does-not-apply" || otherwise !== undefined) continue;
    return alternative === undefined
      ? omitRows(asked, plan, state, covers)
      : adoptRows(asked, judge(alternative), plan, state, covers, step);
  }
  return asked;
}

function isKnownAs({ plan: { step, formerly } }: PreparedStep, name: unknown): boolean {
  return typeof name === "string" && [step, ...formerly].includes(name.trim());
}

type Covers = (requirement: string) => boolean;

/** Leaves rows out where an adoption applies; the results keep what they would have been. */
export function omitRows(
  asked: readonly AskedRow[],
  adoption: AdoptionStanding,
  state: AdoptionState,
  covers: Covers,
): readonly AskedRow[] {
  return asked.map((one) => {
    if (state === "does-not-apply" || !covers(one.row.requirement.name)) return one;
    return state === "applies" ? omitRow(one, adoption) : markAdopted(one, one.row.outcome, adoption);
  });
}

function omitRow({ row, step }: AskedRow, adoption: AdoptionStanding): AskedRow {
  const omitted = makeNotApplicable(row.requirement, "omitted-by-adoption");
  omitted.part = row.part;
  omitted.member = row.member;
  omitted.entries = row.entries;
  omitted.pointer = row.pointer;
  return markAdopted({ row: omitted, step }, row.outcome, adoption);
}

function adoptRows(
  asked: readonly AskedRow[],
  adopted: readonly AskedRow[],
  adoption: AdoptionStanding,
  state: AdoptionState,
  covers: Covers,
  step: PreparedStep,
): readonly AskedRow[] {
  return asked.map((one) => {
    const other = findTwin(one, adopted) ?? one;
    const standing = state === "applies" ? other : worseOf(one, other);
    // Why: what another order let lapse is not brought back by one that does not name it.
    if (!covers(one.row.requirement.name)) return one.step === step ? standing : worseOf(one, standing);
    return markAdopted(standing, one.row.outcome, adoption);
  });
}

/**
 * Puts the parent's rows in place of the policy's own, looser ones wherever the adoption that covers them does not apply. What
 * only the parent asks is left out while it applies; what only the policy asks is asked always.
 * Why the worse of both stands there: what the policy states tighter is not touched, and neither sees all that the other does.
 */
export function coverRows(
  asked: readonly AskedRow[],
  parents: readonly AskedRow[],
  adoption: AdoptionStanding,
  state: AdoptionState,
  covers: Covers,
): readonly AskedRow[] {
  const own = asked.map((one) => {
    const other = covers(one.row.requirement.name) ? findTwin(one, parents) : undefined;
    if (other === undefined) return one;
    if (state === "does-not-apply") return worseOf(other, one);
    return markAdopted(state === "applies" ? one : worseOf(one, other), other.row.outcome, adoption);
  });
  const lost = parents.filter((one) => covers(one.row.requirement.name) && findTwin(one, asked) === undefined);
  return [...own, ...omitRows(lost, adoption, state, covers)];
}

/** The row about the same requirement of the same member. */
function findTwin({ row }: AskedRow, others: readonly AskedRow[]): AskedRow | undefined {
  return others.find((other) => other.row.requirement.name === row.requirement.name && other.row.member === row.member);
}

/** The worse of two rows, which weighs no less than either. */
function worseOf(one: AskedRow, other: AskedRow): AskedRow {
  const worse = worseRow(one.row, other.row) === one.row ? one : other;
  worse.row.leastWeight = Math.max(worse.row.leastWeight, weighRow(one.row, false), weighRow(other.row, false));
  return worse;
}

function markAdopted(one: AskedRow, without: Row["outcome"], { id }: AdoptionStanding): AskedRow {
  one.row.without = without;
  one.row.adopted = id;
  return one;
}

/** One note for each adopted result, so that no departure passes in silence. */
export function remarkAdoption(row: Row, adoptions: readonly { readonly plan: AdoptionStanding }[]): readonly Remark[] {
  const adoption = adoptions.find(({ plan }) => plan.id === row.adopted);
  if (adoption === undefined) return [];
  const { id, order, until = "" } = adoption.plan;
  const { kind, step, label } = row.requirement;
  return [
    {
      code: kind === "interval" ? "interval/adopted" : "step/adopted",
      weight: NOTE,
      pointer: row.pointer ?? (row.entries[0] === undefined ? "/steps" : `/steps/${row.entries[0]}`),
      step,
      interval: step === undefined ? label : undefined,
      part: row.part,
      requirement: row.requirement,
      params: { adoption: id, order, until, without: row.without ?? row.outcome },
    },
  ];
}
