import type { Family } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import { firstReason } from "./first-reason.js";
import type { JudgeContext } from "./judge-context.js";
import { bandOf } from "./judge-quantity.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import { placeQuanta } from "./prepared-tolerance.js";
import { makeNotApplicable, makeRow, type Row } from "./row.js";

/** The lowest and the highest of what was recorded for one member. */
interface Reach {
  readonly low: number;
  readonly high: number;
}

/**
 * How far the members' readings lie apart, in the first one's unit. Where a member has several readings, the furthest that any
 * choice among them gives, so that nothing recorded is passed over.
 *
 * Outside as recorded is settled first, even where a member's reading is missing; one member alone has nothing to compare.
 * Invariant: what the limits of the levels say has no part in it, so that tightening them never improves it.
 */
export function judgeApart(apart: PreparedRequirement, levels: readonly Row[], context: JudgeContext): Row {
  const [first] = levels;
  if (levels.length === 1) {
    if (first?.member === -1) return makeRow(apart, "undecided", "fact-missing");
    return makeNotApplicable(apart, "only-one");
  }
  const readings = levels.map(listReadings);
  const unit = readings.flat().find((row) => row.unit !== undefined)?.unit;
  const band = bandOf(apart, undefined, context);
  const reason = firstReason(typeof band === "string" ? band : undefined, doubtReadings(levels, unit?.family));
  const reaches = readings.map((rows) => findReach(rows, unit?.family)).filter((reach) => reach !== undefined);
  const spread = findSpread(reaches);
  if (unit === undefined || !Number.isSafeInteger(spread)) return makeRow(apart, "undecided", reason ?? "missing");
  const outcome = typeof band === "string" ? "undecided" : placeQuanta(band.rangesOf(unit.family), spread);
  const row =
    outcome === "outside" || reason === undefined ? makeRow(apart, outcome) : makeRow(apart, "undecided", reason);
  row.entries = levels.flatMap((level) => level.entries);
  if (reaches.length === levels.length || outcome === "outside") {
    row.quanta = spread;
    row.unit = unit;
  }
  return row;
}

/** The row of each entry for one member. */
function listReadings(level: Row): readonly Row[] {
  return level.candidates.length === 0 ? [level] : level.candidates;
}

/** The first reason for which some reading cannot be compared: it is not known, not to be trusted, or in another family. */
function doubtReadings(levels: readonly Row[], family: Family | undefined): UndecidedReason | undefined {
  let reason: UndecidedReason | undefined;
  for (const level of levels) {
    reason = firstReason(reason, level.doubt);
    for (const row of listReadings(level)) {
      reason = firstReason(reason, row.doubt);
      if (Number.isNaN(row.quanta)) reason = firstReason(reason, row.undecidedFor ?? "uncertainty");
      else if (row.unit?.family !== family) reason = firstReason(reason, "mixed-units");
    }
  }
  return reason;
}

function findReach(rows: readonly Row[], family: Family | undefined): Reach | undefined {
  const known = rows
    .filter((row) => row.unit?.family === family && !Number.isNaN(row.quanta))
    .map(({ quanta }) => quanta);
  return known.length === 0 ? undefined : { low: Math.min(...known), high: Math.max(...known) };
}

/** The furthest that two different members lie apart; not finite where fewer than two are known. */
function findSpread(reaches: readonly Reach[]): number {
  const byLow = [...reaches].sort((one, other) => one.low - other.low);
  const [lowest, second] = byLow;
  if (lowest === undefined || second === undefined) return Number.NaN;
  return Math.max(...reaches.map((reach) => reach.high - (reach === lowest ? second : lowest).low));
}
