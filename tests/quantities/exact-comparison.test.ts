import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, it } from "vitest";
import {
  type Bound,
  type BoundKind,
  findUnit,
  formatQuantity,
  makeRational,
  multiplyRational,
  rangeOfBounds,
  rationalOfQuantity,
  satisfiesBounds,
  type Unit,
} from "../../src/quantities/index.js";
import { readSample, SEED } from "./read-sample.js";

/**
 * Pascals per unit, written down apart from the library's own table. Source: NIST SP 811, appendix B.8 (psi as the exact ratio
 * of the international pound-force and square inch).
 */
const PASCALS: Readonly<Record<string, { readonly exact: Fraction; readonly double: number }>> = {
  bar: { exact: new Fraction(100_000), double: 100_000 },
  mbar: { exact: new Fraction(100), double: 100 },
  psi: { exact: new Fraction("8896443230521/1290320000"), double: 6894.757293168361 },
  mmH2O: { exact: new Fraction("9.80665"), double: 9.80665 },
};
const SYMBOLS = ["bar", "mbar", "psi", "mmH2O"] as const;
const KINDS: readonly BoundKind[] = ["at-least", "at-most", "above", "below"];

function factorsOf(symbol: string) {
  const factors = PASCALS[symbol];
  if (factors === undefined) throw new Error(`the test knows no factor of \`${symbol}\``);
  return factors;
}

function unitOf(symbol: string): Unit {
  const unit = findUnit(symbol, "pressure");
  if (unit === undefined) throw new Error(`the test's own unit \`${symbol}\` is unknown`);
  return unit;
}

function holds(kind: BoundKind, order: number): boolean {
  if (kind === "at-least") return order >= 0;
  if (kind === "at-most") return order <= 0;
  return kind === "above" ? order > 0 : order < 0;
}

/** What the library says of a reading in whole quanta, by both its ways. */
function judge(bound: Bound, quanta: number, unit: Unit): { readonly byRange: boolean; readonly byRational: boolean } {
  const { low, high } = rangeOfBounds([bound], unit.family);
  return {
    byRange: low <= quanta && quanta <= high,
    byRational: satisfiesBounds([bound], rationalOfQuantity({ quanta, unit })),
  };
}

interface Tally {
  compared: number;
  wrong: number;
  onLimit: number;
  wrongInDoubles: number;
}

function startTally(): Tally {
  return { compared: 0, wrong: 0, onLimit: 0, wrongInDoubles: 0 };
}

function count(
  tally: Tally,
  judged: ReturnType<typeof judge>,
  kind: BoundKind,
  exactOrder: number,
  doubleOrder: number,
): void {
  const truth = holds(kind, exactOrder);
  tally.compared += 1;
  if (judged.byRange !== truth || judged.byRational !== truth) tally.wrong += 1;
  if (exactOrder === 0) tally.onLimit += 1;
  if (holds(kind, doubleOrder) !== truth) tally.wrongInDoubles += 1;
}

const TENTHS = fc.integer({ min: 1, max: 60_000 }).map((tenths) => `${Math.floor(tenths / 10)}.${tenths % 10}`);
const STEP = fc.integer({ min: -2, max: 2 });

/** The reading in `unit`, as text, that lies `step` quanta from an exact number of pascals. */
function readNear(pascals: Fraction, symbol: string, step: number): string {
  const unit = unitOf(symbol);
  const nearest = pascals.div(factorsOf(symbol).exact).mul(unit.quantaPerUnit).floor();
  return formatQuantity({ quanta: Number(nearest.valueOf()) + step, unit });
}

function numberOf(text: string): string {
  return text.slice(0, text.indexOf(" "));
}

