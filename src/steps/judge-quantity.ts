import { isBelowNothing, type Quantity } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import { firstReason } from "./first-reason.js";
import type { JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { type Candidates, canAllShow, type InstrumentChoice, selectCandidates } from "./prepared-instrument.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import { type Band, placeQuanta } from "./prepared-tolerance.js";
import { makeRow, type Row } from "./row.js";

/** The note that a reading lies between two divisions of its gauge. */
export const FINER_THAN_DIVISION = "step/finer-than-division" as const;

/** The band of a requirement that has limits; one without is a bug. */
export function bandOf(
  requirement: PreparedRequirement,
  member: JsonObject | undefined,
  context: JudgeContext,
): Band | UndecidedReason {
  if (requirement.tolerance === undefined) throw new Error(`${requirement.key} has no limits`);
  return requirement.tolerance.bandFor(member, context);
}

/** Why a quantity that was read cannot be trusted, apart from what its text says; undefined where nothing speaks against it. */
export function doubtReading(quantity: Quantity, instruments: Candidates): UndecidedReason | undefined {
  if (instruments === undefined) return "instrument-unknown";
  for (const instrument of instruments) {
    const { low, high } = instrument.rangeOf(quantity.unit.family);
    if (quantity.quanta < low || quantity.quanta > high) return "off-range";
  }
  return undefined;
}

/**
 * `conflicting` for less than nothing, such as a depth of -5 mm: a slip of the pen or of the gauge,
 * whatever an upper limit alone would say. Limits that state a lower end say themselves what they take.
 */
export function doubtBelowNothing(quantity: Quantity, band: Band | UndecidedReason): "conflicting" | undefined {
  if (typeof band === "string" || !isBelowNothing(quantity)) return undefined;
  return band.rangesOf(quantity.unit.family).accept.low === Number.NEGATIVE_INFINITY ? "conflicting" : undefined;
}

/**
 * Judges one value against a band: outside as recorded is settled first, then the first reason to doubt it, then the band.
 *
 * @param band the limits, or why none can be told
 * @param doubt why the value cannot be trusted
 */
export function judgeQuantity(
  requirement: PreparedRequirement,
  quantity: Quantity,
  band: Band | UndecidedReason,
  doubt: UndecidedReason | undefined,
): Row {
  const row =
    typeof band === "string"
      ? makeRow(requirement, "undecided", firstReason(band, doubt))
      : makeRow(requirement, placeQuanta(band.rangesOf(quantity.unit.family), quantity.quanta));
  if (doubt !== undefined && row.outcome !== "outside" && row.outcome !== "undecided") {
    row.outcome = "undecided";
    row.undecidedFor = doubt;
  }
  row.doubt = doubt;
  row.quanta = quantity.quanta;
  row.unit = quantity.unit;
  return row;
}

/** Reads a plain quantity of `entry` and judges it; what cannot be read is undecided with its reason. */
export function judgeSlot(
  requirement: PreparedRequirement,
  value: unknown,
  choice: InstrumentChoice | undefined,
  entry: JsonObject | undefined,
  member: JsonObject | undefined,
  context: JudgeContext,
): Row {
  const band = bandOf(requirement, member, context);
  const unlimited = typeof band === "string" ? band : undefined;
  if (entry === undefined) return makeRow(requirement, "undecided", firstReason(unlimited, "missing"));
  const dimension = requirement.tolerance?.dimension;
  if (dimension === undefined) throw new Error(`${requirement.key} has no limits`);
  const parsed = context.readQuantity(value, dimension);
  if (!parsed.ok) {
    const fault = parsed.fault === "missing" && entry.result === "not-done" ? "not-done" : parsed.fault;
    return makeRow(requirement, "undecided", firstReason(unlimited, fault));
  }
  const instruments = selectCandidates(choice, entry, context);
  const row = judgeQuantity(requirement, parsed.quantity, band, doubtReading(parsed.quantity, instruments));
  if (!canAllShow(instruments, parsed.quantity)) row.notes = [FINER_THAN_DIVISION];
  return row;
}
