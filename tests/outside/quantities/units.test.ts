import { describe, expect, it } from "vitest";
import { type Dimension, findUnit, formatRational, rationalOfQuantity } from "../../../src/quantities/index.js";
import { readSample } from "../../quantities/read-sample.js";

/** Prints a quantity in another unit of its dimension, cut down. */
function convert(text: string, symbol: string, dimension: Dimension): string {
  const unit = findUnit(symbol, dimension);
  if (unit === undefined) throw new Error(`the test's own unit \`${symbol}\` is unknown`);
  return formatRational(rationalOfQuantity(readSample(text, dimension)), unit, "down");
}

/** Each published value as printed by its source; where the source rounds, the exact value was cut to our digits instead. */
const PUBLISHED: readonly (readonly [
  text: string,
  symbol: string,
  dimension: Dimension,
  printed: string,
  source: string,
])[] = [
  ["1 bar", "Pa", "pressure", "100000 Pa", "NIST SP 811, B.8: 1.0 E+05, exact (from memory); UCUM 2.2: bar = 1e5 Pa"],
  ["1 mbar", "Pa", "pressure", "100 Pa", "UCUM 2.2: prefix m on bar"],
  ["1 MPa", "bar", "pressure", "10 bar", "UCUM 2.2: prefix M on Pa"],
  ["1 kPa", "mbar", "pressure", "10 mbar", "UCUM 2.2: prefix k on Pa"],
  // 8896443230521/1290320000 = 6894.757293168361…; three decimals are the quantum of the pascal
  ["1 psi", "Pa", "pressure", "6894.757 Pa", "NIST SP 811, B.8: 6.894757 E+03; UCUM 2.2: 6894.757293168361"],
  ["1 bar", "psi", "pressure", "14.5037 psi", "UCUM 2.2 by a reference library: 14.503773773020926 [psi]"],
  ["200 bar", "psi", "pressure", "2900.7547 psi", "UCUM 2.2 by a reference library: 2900.754754604185 [psi]"],
  ["2216 psi", "bar", "pressure", "152.787821 bar", "derived from NIST SP 811, B.8: 152.78782 bar"],
  ["3000 psi", "bar", "pressure", "206.842718 bar", "derived from NIST SP 811, B.8: 206.84272 bar"],
  ["4500 psi", "bar", "pressure", "310.264078 bar", "derived from NIST SP 811, B.8: 310.26408 bar"],
  ["101325 Pa", "psi", "pressure", "14.6959 psi", "NIST SP 811, B.8: 1 atm = 101 325 Pa; 14.6959488 psi"],
  ["1000 mmH2O", "Pa", "pressure", "9806.65 Pa", "UCUM 2.2: m[H2O] = 9.80665 kPa; NIST SP 811, B.8"],
  [
    "98066.5 Pa",
    "mmH2O",
    "pressure",
    "10000 mmH2O",
    "NIST SP 811, B.8: technical atmosphere 9.80665 E+04 Pa, exact (from memory)",
  ],
  ["15 Cel", "K", "temperature", "288.15 K", "UCUM 2.2 by a reference library: 288.15 K"],
  ["1 min", "s", "duration", "60 s", "UCUM 2.2: min = 60 s"],
  ["1 h", "s", "duration", "3600 s", "UCUM 2.2: h = 60 min"],
  ["1 m3", "L", "volume", "1000 L", "NIST SP 811, B.8: 1 L = 1.0 E-03 m3, exact (from memory)"],
  ["1 %", "ppm", "fraction", "10000 ppm", "UCUM 2.2: % = 10*-2, [ppm] = 10*-6"],
  ["1 m", "mm", "length", "1000 mm", "SI Brochure, 9th edition, table 7"],
];

describe("published conversions", () => {
  it.each(PUBLISHED)("%s in %s (%s) is %s, by %s", (text, symbol, dimension, printed) => {
    expect(convert(text, symbol, dimension)).toBe(printed);
  });

  it("holds the psi as the exact ratio of NIST SP 811, B.8, and so of UCUM to its last digit", () => {
    const { numerator, denominator } = rationalOfQuantity(readSample("1 psi", "pressure"));
    // base quanta are millipascals
    expect(numerator * 1_290_320_000n).toBe(8_896_443_230_521_000n * denominator);
    expect(Number((numerator * 10n ** 9n) / denominator) / 1e12).toBeCloseTo(6894.757293168361, 11);
    // pound, standard gravity and inch, each exact by definition
    expect(numerator * 254n * 254n * 100n).toBe(denominator * 45_359_237n * 980_665n);
  });

  it.each([
    ["[psi]", "psi", "pressure"],
    ["mm[H2O]", "mmH2O", "pressure"],
    ["l", "L", "volume"],
    ["l/min", "L/min", "flow"],
    ["[ppm]", "ppm", "fraction"],
    ["Cel", "Cel", "temperature"],
    ["mbar", "mbar", "pressure"],
    ["kPa", "kPa", "pressure"],
    ["%", "%", "fraction"],
  ] as const)("accepts the UCUM 2.2 spelling %s", (ucum, symbol, dimension) => {
    expect(findUnit(ucum, dimension)?.symbol).toBe(symbol);
  });

  it.each(["PSI", "Bar", "BAR", "bara", "bar(g)"])("refuses %s, which UCUM 2.2 calls invalid", (symbol) => {
    expect(findUnit(symbol, "pressure")).toBeUndefined();
  });

  it("reads C as no temperature, since it is the coulomb in UCUM 2.2, and bar{gauge} as no plain bar", () => {
    expect(findUnit("C", "temperature")).toBeUndefined();
    expect(findUnit("bar{gauge}", "pressure")).toBeUndefined();
  });
});
