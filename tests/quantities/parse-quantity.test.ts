import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  DIMENSIONS,
  type Dimension,
  findUnit,
  mendQuantity,
  parseQuantity,
  type QuantityFault,
  UNITS,
} from "../../src/quantities/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { SEED } from "./read-sample.js";

const READ: readonly (readonly [text: string | number, dimension: Dimension, quanta: number, symbol: string])[] = [
  ["280 bar", "pressure", 28_000_000_000, "bar"],
  ["-10 mbar", "pressure", -1_000_000, "mbar"],
  ["0.00000001 bar", "pressure", 1, "bar"],
  ["1.000000000000000 bar", "pressure", 100_000_000, "bar"],
  ["-0 bar", "pressure", 0, "bar"],
  ["-0.5 bar", "pressure", -50_000_000, "bar"],
  ["9007199254740.991 Pa", "pressure", Number.MAX_SAFE_INTEGER, "Pa"],
  ["-9007199254740.991 Pa", "pressure", Number.MIN_SAFE_INTEGER, "Pa"],
  ["4500 psi", "pressure", 45_000_000, "psi"],
  ["2216.1234 [psi]", "pressure", 22_161_234, "psi"],
  ["10 mm[H2O]", "pressure", 100_000, "mmH2O"],
  ["0.00005 min", "duration", 3, "min"],
  ["0.0000025 h", "duration", 9, "h"],
  ["1.5 m", "length", 1_500_000, "m"],
  ["6.8 l", "volume", 6_800_000, "L"],
  ["0.123456789 m3", "volume", 123_456_789, "m3"],
  ["20 Cel", "temperature", 293_150, "Cel"],
  ["-273.15 Cel", "temperature", 0, "Cel"],
  ["293.15 K", "temperature", 293_150, "K"],
  ["-5 K", "temperature-difference", -5000, "K"],
  ["90 %", "fraction", 90_000_000, "%"],
  ["25 ppm", "fraction", 2500, "ppm"],
  ["90.5 dB", "sound-level", 90_500, "dB"],
  ["0.5 mg/m3", "mass-concentration", 500_000, "mg/m3"],
  ["40 L/min", "flow", 40_000_000, "L/min"],
  [2, "count", 2, ""],
  [-0, "count", 0, ""],
  [Number.MAX_SAFE_INTEGER, "count", Number.MAX_SAFE_INTEGER, ""],
];

const REFUSED: readonly (readonly [
  value: unknown,
  dimension: Dimension,
  fault: QuantityFault,
  mend: string | undefined,
])[] = [
  [null, "pressure", "missing", undefined],
  [undefined, "pressure", "missing", undefined],
  ["", "pressure", "missing", undefined],
  [" \t\u00a0", "pressure", "missing", undefined],
  ["", "count", "missing", undefined],
  [null, "count", "missing", undefined],
  [[], "pressure", "missing", undefined],
  [290, "pressure", "no-unit", "290 bar"],
  [0, "pressure", "no-unit", "0 bar"],
  [1e-7, "pressure", "no-unit", "0.0000001 bar"],
  ["290", "pressure", "no-unit", "290 bar"],
  ["60", "duration", "no-unit", "60 s"],
  [Number.NaN, "pressure", "unreadable", undefined],
  [Infinity, "count", "unreadable", undefined],
  [2 ** 53, "count", "unreadable", undefined],
  [1.5, "count", "too-fine", undefined],
  ["3", "count", "unreadable", "3"],
  ["9007199254740991", "count", "unreadable", "9007199254740991"],
  ["9007199254740992", "count", "unreadable", undefined],
  ["10e15", "count", "unreadable", undefined],
  ["3 ", "count", "unreadable", "3"],
  ["3 bar", "count", "wrong-dimension", undefined],
  [true, "pressure", "unreadable", undefined],
  [{ value: 10, unit: "bar" }, "pressure", "unreadable", undefined],
  [["10 bar"], "pressure", "unreadable", undefined],
  [10n, "pressure", "unreadable", undefined],
  ["10 furlong", "pressure", "unknown-unit", undefined],
  ["10 constructor", "pressure", "unknown-unit", undefined],
  ["10 s", "pressure", "wrong-dimension", undefined],
  ["10 bar", "duration", "wrong-dimension", undefined],
  ["5 Cel", "temperature-difference", "wrong-dimension", undefined],
  ["0.000000001 bar", "pressure", "too-fine", undefined],
  ["0.00001 psi", "pressure", "too-fine", undefined],
  ["0.00001 min", "duration", "too-fine", undefined],
  ["0.1234567890123456 bar", "pressure", "too-fine", undefined],
  ["90071993 bar", "pressure", "unreadable", undefined],
  ["9007199254740.992 Pa", "pressure", "unreadable", undefined],
  ["9007199254740.991 Cel", "temperature", "unreadable", undefined],
  ["1234567890123456 Pa", "pressure", "unreadable", undefined],
  ["-273.151 Cel", "temperature", "unreadable", undefined],
  ["-0.001 K", "temperature", "unreadable", undefined],
  ["ten bar", "pressure", "unreadable", undefined],
  ["10 bar 5", "pressure", "unreadable", undefined],
  ["10\n20 bar", "pressure", "unreadable", undefined],
  ["0x10 bar", "pressure", "unreadable", undefined],
  ["1_000 bar", "pressure", "unreadable", undefined],
  ["١٠ bar", "pressure", "unreadable", undefined],
];