describe("comparisons against exact fractions", () => {
  it("puts 50,000 readings on the right side of limits in other units", () => {
    const cases = fc.sample(
      fc.tuple(TENTHS, fc.constantFrom(...SYMBOLS), fc.constantFrom(...SYMBOLS), STEP, fc.constantFrom(...KINDS)),
      {
        seed: SEED,
        numRuns: 50_000,
      },
    );
    const tally = startTally();
    for (const [limitNumber, limitSymbol, readingSymbol, step, kind] of cases) {
      const limitPascals = new Fraction(limitNumber).mul(factorsOf(limitSymbol).exact);
      const readingNumber = numberOf(readNear(limitPascals, readingSymbol, step));
      const reading = readSample(`${readingNumber} ${readingSymbol}`, "pressure");
      const bound = { kind, limit: rationalOfQuantity(readSample(`${limitNumber} ${limitSymbol}`, "pressure")) };
      const exactOrder = new Fraction(readingNumber).mul(factorsOf(readingSymbol).exact).compare(limitPascals);
      const doubleOrder =
        Number(readingNumber) * factorsOf(readingSymbol).double - Number(limitNumber) * factorsOf(limitSymbol).double;
      count(tally, judge(bound, reading.quanta, reading.unit), kind, exactOrder, doubleOrder);
    }
    expect(tally.wrong).toBe(0);
    expect(tally.compared).toBe(50_000);
    expect(tally.onLimit).toBeGreaterThan(1000);
    expect(tally.wrongInDoubles).toBeGreaterThan(100);
  });

  it("puts 25,000 readings on the right side of a percentage of a rated pressure, 33 % of 4500 psi included", () => {
    const percents = fc.oneof(
      fc.constantFrom("33", "90", "95", "80", "66.6", "33.3"),
      TENTHS.filter((text) => Number(text) <= 120),
    );
    const ratings = fc.oneof(
      fc.constantFrom("4500 psi", "2216 psi", "300 bar", "200 bar", "310.3 bar"),
      fc.tuple(TENTHS, fc.constantFrom("bar", "psi")).map(([number, symbol]) => `${number} ${symbol}`),
    );
    const cases = fc.sample(
      fc.tuple(percents, ratings, fc.constantFrom("bar", "psi"), STEP, fc.constantFrom(...KINDS)),
      {
        seed: SEED,
        numRuns: 25_000,
      },
    );
    const tally = startTally();
    for (const [percent, rating, readingSymbol, step, kind] of cases) {
      const ratedSymbol = rating.slice(rating.indexOf(" ") + 1);
      const limitPascals = new Fraction(numberOf(rating))
        .mul(factorsOf(ratedSymbol).exact)
        .mul(new Fraction(percent))
        .div(100);
      const readingNumber = numberOf(readNear(limitPascals, readingSymbol, step));
      const reading = readSample(`${readingNumber} ${readingSymbol}`, "pressure");
      const share = rationalOfQuantity(readSample(`${percent} %`, "fraction"));
      const limit = multiplyRational(
        multiplyRational(share, makeRational(1n, 100_000_000n)),
        rationalOfQuantity(readSample(rating, "pressure")),
      );
      const exactOrder = new Fraction(readingNumber).mul(factorsOf(readingSymbol).exact).compare(limitPascals);
      const ratedInDoubles =
        Number(numberOf(rating)) * (ratedSymbol === readingSymbol ? 1 : factorsOf(ratedSymbol).double);
      const readingInDoubles =
        Number(readingNumber) * (ratedSymbol === readingSymbol ? 1 : factorsOf(readingSymbol).double);
      const doubleOrder = readingInDoubles - (ratedInDoubles * Number(percent)) / 100;
      count(tally, judge({ kind, limit }, reading.quanta, reading.unit), kind, exactOrder, doubleOrder);
    }
    expect(tally.wrong).toBe(0);
    expect(tally.onLimit).toBeGreaterThan(1000);
    expect(tally.wrongInDoubles).toBeGreaterThan(100);
  });

  it("puts 25,000 drops of one decimal on the right side of their limit", () => {
    const cases = fc.sample(
      fc.tuple(
        fc.integer({ min: 1000, max: 4000 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: -1, max: 1 }),
        fc.constantFrom("bar", "psi"),
        fc.constantFrom(...KINDS),
      ),
      { seed: SEED, numRuns: 25_000 },
    );
    const tally = startTally();
    for (const [startTenths, limitTenths, step, symbol, kind] of cases) {
      const texts = [startTenths, startTenths - limitTenths + step, limitTenths].map((tenths) =>
        new Fraction(tenths, 10).toString(),
      );
      const [start = "", end = "", limit = ""] = texts;
      const unit = unitOf(symbol);
      const drop =
        readSample(`${start} ${symbol}`, "pressure").quanta - readSample(`${end} ${symbol}`, "pressure").quanta;
      const bound = { kind, limit: rationalOfQuantity(readSample(`${limit} ${symbol}`, "pressure")) };
      const exactOrder = new Fraction(start).sub(new Fraction(end)).compare(new Fraction(limit));
      count(tally, judge(bound, drop, unit), kind, exactOrder, Number(start) - Number(end) - Number(limit));
    }
    expect(tally.wrong).toBe(0);
    expect(tally.onLimit).toBeGreaterThan(1000);
    expect(tally.wrongInDoubles).toBeGreaterThan(1000);
  });

  it("finds 290.3 to 280.2 bar to be a drop of 10.1 bar, which doubles do not", () => {
    const drop = readSample("290.3 bar", "pressure").quanta - readSample("280.2 bar", "pressure").quanta;
    const atMost = { kind: "at-most", limit: rationalOfQuantity(readSample("10.1 bar", "pressure")) } as const;
    const atLeast = { ...atMost, kind: "at-least" } as const;
    for (const bound of [atMost, atLeast])
      expect(judge(bound, drop, unitOf("bar"))).toEqual({ byRange: true, byRational: true });
    expect(290.3 - 280.2).not.toBe(10.1);
  });
});
