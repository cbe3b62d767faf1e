import { UNDECIDED_REASONS, type UndecidedReason } from "../terms/index.js";

/** The earlier of two reasons in the closed list; either may be absent. */
export function firstReason(
  one: UndecidedReason | undefined,
  other: UndecidedReason | undefined,
): UndecidedReason | undefined {
  if (one === undefined) return other;
  if (other === undefined) return one;
  return UNDECIDED_REASONS.indexOf(one) <= UNDECIDED_REASONS.indexOf(other) ? one : other;
}
