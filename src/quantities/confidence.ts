import { type Bound, satisfiesBounds } from "./band.js";
import { type Instrument, spanOfDivision } from "./instrument.js";
import {
  addRational,
  compareRational,
  divideRational,
  floorRational,
  makeRational,
  multiplyRational,
  negateRational,
  type Rational,
  subtractRational,
} from "./rational.js";

/** A value equally likely anywhere from `from` to `to`, in base quanta; a point where they are equal. */
export interface Uniform {
  readonly from: Rational;
  readonly to: Rational;
}

const ZERO = makeRational(0n);
const ONE = makeRational(1n);
const PRINTED_STEPS = 10_000n;

/**
 * Where each corner of the summed box lies, with the sign of its term: + for an even number of widths, - for an odd
 * one.
 */
function listCorners(uniforms: readonly Uniform[]): readonly { readonly at: Rational; readonly sign: bigint }[] {
  let corners = [{ at: uniforms.reduce((sum, { from }) => addRational(sum, from), ZERO), sign: 1n }];
  for (const { from, to } of uniforms) {
    const width = subtractRational(to, from);
    corners = corners.flatMap(({ at, sign }) => [
      { at, sign },
      { at: addRational(at, width), sign: -sign },
    ]);
  }
  return corners;
}

/**
 * The probability that the sum of n uniforms of width above 0 is at most `value`: Σ ± max(0, value - corner)^n over
 * the 2^n corners, divided by n! times the product of the widths.
 *
 * Source: the volume of a box cut by a half-space, by inclusion and exclusion; for equal widths it is the distribution
 * of P. Hall and J. O. Irwin, Biometrika 19 (1927) (from memory).
 */
function cumulateSum(uniforms: readonly Uniform[], value: Rational): Rational {
  let sum = ZERO;
  for (const { at, sign } of listCorners(uniforms)) {
    const distance = subtractRational(value, at);
    if (compareRational(distance, ZERO) <= 0) continue;
    let term = makeRational(sign);
    for (let factor = 0; factor < uniforms.length; factor += 1) term = multiplyRational(term, distance);
    sum = addRational(sum, term);
  }
  let scale = ONE;
  uniforms.forEach(({ from, to }, index) => {
    scale = multiplyRational(multiplyRational(scale, subtractRational(to, from)), makeRational(BigInt(index + 1)));
  });
  return divideRational(sum, scale);
}

/** The tightest limit on one side; undefined where that side is open. */
function findTightest(bounds: readonly Bound[], side: "lower" | "upper"): Rational | undefined {
  let tightest: Rational | undefined;
  for (const { kind, limit } of bounds) {
    if ((kind === "at-least" || kind === "above") !== (side === "lower")) continue;
    if (tightest === undefined || compareRational(limit, tightest) === (side === "lower" ? 1 : -1)) tightest = limit;
  }
  return tightest;
}

/**
 * The exact probability that a sum of independent uniforms lies within all bounds.
 *
 * Work grows with 2^n; a difference of two readings has n = 4. Points only shift the sum; where all are points the
 * answer is 0 or 1 and a limit counts as its bound says.
 */
export function probabilityWithin(uniforms: readonly Uniform[], bounds: readonly Bound[]): Rational {
  const points = uniforms.filter(({ from, to }) => compareRational(from, to) === 0);
  const spread = uniforms.filter(({ from, to }) => compareRational(from, to) !== 0);
  const shift = points.reduce((sum, { from }) => addRational(sum, from), ZERO);
  if (spread.length === 0) return satisfiesBounds(bounds, shift) ? ONE : ZERO;
  const lower = findTightest(bounds, "lower");
  const upper = findTightest(bounds, "upper");
  const belowUpper = upper === undefined ? ONE : cumulateSum(spread, subtractRational(upper, shift));
  const belowLower = lower === undefined ? ZERO : cumulateSum(spread, subtractRational(lower, shift));
  const probability = subtractRational(belowUpper, belowLower);
  return compareRational(probability, ZERO) < 0 ? ZERO : probability;
}

/** A probability cut, never rounded, to 4 decimals. */
export function formatProbability(probability: Rational): number {
  return Number(floorRational(multiplyRational(probability, makeRational(PRINTED_STEPS)))) / Number(PRINTED_STEPS);
}

function listErrors(instrument: Instrument, maxError: Rational, readings: number): readonly Uniform[] {
  if (readings === 2 && instrument.errors === "shared") return [];
  return Array.from({ length: readings }, () => ({ from: negateRational(maxError), to: maxError }));
}

/** What the true value of a reading is made of; undefined where the division or the max-error is not stated. */
export function uniformsOfReading(value: Rational, instrument: Instrument): readonly Uniform[] | undefined {
  if (instrument.division === undefined || instrument.maxError === undefined) return undefined;
  return [spanOfDivision(value, instrument), ...listErrors(instrument, instrument.maxError, 1)];
}

/** What the true `start - end` of two readings of one instrument is made of; undefined as for one reading. */
export function uniformsOfDifference(
  start: Rational,
  end: Rational,
  instrument: Instrument,
): readonly Uniform[] | undefined {
  if (instrument.division === undefined || instrument.maxError === undefined) return undefined;
  const ending = spanOfDivision(end, instrument);
  return [
    spanOfDivision(start, instrument),
    { from: negateRational(ending.to), to: negateRational(ending.from) },
    ...listErrors(instrument, instrument.maxError, 2),
  ];
}
