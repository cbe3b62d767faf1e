import type { UndecidedReason } from "../terms/index.js";
import { firstReason } from "./first-reason.js";
import type { JudgeContext } from "./judge-context.js";
import { bandOf } from "./judge-quantity.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import { placeQuanta } from "./prepared-tolerance.js";
import { makeNotApplicable, makeRow, type Row } from "./row.js";

/** Reasons of a level that speak of its limits alone, so that the readings can still be compared with each other. */
const OF_LIMITS: ReadonlySet<string> = new Set(["fact-missing", "facts-differ", "no-case"]);

/**
 * How far the members' readings lie apart: highest less lowest, in the first one's unit.
 *
 * Outside as recorded is settled first, even where a member's reading is missing; one member alone has nothing to compare.
 */
export function judgeApart(apart: PreparedRequirement, levels: readonly Row[], context: JudgeContext): Row {
  const [first] = levels;
  if (levels.length === 1) {
    if (first?.member === -1) return makeRow(apart, "undecided", "fact-missing");
    return makeNotApplicable(apart, "only-one");
  }
  const band = bandOf(apart, undefined, context);
  let reason: UndecidedReason | undefined = typeof band === "string" ? band : undefined;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const unit = levels.find((level) => level.unit !== undefined)?.unit;
  for (const level of levels) {
    reason = firstReason(reason, doubtLevel(level));
    if (level.unit === undefined || Number.isNaN(level.quanta)) continue;
    if (level.unit.family !== unit?.family) reason = firstReason(reason, "mixed-units");
    else {
      low = Math.min(low, level.quanta);
      high = Math.max(high, level.quanta);
    }
  }
  const spread = high - low;
  if (unit === undefined || !Number.isSafeInteger(spread)) {
    return makeRow(apart, "undecided", firstReason(reason, unit === undefined ? undefined : "unreadable") ?? "missing");
  }
  const outcome = typeof band === "string" ? "undecided" : placeQuanta(band.rangesOf(unit.family), spread);
  const row =
    outcome === "outside" || reason === undefined ? makeRow(apart, outcome) : makeRow(apart, "undecided", reason);
  row.entries = levels.flatMap((level) => level.entries.slice(0, 1));
  if (levels.every((level) => !Number.isNaN(level.quanta)) || outcome === "outside") {
    row.quanta = spread;
    row.unit = unit;
  }
  return row;
}

function doubtLevel(level: Row): UndecidedReason | undefined {
  if (level.contradicted) return "conflicting";
  if (Number.isNaN(level.quanta)) return level.undecidedFor ?? "uncertainty";
  return level.undecidedFor === undefined || OF_LIMITS.has(level.undecidedFor) ? undefined : level.undecidedFor;
}
