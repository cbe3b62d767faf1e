import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Bound,
  type BoundKind,
  type Family,
  makeRational,
  marginOfBounds,
  multiplyRational,
  rangeOfBounds,
  rationalOfQuanta,
  rationalOfQuantity,
  satisfiesBounds,
  UNITS,
} from "../../src/quantities/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { readSample, SEED } from "./read-sample.js";

const KINDS: readonly BoundKind[] = ["at-least", "at-most", "above", "below"];
const FAMILIES: readonly Family[] = [...new Set(UNITS.map((unit) => unit.family))];

function boundOf(kind: BoundKind, text: string): Bound {
  return { kind, limit: rationalOfQuantity(readSample(text, "pressure")) };
}

function holdsInRange(bounds: readonly Bound[], quanta: number, family: Family): boolean {
  const { low, high } = rangeOfBounds(bounds, family);
  return low <= quanta && quanta <= high;
}

describe("rangeOfBounds", () => {
  it.each([
    ["at-least", "10 bar", { low: 1_000_000_000, high: Infinity }],
    ["at-most", "10 bar", { low: -Infinity, high: 1_000_000_000 }],
    ["above", "10 bar", { low: 1_000_000_001, high: Infinity }],
    ["below", "10 bar", { low: -Infinity, high: 999_999_999 }],
    // 1 psi = 6 894 757.293168… mPa: no whole quantum of the decimal family
    ["at-least", "1 psi", { low: 6_894_758, high: Infinity }],
    ["at-most", "1 psi", { low: -Infinity, high: 6_894_757 }],
    ["above", "1 psi", { low: 6_894_758, high: Infinity }],
    ["below", "1 psi", { low: -Infinity, high: 6_894_757 }],
    ["at-least", "-1 psi", { low: -6_894_757, high: Infinity }],
    ["at-most", "-1 psi", { low: -Infinity, high: -6_894_758 }],
  ] as const)("turns %s %s into whole millipascals", (kind, limit, range) => {
    expect(rangeOfBounds([boundOf(kind, limit)], readSample("1 bar", "pressure").unit.family)).toEqual(range);
  });

  it("takes the tighter bound of each side, and everything without bounds", () => {
    const { family } = readSample("1 bar", "pressure").unit;
    const bounds = [
      boundOf("at-least", "50 bar"),
      boundOf("above", "50 bar"),
      boundOf("at-most", "60 bar"),
      boundOf("at-most", "70 bar"),
    ];
    expect(rangeOfBounds(bounds, family)).toEqual({ low: 5_000_000_001, high: 6_000_000_000 });
    expect(rangeOfBounds([], family)).toEqual({ low: -Infinity, high: Infinity });
  });

  it("is empty where no reading can hold", () => {
    const { family } = readSample("1 psi", "pressure").unit;
    const narrow = [boundOf("above", "1 psi"), boundOf("below", "1.0001 psi")];
    const huge = [
      { kind: "at-least", limit: makeRational(10n ** 40n) },
      { kind: "at-most", limit: makeRational(10n ** 39n) },
    ] as const;
    for (const bounds of [narrow, huge]) {
      const { low, high } = rangeOfBounds(bounds, family);
      expect(low).toBeGreaterThan(high);
    }
  });

  it("agrees with satisfiesBounds on and beside every limit, in every family", () => {
    const limitNear = fc.record({
      kind: fc.constantFrom(...KINDS),
      shift: fc.bigInt({ min: -2n, max: 2n }),
      divisor: fc.constantFrom(1n, 2n, 3n, 7n, 1_290_320_000n),
    });
    const reading = fc.oneof(
      fc.integer({ min: -2_000_000, max: 2_000_000 }),
      fc.maxSafeInteger(),
      fc.constantFrom(Number.MAX_SAFE_INTEGER - 3, 3 - Number.MAX_SAFE_INTEGER),
    );
    const tally = { held: 0, refused: 0 };
    fc.assert(
      fc.property(
        fc.constantFrom(...FAMILIES),
        reading,
        fc.array(limitNear, { minLength: 1, maxLength: 3 }),
        (family, quanta, limits) => {
          const quantum = makeRational(family.quantumNumerator, family.quantumDenominator);
          const bounds = limits.map(({ kind, shift, divisor }): Bound => {
            return { kind, limit: multiplyRational(makeRational(BigInt(quanta) * divisor + shift, divisor), quantum) };
          });
          for (const step of [-3, -2, -1, 0, 1, 2, 3]) {
            const near = quanta + step;
            if (!Number.isSafeInteger(near)) continue;
            const isHeld = satisfiesBounds(bounds, rationalOfQuanta(near, family));
            expect(holdsInRange(bounds, near, family)).toBe(isHeld);
            tally[isHeld ? "held" : "refused"] += 1;
          }
        },
      ),
      { seed: SEED, numRuns: countQuickRuns(10_000) },
    );
    expect(Math.min(tally.held, tally.refused)).toBeGreaterThan(10_000);
  });

  it("is right for limits beyond every reading", () => {
    const far = makeRational(10n ** 40n);
    const farBelow = makeRational(-(10n ** 40n));
    for (const family of FAMILIES) {
      for (const kind of KINDS) {
        for (const quanta of [Number.MIN_SAFE_INTEGER, 0, Number.MAX_SAFE_INTEGER]) {
          for (const limit of [far, farBelow]) {
            const bounds = [{ kind, limit }];
            expect(holdsInRange(bounds, quanta, family)).toBe(
              satisfiesBounds(bounds, rationalOfQuanta(quanta, family)),
            );
          }
        }
      }
    }
  });
});

describe("satisfiesBounds", () => {
  it.each([
    ["at-least", [false, true, true]],
    ["at-most", [true, true, false]],
    ["above", [false, false, true]],
    ["below", [true, false, false]],
  ] as const)("holds %s below, on and above its limit", (kind, expected) => {
    const held = ["9.99999999 bar", "10 bar", "10.00000001 bar"].map((text) =>
      satisfiesBounds([boundOf(kind, "10 bar")], rationalOfQuantity(readSample(text, "pressure"))),
    );
    expect(held).toEqual(expected);
  });
});

describe("marginOfBounds", () => {
  it.each([
    ["20 bar", [["at-most", "10 bar"]], "-10 bar"],
    ["5 bar", [["at-most", "10 bar"]], "5 bar"],
    ["10 bar", [["below", "10 bar"]], "0 bar"],
    [
      "52 bar",
      [
        ["at-least", "50 bar"],
        ["at-most", "60 bar"],
      ],
      "2 bar",
    ],
    [
      "59 bar",
      [
        ["above", "50 bar"],
        ["below", "60 bar"],
      ],
      "1 bar",
    ],
    [
      "40 bar",
      [
        ["at-least", "50 bar"],
        ["at-most", "60 bar"],
      ],
      "-10 bar",
    ],
  ] as const)("of %s within %o is %s", (value, bounds, margin) => {
    const exact = bounds.map(([kind, limit]) => boundOf(kind, limit));
    expect(marginOfBounds(exact, rationalOfQuantity(readSample(value, "pressure")))).toEqual(
      rationalOfQuantity(readSample(margin, "pressure")),
    );
  });

  it("is unknown without bounds", () => {
    expect(marginOfBounds([], makeRational(0n))).toBeUndefined();
  });
});
