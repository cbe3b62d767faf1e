import { describe, expect, it } from "vitest";
import {
  findUnit,
  formatDifference,
  type Instrument,
  isInRange,
  isOnDivision,
  type Rational,
  rationalOfQuantity,
  type Span,
  spanOfDifference,
  spanOfReading,
} from "../../src/quantities/index.js";
import { readSample } from "./read-sample.js";

const BAR = readSample("1 bar", "pressure").unit;

function bar(number: number): Rational {
  return rationalOfQuantity(readSample(`${number} bar`, "pressure"));
}

function makeInstrument(stated: Partial<Instrument>): Instrument {
  return {
    division: undefined,
    rounding: "down",
    maxError: undefined,
    errors: "independent",
    rangeLow: undefined,
    rangeHigh: undefined,
    ...stated,
  };
}

/** A span as `[280 bar, 290 bar)`. */
function printSpan(span: Span | undefined): string {
  if (span === undefined) return "unknown";
  const ends = [span.from, span.to].map((end) => formatDifference(end, BAR, "down")).join(", ");
  return `${span.fromOpen ? "(" : "["}${ends}${span.toOpen ? ")" : "]"}`;
}

describe("spanOfReading", () => {
  it.each([
    [{ division: bar(10), rounding: "down" }, "[280 bar, 290 bar)"],
    [{ division: bar(10), rounding: "up" }, "(270 bar, 280 bar]"],
    [{ division: bar(10), rounding: "nearest" }, "[275 bar, 285 bar]"],
    [{ division: bar(10), maxError: bar(6.4) }, "[273.6 bar, 296.4 bar)"],
    [{ division: bar(10), maxError: bar(0) }, "[280 bar, 290 bar)"],
    [{ maxError: bar(4) }, "[276 bar, 284 bar]"],
    [{ division: bar(1), rounding: "nearest", maxError: bar(4), errors: "shared" }, "[275.5 bar, 284.5 bar]"],
    [{}, "unknown"],
  ] as const)("of 280 bar on %o is %s", (stated, span) => {
    expect(printSpan(spanOfReading(bar(280), makeInstrument(stated)))).toBe(span);
  });
});

describe("spanOfDifference", () => {
  it.each([
    [{ division: bar(10), rounding: "down" }, "(0 bar, 20 bar)"],
    [{ division: bar(10), rounding: "up" }, "(0 bar, 20 bar)"],
    [{ division: bar(10), rounding: "nearest" }, "[0 bar, 20 bar]"],
    [{ division: bar(10), maxError: bar(5) }, "(-10 bar, 30 bar)"],
    [{ division: bar(10), maxError: bar(5), errors: "shared" }, "(0 bar, 20 bar)"],
    [{ maxError: bar(5) }, "[0 bar, 20 bar]"],
    [{ maxError: bar(5), errors: "shared" }, "[10 bar, 10 bar]"],
    [{ errors: "shared" }, "unknown"],
    [{}, "unknown"],
  ] as const)("of 290 and 280 bar on %o is %s", (stated, span) => {
    expect(printSpan(spanOfDifference(bar(290), bar(280), makeInstrument(stated)))).toBe(span);
  });
});

describe("isOnDivision", () => {
  it("knows what a gauge can show", () => {
    const dial = makeInstrument({ division: bar(10) });
    expect([280, 0, -10, 55, 280.1].map((number) => isOnDivision(bar(number), dial))).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
    expect(isOnDivision(bar(55.123), makeInstrument({}))).toBe(true);
  });

  it("counts the divisions of a thermometer from its own zero", () => {
    const celsius = findUnit("Cel", "temperature");
    const division = rationalOfQuantity(readSample("1 K", "temperature-difference"));
    const reading = rationalOfQuantity(readSample("20 Cel", "temperature"));
    expect(isOnDivision(reading, makeInstrument({ division }), celsius)).toBe(true);
    expect(isOnDivision(reading, makeInstrument({ division }))).toBe(false);
  });
});

describe("isInRange", () => {
  it("includes both ends and leaves an unstated side open", () => {
    const dial = makeInstrument({ rangeLow: bar(0), rangeHigh: bar(400) });
    expect([-0.1, 0, 400, 400.1].map((number) => isInRange(bar(number), dial))).toEqual([false, true, true, false]);
    expect(isInRange(bar(9999), makeInstrument({ rangeLow: bar(0) }))).toBe(true);
    expect(isInRange(bar(-9999), makeInstrument({ rangeHigh: bar(0) }))).toBe(true);
  });
});
