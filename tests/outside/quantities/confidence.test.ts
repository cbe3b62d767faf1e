import { describe, expect, it } from "vitest";
import {
  addRational,
  compareRational,
  formatProbability,
  type Instrument,
  makeRational,
  probabilityWithin,
  type Rational,
  rationalOfQuantity,
  subtractRational,
  type Uniform,
  uniformsOfDifference,
} from "../../../src/quantities/index.js";
import { readSample } from "../../quantities/read-sample.js";

function bar(number: number): Rational {
  return rationalOfQuantity(readSample(`${number} bar`, "pressure"));
}

const TEN_BAR_DIAL: Instrument = {
  division: bar(10),
  rounding: "down",
  maxError: bar(0),
  errors: "shared",
  rangeLow: bar(0),
  rangeHigh: bar(400),
};

function uniformsOfDrop(start: number, drop: number, instrument: Instrument): readonly Uniform[] {
  const uniforms = uniformsOfDifference(bar(start), bar(start - drop), instrument);
  if (uniforms === undefined) throw new Error("the test's own instrument states too little");
  return uniforms;
}

/**
 * P(true drop at most L | recorded drop d) of two readings taken down to 10 bar: a triangle on (d - 10, d + 10).
 *
 * Source: rectangular distributions of a digital reading, JCGM 100:2008 (GUM) 4.3.7, 4.3.9 and F.2.2.1; their difference is
 * derived, and was confirmed by simulation of 4 million draws.
 */
const FLOORED: readonly (readonly [limit: number, recorded: number, probability: number])[] = [
  [2, 0, 0.68],
  [2, 10, 0.02],
  [2, 20, 0],
  [2, 30, 0],
  [5, 0, 0.875],
  [5, 10, 0.125],
  [5, 20, 0],
  [5, 30, 0],
  [10, 0, 1],
  [10, 10, 0.5],
  [10, 20, 0],
  [10, 30, 0],
  [20, 0, 1],
  [20, 10, 1],
  [20, 20, 0.5],
  [20, 30, 0],
];

describe("two readings taken down to the division", () => {
  it.each(FLOORED)(
    "a drop of at most %d bar, recorded as %d bar, conforms with probability %d",
    (limit, recorded, probability) => {
      for (const start of [290, 120]) {
        for (const rounding of ["down", "nearest", "up"] as const) {
          const uniforms = uniformsOfDrop(start, recorded, { ...TEN_BAR_DIAL, rounding });
          const exact = probabilityWithin(uniforms, [{ kind: "at-most", limit: bar(limit) }]);
          expect(exact).toEqual(makeRational(BigInt(probability * 1000), 1000n));
          expect(formatProbability(exact)).toBe(probability);
        }
      }
    },
  );

  it("covers 95 % within q(1 - √0.05) = 7.7639320 bar, the k = 1.9017672 of a triangle (EA-4/02 S10.13, from memory)", () => {
    const within = (half: number) =>
      probabilityWithin(uniformsOfDrop(290, 10, TEN_BAR_DIAL), [
        { kind: "at-least", limit: subtractRational(bar(10), bar(half)) },
        { kind: "at-most", limit: addRational(bar(10), bar(half)) },
      ]);
    const target = makeRational(95n, 100n);
    expect(compareRational(within(7.763932), target)).toBe(-1);
    expect(compareRational(within(7.7639321), target)).toBe(1);
  });

  it("accepts at one-sided 95 % a recorded drop of L - 6.8377223 bar, which is L - q(1 - √0.10)", () => {
    const below = (distance: number) =>
      probabilityWithin(uniformsOfDrop(290, 10, TEN_BAR_DIAL), [
        { kind: "at-most", limit: addRational(bar(10), bar(distance)) },
      ]);
    const target = makeRational(95n, 100n);
    expect(compareRational(below(6.8377223), target)).toBe(-1);
    expect(compareRational(below(6.8377224), target)).toBe(1);
  });
});

describe("the sum of four equal rectangular quantities", () => {
  it("holds 95 % within ±3.8794067 of a standard uncertainty of 1 each (JCGM 101:2008, 9.2.3: ±3.88, from memory)", () => {
    // Half-width √3 each, to 12 digits
    const halfWidth = makeRational(1_732_050_807_569n, 10n ** 12n);
    const uniform = { from: makeRational(-1_732_050_807_569n, 10n ** 12n), to: halfWidth };
    const within = (tenMillionths: bigint) =>
      probabilityWithin(
        [uniform, uniform, uniform, uniform],
        [
          { kind: "at-least", limit: makeRational(-tenMillionths, 10n ** 7n) },
          { kind: "at-most", limit: makeRational(tenMillionths, 10n ** 7n) },
        ],
      );
    const target = makeRational(95n, 100n);
    expect(compareRational(within(38_794_066n), target)).toBe(-1);
    expect(compareRational(within(38_794_068n), target)).toBe(1);
  });
});

describe("a trapezoid of two unequal rectangles", () => {
  it("covers 95 % at k = 1.8338921 standard uncertainties for β = 1/3 (EA-4/02 S10, caliper, from memory)", () => {
    // Half-widths 2 and 1 give β = 1/3 and a half-base of 3; u² = 9 (1 + 1/9) / 6 = 5/3, so k·u = 2.36754…
    const wide = { from: makeRational(-2n), to: makeRational(2n) };
    const narrow = { from: makeRational(-1n), to: makeRational(1n) };
    const within = (millionths: bigint) =>
      probabilityWithin(
        [wide, narrow],
        [
          { kind: "at-least", limit: makeRational(-millionths, 10n ** 6n) },
          { kind: "at-most", limit: makeRational(millionths, 10n ** 6n) },
        ],
      );
    const target = makeRational(95n, 100n);
    const expanded = 1.8338921 * Math.sqrt(5 / 3);
    expect(compareRational(within(BigInt(Math.floor(expanded * 1e6) - 1)), target)).toBe(-1);
    expect(compareRational(within(BigInt(Math.ceil(expanded * 1e6) + 1)), target)).toBe(1);
  });
});
