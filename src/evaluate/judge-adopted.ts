import { type CalendarDate, compareDates, parseDate } from "../quantities/index.js";
import { type JudgeContext, makeNotApplicable, type PreparedStep, type Row, worseRow } from "../steps/index.js";
import { weighConsequence } from "../terms/index.js";
import { judgeStep, type PlacedEntry } from "./judge-step.js";
import type { Remark } from "./judgement.js";
import type { PreparedAdoption, PreparedCheck } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

const NOTE = weighConsequence("note");

/** Whether an adoption applies to a record: by the record's own date, and by its scope, which a missing fact leaves open. */
export type AdoptionState = "applies" | "may-apply" | "does-not-apply";

export function readAdoptionState({ plan }: PreparedAdoption, context: JudgeContext): AdoptionState {
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
  const naming = check.adoptions.filter(({ instead }) => instead === place);
  return naming.length === 0 || naming.some((adoption) => readAdoptionState(adoption, context) !== "does-not-apply");
}

/**
 * Judges one step with the adoptions that name it. Where one applies, its limits decide and the result keeps what the outcome
 * would have been without it; where its scope cannot be told, both are judged and the worse stands.
 */
export function judgeAdoptedStep(
  step: PreparedStep,
  place: number,
  check: PreparedCheck,
  entries: readonly PlacedEntry[],
  envelope: Envelope,
  context: JudgeContext,
): Row[] {
  const plain = judgeStep(step, entries, envelope, context);
  const adoptions = check.adoptions.filter((adoption) => adoption.place === place);
  for (const adoption of adoptions) {
    const state = readAdoptionState(adoption, context);
    if (state === "does-not-apply") continue;
    const { alternative } = adoption;
    if (alternative === undefined) return plain.map((row) => omitRow(row, adoption, state));
    const adopted = judgeStep(alternative, entries, envelope, context);
    return plain.map((row, index) => adoptRow(row, adopted[index] ?? row, adoption, state));
  }
  return plain;
}

function omitRow(row: Row, adoption: PreparedAdoption, state: AdoptionState): Row {
  if (!adoption.covers(row.requirement.name)) return row;
  if (state === "may-apply") return markAdopted(row, row.outcome, adoption);
  const omitted = makeNotApplicable(row.requirement, "omitted-by-adoption");
  omitted.part = row.part;
  omitted.member = row.member;
  omitted.entries = row.entries;
  return markAdopted(omitted, row.outcome, adoption);
}

function adoptRow(row: Row, adopted: Row, adoption: PreparedAdoption, state: AdoptionState): Row {
  const standing = state === "applies" ? adopted : worseRow(row, adopted);
  return adoption.covers(row.requirement.name) ? markAdopted(standing, row.outcome, adoption) : standing;
}

function markAdopted(row: Row, without: Row["outcome"], { plan }: PreparedAdoption): Row {
  row.without = without;
  row.adopted = plan.id;
  return row;
}

/** One note for each adopted result, so that no departure passes in silence. */
export function remarkAdoption(row: Row, check: PreparedCheck): readonly Remark[] {
  const adoption = check.adoptions.find(({ plan }) => plan.id === row.adopted);
  if (adoption === undefined) return [];
  const { id, order, until = "further notice" } = adoption.plan;
  return [
    {
      code: "step/adopted",
      weight: NOTE,
      pointer: row.entries[0] === undefined ? "/steps" : `/steps/${row.entries[0]}`,
      step: row.requirement.step,
      part: row.part,
      requirement: row.requirement,
      params: { adoption: id, order, until, without: row.without ?? row.outcome },
    },
  ];
}