/** What a slip is mended to; the fault is `unreadable` but where the number stood in the grammar. */
const MENDED: readonly (readonly [
  text: string,
  dimension: Dimension,
  fault: QuantityFault,
  mend: string | undefined,
])[] = [
  ["10bar", "pressure", "unreadable", "10 bar"],
  ["5,5 mbar", "pressure", "unreadable", "5.5 mbar"],
  ["0,125 bar", "pressure", "unreadable", "0.125 bar"],
  ["1,000 bar", "pressure", "unreadable", undefined],
  ["1.000,5 bar", "pressure", "unreadable", undefined],
  ["+290 bar", "pressure", "unreadable", "290 bar"],
  ["+290", "pressure", "unreadable", "290 bar"],
  ["2.9e2 bar", "pressure", "unreadable", "290 bar"],
  ["2.95E-1 bar", "pressure", "unreadable", "0.295 bar"],
  ["1e99 bar", "pressure", "unreadable", undefined],
  ["10\u00a0bar", "pressure", "unreadable", "10 bar"],
  ["10\u202fbar", "pressure", "unreadable", "10 bar"],
  ["\u221210 mbar", "pressure", "unreadable", "-10 mbar"],
  ["\u201310 mbar", "pressure", "unreadable", "-10 mbar"],
  ["≤ 10 bar", "pressure", "unreadable", "at-most: 10 bar"],
  ["<=10bar", "pressure", "unreadable", "at-most: 10 bar"],
  ["≥ 280 bar", "pressure", "unreadable", "at-least: 280 bar"],
  ["< 10 bar", "pressure", "unreadable", "below: 10 bar"],
  ["> 10 bar", "pressure", "unreadable", "above: 10 bar"],
  ["<> 10 bar", "pressure", "unreadable", undefined],
  [".5 bar", "pressure", "unreadable", "0.5 bar"],
  ["-.5 bar", "pressure", "unreadable", "-0.5 bar"],
  ["5. bar", "pressure", "unreadable", "5 bar"],
  ["010 bar", "pressure", "unreadable", "10 bar"],
  ["000 bar", "pressure", "unreadable", "0 bar"],
  ["10  bar", "pressure", "unreadable", "10 bar"],
  [" 10 bar", "pressure", "unreadable", "10 bar"],
  ["10 bar\n", "pressure", "unreadable", "10 bar"],
  ["10 Bar", "pressure", "unknown-unit", "10 bar"],
  ["10 PSI", "pressure", "unknown-unit", "10 psi"],
  ["10 Psi", "pressure", "unknown-unit", "10 psi"],
  ["10 bars", "pressure", "unknown-unit", "10 bar"],
  ["10 mmH20", "pressure", "unknown-unit", "10 mmH2O"],
  ["10 mPa", "pressure", "unknown-unit", undefined],
  ["20 °C", "temperature", "unknown-unit", "20 Cel"],
  ["30 sec", "duration", "unknown-unit", "30 s"],
  ["40 lpm", "flow", "unknown-unit", "40 L/min"],
  ["90%", "fraction", "unreadable", "90 %"],
  ["10 lbf/in2", "pressure", "unknown-unit", "10 psi"],
  ["10 mmWG", "pressure", "unknown-unit", "10 mmH2O"],
  ["10 mmwc", "pressure", "unknown-unit", "10 mmH2O"],
  ["30 secs", "duration", "unknown-unit", "30 s"],
  ["1 second", "duration", "unknown-unit", "1 s"],
  ["30 Seconds", "duration", "unknown-unit", "30 s"],
  ["5 mins", "duration", "unknown-unit", "5 min"],
  ["1 minute", "duration", "unknown-unit", "1 min"],
  ["5 minutes", "duration", "unknown-unit", "5 min"],
  ["1 hr", "duration", "unknown-unit", "1 h"],
  ["2 hrs", "duration", "unknown-unit", "2 h"],
  ["1 hour", "duration", "unknown-unit", "1 h"],
  ["2 hours", "duration", "unknown-unit", "2 h"],
  ["1 litre", "volume", "unknown-unit", "1 L"],
  ["6.8 litres", "volume", "unknown-unit", "6.8 L"],
  ["1 liter", "volume", "unknown-unit", "1 L"],
  ["6.8 liters", "volume", "unknown-unit", "6.8 L"],
  ["0.1 m³", "volume", "unknown-unit", "0.1 m3"],
  ["0.5 mg/m³", "mass-concentration", "unknown-unit", "0.5 mg/m3"],
  ["20 C", "temperature", "unknown-unit", "20 Cel"],
  ["20 Celsius", "temperature", "unknown-unit", "20 Cel"],
  ["90 percent", "fraction", "unknown-unit", "90 %"],
  ["=< 10 bar", "pressure", "unreadable", "at-most: 10 bar"],
  [">= 10 bar", "pressure", "unreadable", "at-least: 10 bar"],
  ["=> 10 bar", "pressure", "unreadable", "at-least: 10 bar"],
  [">10 bar", "pressure", "unreadable", "above: 10 bar"],
  ["= 10 bar", "pressure", "unreadable", undefined],
  // An everyday spelling of another dimension's unit is no mend.
  ["10 seconds", "pressure", "unknown-unit", undefined],
  ["5 bars", "duration", "unknown-unit", undefined],
  // One letter added, dropped or replaced, in symbols of three letters or more.
  ["10 br", "pressure", "unknown-unit", "10 bar"],
  ["10 baar", "pressure", "unknown-unit", "10 bar"],
  ["10 bat", "pressure", "unknown-unit", "10 bar"],
  ["10 ar", "pressure", "unknown-unit", "10 bar"],
  ["10 barre", "pressure", "unknown-unit", undefined],
  ["10 abr", "pressure", "unknown-unit", undefined],
  ["10 Pb", "pressure", "unknown-unit", undefined],
  // Two symbols are one letter away from it, a thousand times apart.
  ["10 xPa", "pressure", "unknown-unit", undefined],
  ["10 hPa", "pressure", "unknown-unit", "10 mbar"],
  ["-1,5 bar", "pressure", "unreadable", "-1.5 bar"],
  ["-1,000 bar", "pressure", "unreadable", undefined],
  ["12,345 bar", "pressure", "unreadable", undefined],
  ["123,456 bar", "pressure", "unreadable", undefined],
  ["1234,567 bar", "pressure", "unreadable", "1234.567 bar"],
  ["0,000 bar", "pressure", "unreadable", "0.000 bar"],
  ["1,00 bar", "pressure", "unreadable", "1.00 bar"],
  ["1,0000 bar", "pressure", "unreadable", "1.0000 bar"],
  ["1,5,5 bar", "pressure", "unreadable", undefined],
  ["1,5e1 bar", "pressure", "unreadable", "15 bar"],
  ["1.5.5 bar", "pressure", "unreadable", undefined],
  ["-5. bar", "pressure", "unreadable", "-5 bar"],
  ["-007 bar", "pressure", "unreadable", "-7 bar"],
  ["0.50bar", "pressure", "unreadable", "0.50 bar"],
  ["1e+2 bar", "pressure", "unreadable", "100 bar"],
  ["1e-8 bar", "pressure", "unreadable", "0.00000001 bar"],
  ["1.20e1 bar", "pressure", "unreadable", "12 bar"],
  ["0.5e-1 bar", "pressure", "unreadable", "0.05 bar"],
  ["+ 290 bar", "pressure", "unreadable", "290 bar"],
  ["\u2212 10 mbar", "pressure", "unreadable", "-10 mbar"],
  ["\u200b10 bar", "pressure", "unreadable", "10 bar"],
  ["10 bar of air", "pressure", "unreadable", undefined],
  ["about 10 bar", "pressure", "unreadable", undefined],
  ["4,0", "count", "unreadable", undefined],
  ["-4", "count", "unreadable", "-4"],
  ["+4", "count", "unreadable", "4"],
  ["4 pieces", "count", "unknown-unit", undefined],
  ["04", "count", "unreadable", "4"],
  ["-300Cel", "temperature", "unreadable", undefined],
  ["0.000000001bar", "pressure", "unreadable", undefined],
  // Texts of 64 characters are still mended, longer ones are not.
  [`${"0".repeat(58)}10 bar`, "pressure", "unreadable", "10 bar"],
  [`${"0".repeat(59)}10 bar`, "pressure", "unreadable", undefined],
  [`${"1".repeat(70)}bar`, "pressure", "unreadable", undefined],
];

