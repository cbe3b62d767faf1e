import {
  addRational,
  compareRational,
  divideRational,
  makeRational,
  multiplyRational,
  negateRational,
  type Rational,
  subtractRational,
} from "./rational.js";
import type { Unit } from "./units.js";

/** What is stated of a gauge, in base quanta; undefined is not stated. `division` is above 0, `maxError` at least 0. */
export interface Instrument {
  readonly division: Rational | undefined;
  /** How a reading comes from the true value: to the division below, above, or the nearest one. */
  readonly rounding: "down" | "up" | "nearest";
  readonly maxError: Rational | undefined;
  /** `shared` says that one gauge errs alike in both readings of a difference. */
  readonly errors: "independent" | "shared";
  readonly rangeLow: Rational | undefined;
  readonly rangeHigh: Rational | undefined;
}

/** Where a true value lies; an open end is not part of it. */
export interface Span {
  readonly from: Rational;
  readonly to: Rational;
  readonly fromOpen: boolean;
  readonly toOpen: boolean;
}

const ZERO = makeRational(0n);
const HALF = makeRational(1n, 2n);

/**
 * The true values that a perfect gauge of this division shows as `value`; the value alone where no division is stated.
 */
export function spanOfDivision(value: Rational, instrument: Instrument): Span {
  const { division, rounding } = instrument;
  if (division === undefined) return { from: value, to: value, fromOpen: false, toOpen: false };
  switch (rounding) {
    case "down":
      return { from: value, to: addRational(value, division), fromOpen: false, toOpen: true };
    case "up":
      return { from: subtractRational(value, division), to: value, fromOpen: true, toOpen: false };
    case "nearest": {
      const half = multiplyRational(division, HALF);
      return { from: subtractRational(value, half), to: addRational(value, half), fromOpen: false, toOpen: false };
    }
  }
}

/** Widens a span by an error of at most `maxError` either way; an open end stays open. */
function widenSpan(span: Span, maxError: Rational): Span {
  return { ...span, from: subtractRational(span.from, maxError), to: addRational(span.to, maxError) };
}

/** Where the true value of a reading lies; undefined where neither division nor max-error is stated. */
export function spanOfReading(value: Rational, instrument: Instrument): Span | undefined {
  const { division, maxError } = instrument;
  if (division === undefined && maxError === undefined) return undefined;
  return widenSpan(spanOfDivision(value, instrument), maxError ?? ZERO);
}

/**
 * Where `start - end` of two readings of one instrument truly lies; undefined where neither division nor max-error is
 * stated.
 *
 * A shared error cancels: two readings taken down to a division d leave (start - end - d, start - end + d).
 */
export function spanOfDifference(start: Rational, end: Rational, instrument: Instrument): Span | undefined {
  const cancels = instrument.errors === "shared" && instrument.maxError !== undefined;
  const single = cancels ? { ...instrument, maxError: ZERO } : instrument;
  const startSpan = spanOfReading(start, single);
  const endSpan = spanOfReading(end, single);
  if (startSpan === undefined || endSpan === undefined) return undefined;
  return {
    from: addRational(startSpan.from, negateRational(endSpan.to)),
    to: addRational(startSpan.to, negateRational(endSpan.from)),
    fromOpen: startSpan.fromOpen || endSpan.toOpen,
    toOpen: startSpan.toOpen || endSpan.fromOpen,
  };
}

/**
 * Whether the gauge can show `value`: a whole number of divisions, or any value where no division is stated.
 *
 * The divisions count from the zero of `unit`, which matters for degrees Celsius alone; without it from the base zero.
 */
export function isOnDivision(value: Rational, instrument: Instrument, unit?: Unit): boolean {
  if (instrument.division === undefined) return true;
  const shown = unit === undefined ? value : subtractRational(value, makeRational(BigInt(unit.offsetQuanta)));
  return divideRational(shown, instrument.division).denominator === 1n;
}

/** Whether `value` lies in the stated range, both ends included; a side that is not stated is open. */
export function isInRange(value: Rational, instrument: Instrument): boolean {
  const { rangeLow, rangeHigh } = instrument;
  if (rangeLow !== undefined && compareRational(value, rangeLow) < 0) return false;
  return rangeHigh === undefined || compareRational(value, rangeHigh) <= 0;
}
