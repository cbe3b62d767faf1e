import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Verdict } from "../../src/index.js";
import { countRuns } from "../laws/run-count.js";
import { assess, makePolicy } from "./sample.js";

const RUNS = countRuns(3750);
const WEIGHT: Readonly<Record<Verdict, number>> = { meets: 0, refer: 1, withdraw: 2 };
const SEVERITY = { "not-applicable": 0, within: 1, caution: 2, undecided: 3, outside: 4 } as const;

const tens = fc.integer({ min: 0, max: 40 });
const bar = (count: number) => `${count * 10} bar`;
const consequence = fc.constantFrom("note", "advise", "refer", "withdraw");
const reading = fc.oneof(
  tens.map(bar),
  tens.map(bar),
  fc.constantFrom<unknown>(
    "900 bar",
    "4200 psi",
    "290",
    null,
    { atMost: "200 bar" },
    { between: ["100 bar", "200 bar"] },
  ),
);

const entry = fc.record(
  {
    step: fc.constant("charge"),
    of: fc.constantFrom("A", "B", "A", "B", "C"),
    reading,
    instrument: fc.constantFrom("dial", "dial", "stranger"),
    occurred: fc.constantFrom(true, true, false),
    result: fc.constantFrom("satisfactory", "not-done"),
  },
  { requiredKeys: ["step", "reading"] },
);

/** A level over one or two cylinders, its looser and its tighter limits, and what a record says. */
const sample = fc.record({
  low: fc.tuple(tens, tens),
  high: fc.tuple(tens, tens),
  ends: fc.constantFrom(
    { atLeast: "at-least", atMost: "at-most" },
    { atLeast: "above", atMost: "at-most" },
    { atLeast: "at-least", atMost: "below" },
  ),
  apart: fc.option(fc.tuple(fc.integer({ min: 0, max: 10 }), consequence), { nil: undefined }),
  level: consequence,
  caution: fc.option(tens, { nil: undefined }),
  gaps: fc.boolean(),
  entries: fc.array(entry, { maxLength: 4 }),
  cylinders: fc.constantFrom<unknown>(
    [{ id: "A" }, { id: "B" }],
    [{ id: "A" }, { id: "B" }],
    [{ id: "A" }],
    [{ id: "A" }, {}],
    [{ id: "A" }, { id: "A" }],
    null,
  ),
});

describe("tightening the limits of a level that is asked of each", () => {
  it("never improves a verdict, nor what becomes of any requirement", () => {
    const seen = { changed: 0, worse: 0, apart: 0 };
    fc.assert(
      fc.property(sample, ({ low, high, ends, apart, level, caution, gaps, entries, cylinders }) => {
        const { atLeast, atMost } = ends;
        const make = (from: number, to: number) => {
          const step = {
            step: "charge",
            kind: "reading",
            quantity: "pressure",
            each: "subject.cylinders",
            instrument: "dial",
            consequence: level,
            tolerance: {
              accept: { [atLeast]: bar(from), [atMost]: bar(to) },
              ...(caution === undefined ? {} : { caution: { above: bar(caution) } }),
            },
            ...(apart === undefined ? {} : { apart: { "at-most": bar(apart[0]), consequence: apart[1] } }),
            basis: { kind: "common-practice" },
          };
          return makePolicy([step, { step: "hoses", kind: "confirm" }], {
            instruments: {
              dial: { quantity: "pressure", division: "10 bar", rounding: "down", range: ["0 bar", "400 bar"] },
            },
            ...(gaps ? { undecided: "as-outside" } : {}),
          });
        };
        const [outerLow, innerLow] = [Math.min(...low), Math.max(...low)];
        const [innerHigh, outerHigh] = [Math.min(...high), Math.max(...high)];
        fc.pre(innerLow < innerHigh);
        const steps = [...entries, { step: "hoses", result: "satisfactory" }];
        const before = assess(make(outerLow, outerHigh), steps, { cylinders });
        const after = assess(make(innerLow, innerHigh), steps, { cylinders });
        if (JSON.stringify(before.results) !== JSON.stringify(after.results)) seen.changed += 1;
        const weigh = ({ verdict }: typeof before) => WEIGHT[verdict ?? "meets"];
        if (weigh(after) > weigh(before)) seen.worse += 1;
        expect(weigh(after)).toBeGreaterThanOrEqual(weigh(before));
        expect(after.results).toHaveLength(before.results.length);
        for (const [index, { requirement, outcome }] of before.results.entries()) {
          if (requirement === "apart") seen.apart += 1;
          const tighter = after.results[index]?.outcome ?? "not-applicable";
          // Why: caution only says that a limit is near, and a tighter limit may leave that band out.
          const floor = outcome === "caution" ? SEVERITY.within : SEVERITY[outcome];
          expect(SEVERITY[tighter]).toBeGreaterThanOrEqual(floor);
        }
      }),
      { numRuns: RUNS },
    );
    expect(seen.changed).toBeGreaterThan(RUNS / 4);
    expect(seen.worse).toBeGreaterThan(RUNS / 100);
    expect(seen.apart).toBeGreaterThan(RUNS / 4);
  });
});