describe("parseQuantity", () => {
  it.each(READ)("needs no mend for %o", (value, dimension) => {
    expect(mendQuantity(value, dimension)).toBeUndefined();
  });

  it.each(READ)("reads %o as %s", (text, dimension, quanta, symbol) => {
    const parsed = parseQuantity(text, dimension);
    expect(parsed).toEqual({ ok: true, quantity: { quanta, unit: findUnit(symbol, dimension) } });
  });

  it("never reads a negative zero", () => {
    const parsed = [
      parseQuantity("-0 bar", "pressure"),
      parseQuantity(-0, "count"),
      parseQuantity("-0.0 s", "duration"),
    ];
    for (const each of parsed) expect(each.ok && Object.is(each.quantity.quanta, 0)).toBe(true);
  });

  it.each(REFUSED)("refuses %o for %s as %s", (value, dimension, fault, mend) => {
    expect(parseQuantity(value, dimension)).toEqual({ ok: false, fault });
    expect(mendQuantity(value, dimension)).toBe(mend);
  });

  it.each(MENDED)("mends %o for %s (%s) to %o", (text, dimension, fault, mend) => {
    expect(parseQuantity(text, dimension)).toEqual({ ok: false, fault });
    expect(mendQuantity(text, dimension)).toBe(mend);
  });

  it("only ever suggests a mend that can be read", () => {
    const slip = fc.string({ unit: fc.constantFrom(..."0123456789.,+-−eE ≤<\u00a0barPSIsmin%KL/°C"), maxLength: 14 });
    let mends = 0;
    fc.assert(
      fc.property(slip, fc.constantFrom(...DIMENSIONS), (text, dimension) => {
        const found = mendQuantity(text, dimension);
        if (found === undefined) return;
        expect(parseQuantity(text, dimension).ok).toBe(false);
        mends += 1;
        const mend = found.replace(/^(at-most|at-least|above|below): /, "");
        expect(parseQuantity(dimension === "count" ? Number(mend) : mend, dimension).ok).toBe(true);
        if (dimension !== "count") expect(mend).not.toBe(text);
      }),
      { seed: SEED, numRuns: countQuickRuns(20_000) },
    );
    expect(mends).toBeGreaterThan(100);
  });

  it("agrees with the grammar and with exact integers on generated texts", () => {
    const digits = fc.string({ unit: fc.constantFrom(..."0123456789"), minLength: 0, maxLength: 17 });
    const generated = fc.tuple(
      fc.boolean(),
      digits,
      fc.option(digits),
      fc.constantFrom(...UNITS.filter(({ symbol }) => symbol !== "")),
    );
    let read = 0;
    fc.assert(
      fc.property(generated, ([negative, whole, fraction, unit]) => {
        const text = `${negative ? "-" : ""}${whole}${fraction === null ? "" : `.${fraction}`} ${unit.symbol}`;
        const parsed = parseQuantity(text, unit.dimension);
        const isInGrammar = /^-?(0|[1-9][0-9]{0,14})(\.[0-9]{1,15})? \S+$/.test(text);
        if (!isInGrammar) {
          expect(parsed.ok).toBe(false);
          return;
        }
        const scaled = BigInt(`${whole}${(fraction ?? "").padEnd(15, "0")}`) * BigInt(unit.quantaPerUnit);
        const signed = (negative ? -scaled : scaled) + BigInt(unit.offsetQuanta) * 10n ** 15n;
        const isWhole = signed % 10n ** 15n === 0n;
        const quanta = signed / 10n ** 15n;
        const isHeld = quanta <= BigInt(Number.MAX_SAFE_INTEGER) && quanta >= BigInt(Number.MIN_SAFE_INTEGER);
        const isColdest = unit.dimension === "temperature" && signed < 0n;
        expect(parsed.ok).toBe(isWhole && isHeld && !isColdest);
        if (parsed.ok) {
          read += 1;
          expect(BigInt(parsed.quantity.quanta)).toBe(quanta);
        }
      }),
      { seed: SEED, numRuns: countQuickRuns(20_000) },
    );
    expect(read).toBeGreaterThan(500);
  });
});
