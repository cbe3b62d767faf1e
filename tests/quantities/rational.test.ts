import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, it } from "vitest";
import {
  addRational,
  compareRational,
  isNegativeRational,
  makeRational,
  multiplyRational,
  negateRational,
  type Rational,
  subtractRational,
} from "../../src/quantities/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { SEED } from "./read-sample.js";

const NUMERATORS = fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n });
const DENOMINATORS = fc
  .oneof(NUMERATORS, fc.bigInt({ min: -12n, max: 12n }))
  .filter((denominator) => denominator !== 0n);
const PARTS = fc.tuple(fc.oneof(NUMERATORS, fc.bigInt({ min: -12n, max: 12n })), DENOMINATORS);

/** Numerator and denominator as fraction.js has them, its sign kept apart from both. */
function toParts({ s, n, d }: Fraction): Rational {
  return { numerator: s * n, denominator: d };
}

// Source: fraction.js, arithmetic of exact fractions.
describe("a rational", () => {
  it("is in lowest terms with a positive denominator, and counts as fraction.js does", () => {
    fc.assert(
      fc.property(PARTS, PARTS, (leftParts, rightParts) => {
        const [left, right] = [makeRational(...leftParts), makeRational(...rightParts)];
        const [leftOutside, rightOutside] = [new Fraction(...leftParts), new Fraction(...rightParts)];
        expect(left).toEqual(toParts(leftOutside));
        expect(addRational(left, right)).toEqual(toParts(leftOutside.add(rightOutside)));
        expect(subtractRational(left, right)).toEqual(toParts(leftOutside.sub(rightOutside)));
        expect(multiplyRational(left, right)).toEqual(toParts(leftOutside.mul(rightOutside)));
        expect(negateRational(left)).toEqual(toParts(leftOutside.neg()));
        expect(compareRational(left, right)).toBe(leftOutside.compare(rightOutside));
        expect(compareRational(left, left)).toBe(0);
        expect(isNegativeRational(left)).toBe(leftOutside.compare(0) < 0);
      }),
      { seed: SEED, numRuns: countQuickRuns(1000) },
    );
  });

  it.each([
    [0n, 5n, 0n, 1n],
    [0n, -5n, 0n, 1n],
    [4n, -6n, -2n, 3n],
    [-4n, -6n, 2n, 3n],
    [7n, undefined, 7n, 1n],
    [7n, 7n, 1n, 1n],
  ])("of %s over %s is %s/%s", (numerator, denominator, expectedNumerator, expectedDenominator) => {
    const made = makeRational(numerator, denominator);
    expect(made).toEqual({ numerator: expectedNumerator, denominator: expectedDenominator });
    expect(Object.isFrozen(made)).toBe(true);
  });

  it("has no denominator of 0", () => {
    expect(() => makeRational(1n, 0n)).toThrow(RangeError);
    expect(() => makeRational(0n, 0n)).toThrow(RangeError);
  });
});
