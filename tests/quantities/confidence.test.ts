import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addRational,
  type Bound,
  compareRational,
  formatProbability,
  type Instrument,
  makeRational,
  multiplyRational,
  negateRational,
  probabilityWithin,
  type Rational,
  subtractRational,
  type Uniform,
  uniformsOfDifference,
  uniformsOfReading,
} from "../../src/quantities/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { SEED } from "./read-sample.js";

const ONE = makeRational(1n);

function whole(value: number): Rational {
  return makeRational(BigInt(value));
}

function between(from: number, to: number): Uniform {
  return { from: whole(from), to: whole(to) };
}

function atMost(limit: Rational): readonly Bound[] {
  return [{ kind: "at-most", limit }];
}

const RATIONAL = fc
  .tuple(fc.bigInt({ min: -300n, max: 300n }), fc.bigInt({ min: 1n, max: 12n }))
  .map(([n, d]) => makeRational(n, d));
const UNIFORM = fc
  .tuple(RATIONAL, fc.bigInt({ min: 0n, max: 200n }))
  .map(([from, width]): Uniform => ({ from, to: addRational(from, makeRational(width, 7n)) }));
const UNIFORMS = fc.array(UNIFORM, { minLength: 0, maxLength: 4 });

describe("probabilityWithin", () => {
  it.each([
    [[between(0, 10)], 3, makeRational(3n, 10n)],
    [[between(0, 10)], -1, whole(0)],
    [[between(0, 10)], 11, ONE],
    // the area of a corner cut from a rectangle of 2 by 3
    [[between(0, 2), between(0, 3)], 1, makeRational(1n, 12n)],
    [[between(0, 2), between(0, 3)], 4, makeRational(11n, 12n)],
    // the corner of a cube, and of four dimensions
    [[between(0, 1), between(0, 1), between(0, 1)], 1, makeRational(1n, 6n)],
    [[between(0, 1), between(0, 1), between(0, 1), between(0, 1)], 1, makeRational(1n, 24n)],
    [[between(0, 1), between(0, 1), between(0, 1), between(0, 1)], 2, makeRational(1n, 2n)],
    [[between(0, 10), between(5, 5)], 8, makeRational(3n, 10n)],
  ] as const)("of %o at most %d is exact", (uniforms, limit, probability) => {
    expect(probabilityWithin(uniforms, atMost(whole(limit)))).toEqual(probability);
  });

  it("counts a limit as its bound says where all is known exactly", () => {
    const point = [between(4, 4), between(6, 6)];
    const outcomes = (["at-least", "at-most", "above", "below"] as const).map((kind) =>
      probabilityWithin(point, [{ kind, limit: whole(10) }]),
    );
    expect(outcomes).toEqual([ONE, ONE, whole(0), whole(0)]);
  });

  it("is 0 within bounds that contradict each other", () => {
    const bounds = [
      { kind: "at-least", limit: whole(8) },
      { kind: "at-most", limit: whole(2) },
    ] as const;
    expect(probabilityWithin([between(0, 10)], bounds)).toEqual(whole(0));
  });

  it("takes the tightest of several bounds on each side", () => {
    const bounds = [
      { kind: "at-least", limit: whole(1) },
      { kind: "above", limit: whole(2) },
      { kind: "at-most", limit: whole(9) },
      { kind: "below", limit: whole(5) },
    ] as const;
    expect(probabilityWithin([between(0, 10)], bounds)).toEqual(makeRational(3n, 10n));
    expect(probabilityWithin([between(0, 10)], [])).toEqual(ONE);
  });

  it("shares the whole between both sides of any limit and mirrors with its sum", () => {
    fc.assert(
      fc.property(UNIFORMS, RATIONAL, (uniforms, limit) => {
        const below = probabilityWithin(uniforms, atMost(limit));
        const above = probabilityWithin(uniforms, [{ kind: "above", limit }]);
        expect(addRational(below, above)).toEqual(ONE);
        const mirrored = uniforms.map(({ from, to }) => ({ from: negateRational(to), to: negateRational(from) }));
        expect(probabilityWithin(mirrored, [{ kind: "at-least", limit: negateRational(limit) }])).toEqual(below);
      }),
      { seed: SEED, numRuns: countQuickRuns(1000) },
    );
  });

  it("never falls as the limit rises", () => {
    fc.assert(
      fc.property(UNIFORMS, RATIONAL, fc.bigInt({ min: 0n, max: 50n }), (uniforms, limit, more) => {
        const lower = probabilityWithin(uniforms, atMost(limit));
        const higher = probabilityWithin(uniforms, atMost(addRational(limit, whole(Number(more)))));
        expect(compareRational(lower, higher)).toBeLessThanOrEqual(0);
      }),
      { seed: SEED, numRuns: countQuickRuns(1000) },
    );
  });

  it("is the mean over one uniform of the probability of the rest", () => {
    // Why: the midpoint sum over 400 slices errs by less than 0.001 here, and knows nothing of corners.
    const slices = 400;
    fc.assert(
      fc.property(fc.array(UNIFORM, { minLength: 1, maxLength: 3 }), UNIFORM, RATIONAL, (rest, last, limit) => {
        fc.pre([...rest, last].every(({ from, to }) => compareRational(from, to) < 0));
        const width = subtractRational(last.to, last.from);
        let sum = 0;
        for (let slice = 0; slice < slices; slice += 1) {
          const middle = addRational(
            last.from,
            multiplyRational(width, makeRational(BigInt(2 * slice + 1), BigInt(2 * slices))),
          );
          const probability = probabilityWithin(rest, atMost(subtractRational(limit, middle)));
          sum += Number((probability.numerator * 10n ** 12n) / probability.denominator) / 1e12;
        }
        const exact = probabilityWithin([...rest, last], atMost(limit));
        expect(Number((exact.numerator * 10n ** 12n) / exact.denominator) / 1e12).toBeCloseTo(sum / slices, 2);
      }),
      { seed: SEED, numRuns: 30 },
    );
  });
});

