import type { Quantity } from "./scan-quantity.js";
import type { Dimension } from "./units.js";

/** Pressure is read against the air around it, and a sound level against an agreed one: both go below 0. */
const NEVER_BELOW_NOTHING: ReadonlySet<Dimension> = new Set([
  "duration",
  "length",
  "volume",
  "flow",
  "mass-concentration",
  "fraction",
  "count",
]);

export function isNeverBelowNothing(dimension: Dimension): boolean {
  return NEVER_BELOW_NOTHING.has(dimension);
}

/** Whether there is no such quantity, such as a depth of -5 mm. */
export function isBelowNothing({ quanta, unit }: Quantity): boolean {
  return quanta < 0 && isNeverBelowNothing(unit.dimension);
}
