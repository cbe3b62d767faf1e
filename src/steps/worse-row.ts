import type { Outcome } from "../terms/index.js";
import { firstReason } from "./first-reason.js";
import { type Row, weighRow } from "./row.js";

const SEVERITY: Readonly<Record<Outcome, number>> = {
  "not-applicable": 0,
  within: 1,
  caution: 2,
  undecided: 3,
  outside: 4,
};

/** The worse of two rows about the same requirement: by outcome, then by what it weighs, then by the earlier reason. */
export function worseRow(one: Row, other: Row): Row {
  const difference = SEVERITY[one.outcome] - SEVERITY[other.outcome];
  if (difference !== 0) return difference > 0 ? one : other;
  const weights = weighRow(one, false) - weighRow(other, false);
  if (weights !== 0) return weights > 0 ? one : other;
  const earlier = firstReason(one.undecidedFor, other.undecidedFor);
  return earlier === one.undecidedFor ? one : other;
}
