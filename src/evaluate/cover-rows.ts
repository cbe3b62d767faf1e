import type { AdoptionStanding } from "../model/index.js";
import { makeNotApplicable, type PreparedStep, type Row, weighRow, worseRow } from "../steps/index.js";
import { weighConsequence } from "../terms/index.js";
import type { AdoptionState } from "./adoption-state.js";
import type { Remark } from "./judgement.js";

const NOTE = weighConsequence("note");

/** A row, and the step by which it was judged, which knows its words. */
export interface AskedRow {
  readonly row: Row;
  readonly step: PreparedStep | undefined;
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
  gapsAsOutside: boolean,
): readonly AskedRow[] {
  const worst = (one: AskedRow, other: AskedRow) => worseOf(one, other, gapsAsOutside);
  const isRestored = state !== "applies" && parents.some(({ row }) => covers(row.requirement.name));
  const own = asked.map((one) => {
    const other = findTwin(one, parents);
    if (other === undefined) return one;
    // Why: a drop rests on its start and its time; what the order covers no more, the rest of the step is judged by as well.
    if (!covers(one.row.requirement.name)) return isRestored ? worst(one, other) : one;
    if (state === "does-not-apply") return worst(other, one);
    return markAdopted(state === "applies" ? one : worst(one, other), other.row.outcome, adoption);
  });
  const lost = parents.filter((one) => covers(one.row.requirement.name) && findTwin(one, asked) === undefined);
  return [...own, ...omitRows(lost, adoption, state, covers)];
}

/** The row about the same requirement of the same member. */
export function findTwin({ row }: AskedRow, others: readonly AskedRow[]): AskedRow | undefined {
  return others.find((other) => other.row.requirement.name === row.requirement.name && other.row.member === row.member);
}

/** The worse of two rows, which weighs no less than either, though it may be the one that fails more mildly. */
export function worseOf(one: AskedRow, other: AskedRow, gapsAsOutside: boolean): AskedRow {
  const worse = worseRow(one.row, other.row) === one.row ? one : other;
  worse.row.leastWeight = Math.max(
    worse.row.leastWeight,
    weighRow(one.row, gapsAsOutside),
    weighRow(other.row, gapsAsOutside),
  );
  return worse;
}

export function markAdopted(one: AskedRow, without: Row["outcome"], adoption: AdoptionStanding): AskedRow {
  one.row.without = without;
  one.row.adopted = adoption;
  return one;
}

/** One note for each adopted result, so that no departure passes in silence. */
export function remarkAdoption(row: Row): readonly Remark[] {
  if (row.adopted === undefined) return [];
  const { id, order, until = "" } = row.adopted;
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
