import {
  ceilRational,
  compareRational,
  divideRational,
  floorRational,
  makeRational,
  type Rational,
  subtractRational,
} from "./rational.js";
import type { Family } from "./units.js";

/** `at-least` and `at-most` include the limit, `above` and `below` exclude it. */
export type BoundKind = "at-least" | "at-most" | "above" | "below";

/** One side of a band; the limit is in base quanta of its dimension. */
export interface Bound {
  readonly kind: BoundKind;
  readonly limit: Rational;
}

/**
 * The whole quanta that lie in a band, both ends included; infinite where a side is open, `low > high` where the band
 * is empty.
 */
export interface IntegerRange {
  readonly low: number;
  readonly high: number;
}

const LARGEST = BigInt(Number.MAX_SAFE_INTEGER);

/** A threshold as a double: one beyond every reading becomes ±2^53, which compares with each of them alike. */
function clampThreshold(threshold: bigint): number {
  if (threshold > LARGEST) return Number(LARGEST + 1n);
  if (threshold < -LARGEST) return Number(-LARGEST - 1n);
  return Number(threshold);
}

/**
 * Turns bounds that must all hold into one range of whole quanta of `family`.
 *
 * `at-least` rounds up, `at-most` down, `above` and `below` to the next quantum beyond the limit. Exact for every
 * reading of magnitude at most 2^53 - 1 quanta. Without bounds the range is everything.
 */
export function rangeOfBounds(bounds: readonly Bound[], family: Family): IntegerRange {
  const quantum = makeRational(family.quantumNumerator, family.quantumDenominator);
  let low: bigint | undefined;
  let high: bigint | undefined;
  for (const { kind, limit } of bounds) {
    const threshold = divideRational(limit, quantum);
    if (kind === "at-least" || kind === "above") {
      const least = kind === "at-least" ? ceilRational(threshold) : floorRational(threshold) + 1n;
      low = low === undefined || least > low ? least : low;
    } else {
      const most = kind === "at-most" ? floorRational(threshold) : ceilRational(threshold) - 1n;
      high = high === undefined || most < high ? most : high;
    }
  }
  if (low !== undefined && high !== undefined && low > high) return Object.freeze({ low: Infinity, high: -Infinity });
  return Object.freeze({
    low: low === undefined ? -Infinity : clampThreshold(low),
    high: high === undefined ? Infinity : clampThreshold(high),
  });
}

function satisfiesBound(bound: Bound, value: Rational): boolean {
  const order = compareRational(value, bound.limit);
  switch (bound.kind) {
    case "at-least":
      return order >= 0;
    case "above":
      return order > 0;
    case "at-most":
      return order <= 0;
    case "below":
      return order < 0;
  }
}

/** Whether all bounds hold for an exact value in base quanta; true without bounds. */
export function satisfiesBounds(bounds: readonly Bound[], value: Rational): boolean {
  return bounds.every((bound) => satisfiesBound(bound, value));
}

/**
 * The least signed distance from `value` to a limit, in base quanta: positive inside, negative outside; undefined
 * without bounds.
 *
 * 0 is a value on a limit, which is inside only where the bound includes its limit.
 */
export function marginOfBounds(bounds: readonly Bound[], value: Rational): Rational | undefined {
  let least: Rational | undefined;
  for (const { kind, limit } of bounds) {
    const isLower = kind === "at-least" || kind === "above";
    const distance = isLower ? subtractRational(value, limit) : subtractRational(limit, value);
    if (least === undefined || compareRational(distance, least) < 0) least = distance;
  }
  return least;
}