describe("formatProbability", () => {
  it.each([
    [ONE, 1],
    [makeRational(99_999n, 100_000n), 0.9999],
    [makeRational(2n, 3n), 0.6666],
    [makeRational(1n, 20_000n), 0],
    [makeRational(17n, 25n), 0.68],
    [makeRational(0n), 0],
  ] as const)("cuts %o to %d", (probability, printed) => {
    expect(formatProbability(probability)).toBe(printed);
  });
});

describe("uniformsOfReading and uniformsOfDifference", () => {
  const dial: Instrument = {
    division: whole(10),
    rounding: "down",
    maxError: whole(4),
    errors: "independent",
    rangeLow: undefined,
    rangeHigh: undefined,
  };

  it("know nothing while the division or the max-error is not stated", () => {
    for (const unstated of [
      { ...dial, division: undefined },
      { ...dial, maxError: undefined },
      { ...dial, errors: "shared", maxError: undefined },
    ] as const) {
      expect(uniformsOfReading(whole(280), unstated)).toBeUndefined();
      expect(uniformsOfDifference(whole(290), whole(280), unstated)).toBeUndefined();
    }
  });

  it("make a reading of its division and its error", () => {
    const uniforms = uniformsOfReading(whole(280), dial) ?? [];
    expect(uniforms.map(({ from, to }) => [from, to])).toEqual([
      [whole(280), whole(290)],
      [whole(-4), whole(4)],
    ]);
  });

  it("make a difference of two divisions and two errors, or of the divisions alone where the error is shared", () => {
    const independent = uniformsOfDifference(whole(290), whole(280), dial) ?? [];
    expect(independent.map(({ from, to }) => [from, to])).toEqual([
      [whole(290), whole(300)],
      [whole(-290), whole(-280)],
      [whole(-4), whole(4)],
      [whole(-4), whole(4)],
    ]);
    expect(uniformsOfDifference(whole(290), whole(280), { ...dial, errors: "shared" })).toHaveLength(2);
  });
});
