import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Dimension,
  findUnit,
  formatDifference,
  formatQuantity,
  formatRational,
  makeRational,
  parseQuantity,
  quantity,
  rationalOfQuantity,
  UNITS,
} from "../../src/quantities/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { readSample, SEED } from "./read-sample.js";

function findSampleUnit(symbol: string, dimension: Dimension) {
  const unit = findUnit(symbol, dimension);
  if (unit === undefined) throw new Error(`the test's own unit \`${symbol}\` is unknown`);
  return unit;
}

describe("formatQuantity", () => {
  it("prints what parseQuantity reads back, for every unit", () => {
    const generated = fc.constantFrom(...UNITS).chain((unit) =>
      fc.record({
        unit: fc.constant(unit),
        quanta: fc.oneof(
          fc.maxSafeInteger(),
          fc.integer({ min: -50_000, max: 50_000 }),
          fc.constantFrom(0, Number.MAX_SAFE_INTEGER),
        ),
      }),
    );
    let exact = 0;
    fc.assert(
      fc.property(generated, ({ unit, quanta }) => {
        fc.pre(unit.dimension !== "temperature" || quanta >= 0);
        const text = formatQuantity({ quanta, unit });
        const parsed = parseQuantity(unit.dimension === "count" ? Number(text) : text, unit.dimension);
        expect(parsed.ok && parsed.quantity.quanta).toBe(quanta + 0);
        if (parsed.ok && parsed.quantity.unit === unit) exact += 1;
        else expect(["min", "h"]).toContain(unit.symbol);
      }),
      { seed: SEED, numRuns: countQuickRuns(5000) },
    );
    expect(exact).toBeGreaterThan(3000);
  });

  it.each([
    ["280.0 bar", "pressure", "280 bar"],
    ["0.00000001 bar", "pressure", "0.00000001 bar"],
    ["-0.5 [psi]", "pressure", "-0.5 psi"],
    ["-0.00 bar", "pressure", "0 bar"],
    ["-10.5 Cel", "temperature", "-10.5 Cel"],
    ["0.00005 min", "duration", "0.00005 min"],
  ] as const)("prints %s (%s) as %s", (text, dimension, printed) => {
    expect(formatQuantity(readSample(text, dimension))).toBe(printed);
  });

  it.each([
    ["20 Cel", "temperature", "20 Cel"],
    ["-12.5 Cel", "temperature", "-12.5 Cel"],
    ["0 Cel", "temperature", "0 Cel"],
    ["0.5 bar", "pressure", "0.5 bar"],
    ["0 bar", "pressure", "0 bar"],
  ] as const)("prints %s", (text, dimension, printed) => {
    expect(formatQuantity(readSample(text, dimension))).toBe(printed);
  });

  it("prints a count without a unit", () => {
    const twelve = parseQuantity(12, "count");
    expect(twelve.ok && formatQuantity(twelve.quantity)).toBe("12");
  });

  it("prints one second of minutes in seconds, since no decimal of minutes ends", () => {
    expect(formatQuantity({ quanta: 1000, unit: findSampleUnit("min", "duration") })).toBe("1 s");
  });
});

describe("quantity", () => {
  it.each([
    [290, "bar", "290 bar"],
    [-10, "mbar", "-10 mbar"],
    [1e-7, "bar", "0.0000001 bar"],
    [-0, "bar", "0 bar"],
    [2216, "[psi]", "2216 psi"],
    [-5, "K", "-5 K"],
    [20.5, "Cel", "20.5 Cel"],
  ] as const)("writes %d %s as %s", (value, unit, text) => {
    expect(quantity(value, unit)).toBe(text);
  });

  it.each([
    [Number.NaN, "bar", /not a finite number/],
    [Infinity, "bar", /not a finite number/],
    [1e21, "bar", /not a finite number/],
    [90_071_993, "bar", /within the unit's range/],
    [-300, "Cel", /within the unit's range/],
    [0.1 + 0.2, "bar", /finer/],
    [1, "furlong", /unknown unit `furlong`; the units are `bar`/],
    [1, "", /unknown unit/],
  ] as const)("throws a RangeError on %d %s", (value, unit, message) => {
    expect(() => quantity(value, unit)).toThrow(RangeError);
    expect(() => quantity(value, unit)).toThrow(message);
  });

  it("writes what parseQuantity reads", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9_000_000, max: 9_000_000 }),
        fc.constantFrom("bar", "psi", "%"),
        (tenths, unit) => {
          const text = quantity(tenths / 10, unit);
          expect(formatQuantity(readSample(text, unit === "%" ? "fraction" : "pressure"))).toBe(text);
        },
      ),
      { seed: SEED },
    );
  });
});

describe("formatRational", () => {
  const third = makeRational(100_000_000n, 3n);

  it.each([
    ["bar", "down", "0.333333 bar"],
    ["bar", "up", "0.333334 bar"],
    ["kPa", "down", "33.333333 kPa"],
    ["Pa", "up", "33333.334 Pa"],
    ["psi", "down", "4.8345 psi"],
    ["psi", "up", "4.8346 psi"],
  ] as const)("cuts a third of a bar in %s %s to %s", (symbol, cut, printed) => {
    expect(formatRational(third, findSampleUnit(symbol, "pressure"), cut)).toBe(printed);
  });

  it("cuts negative values towards the side asked for", () => {
    const negative = makeRational(-100_000_000n, 3n);
    expect(formatRational(negative, findSampleUnit("bar", "pressure"), "down")).toBe("-0.333334 bar");
    expect(formatRational(negative, findSampleUnit("bar", "pressure"), "up")).toBe("-0.333333 bar");
    expect(formatRational(makeRational(-1n, 3n), findSampleUnit("bar", "pressure"), "up")).toBe("0 bar");
  });

  it("prints exactly where the decimal ends, whatever the cut", () => {
    const unit = findSampleUnit("bar", "pressure");
    for (const cut of ["down", "up"] as const) {
      expect(formatRational(makeRational(1n, 2n), unit, cut)).toBe("0.000000005 bar");
      expect(
        formatRational(rationalOfQuantity(readSample("1485 psi", "pressure")), findSampleUnit("psi", "pressure"), cut),
      ).toBe("1485 psi");
      expect(formatRational(makeRational(1n, 1n << 20n), unit, cut)).toBe(cut === "down" ? "0 bar" : "0.000001 bar");
    }
  });

  it("takes the offset off a temperature and not off a difference", () => {
    const celsius = findSampleUnit("Cel", "temperature");
    expect(formatRational(makeRational(293_150n), celsius, "down")).toBe("20 Cel");
    expect(formatDifference(makeRational(-5000n), celsius, "down")).toBe("-5 K");
    expect(formatDifference(makeRational(1_000_000_000n), findSampleUnit("bar", "pressure"), "down")).toBe("10 bar");
  });

  it("prints a count without a unit and cuts it to whole pieces", () => {
    const count = findSampleUnit("", "count");
    expect(formatRational(makeRational(3n), count, "down")).toBe("3");
    expect(formatRational(makeRational(10n, 3n), count, "down")).toBe("3");
    expect(formatRational(makeRational(10n, 3n), count, "up")).toBe("4");
  });
});
