import { compareRational, type Dimension, type Quantity, rationalOfQuanta } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import { firstReason } from "./first-reason.js";
import type { JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { bandOf, doubtReading, FINER_THAN_DIVISION, judgeQuantity } from "./judge-quantity.js";
import {
  type Candidates,
  canAllShow,
  type InstrumentChoice,
  NO_INSTRUMENTS,
  type PreparedInstrument,
  selectCandidates,
} from "./prepared-instrument.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import { makeRow, type Row } from "./row.js";

/** The note that a value moved the other way by no more than a division and counts as no change. */
const COUNTED_AS_NO_CHANGE = "hold/counted-as-no-change" as const;

/**
 * Judges the change from `start` to `end`: a drop, a rise, or its size either way; none is ever negative.
 *
 * Movement the other way of up to one division counts as 0, with a note; more, and any where no division is stated, is undecided.
 */
export function judgeChange(
  change: PreparedRequirement,
  dimension: Dimension,
  entry: JsonObject | undefined,
  member: JsonObject | undefined,
  choice: InstrumentChoice | undefined,
  context: JudgeContext,
): Row {
  const band = bandOf(change, member, context);
  const unlimited = typeof band === "string" ? band : undefined;
  if (entry === undefined) return makeRow(change, "undecided", firstReason(unlimited, "missing"));
  const start = context.readQuantity(entry.start, dimension);
  const end = context.readQuantity(entry.end, dimension);
  if (!start.ok || !end.ok) {
    const fault = firstReason(start.ok ? undefined : start.fault, end.ok ? undefined : end.fault);
    const said = fault === "missing" && entry.result === "not-done" ? "not-done" : fault;
    return makeRow(change, "undecided", firstReason(unlimited, said));
  }
  const { unit } = start.quantity;
  const candidates = selectCandidates(choice, entry, context);
  if (end.quantity.unit.family !== unit.family) {
    const doubt = doubtChange(start.quantity, end.quantity, candidates);
    return makeRow(change, "undecided", firstReason(firstReason(unlimited, doubt), "mixed-units"));
  }
  const signed = end.quantity.quanta - start.quantity.quanta;
  const moved = change.name === "rise" ? signed : change.name === "drop" ? -signed : Math.abs(signed);
  if (!Number.isSafeInteger(moved)) return makeRow(change, "undecided", firstReason(unlimited, "unreadable"));
  const instruments = candidates ?? NO_INSTRUMENTS;
  const backwards = moved < 0 && !isWithinDivision(-moved, unit, instruments);
  const doubt = doubtChange(start.quantity, end.quantity, candidates);
  // Why: + 0 turns the -0 of an unchanged value into 0, which prints without a sign.
  const quantity: Quantity = { quanta: Math.max(moved, 0) + 0, unit };
  const row = judgeQuantity(change, quantity, band, backwards ? firstReason(doubt, "moved-the-wrong-way") : doubt);
  if (backwards) row.quanta = moved;
  const isFiner = !canAllShow(instruments, start.quantity) || !canAllShow(instruments, end.quantity);
  if (isFiner || (moved < 0 && !backwards)) row.notes = listNotes(moved < 0 && !backwards, isFiner);
  return row;
}

/** True where every instrument that may have been read has a division, and none a smaller one. */
function isWithinDivision(quanta: number, unit: Quantity["unit"], instruments: readonly PreparedInstrument[]): boolean {
  const value = rationalOfQuanta(quanta, unit.family);
  return (
    instruments.length > 0 &&
    instruments.every(({ exact: { division } }) => division !== undefined && compareRational(value, division) <= 0)
  );
}

function doubtChange(start: Quantity, end: Quantity, instruments: Candidates): UndecidedReason | undefined {
  return firstReason(doubtReading(start, instruments), doubtReading(end, instruments));
}

function listNotes(isCountedAsNone: boolean, isFiner: boolean): Row["notes"] {
  return [...(isCountedAsNone ? [COUNTED_AS_NO_CHANGE] : []), ...(isFiner ? [FINER_THAN_DIVISION] : [])];
}
