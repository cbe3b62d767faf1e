import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate } from "../../src/index.js";
import type { Data } from "./generated-step.js";
import { areRunsFew, countRuns } from "./run-count.js";
import { judgeElapsed, judgeHold, judgeReading, type SlowGauge } from "./slow-judge.js";

const basis = { kind: "common-practice" };
const GAUGE: SlowGauge = { division: "10 bar", range: ["0 bar", "350 bar"] };

/** Half of all numbers lie on or beside a multiple of ten, where limits lie. */
const number = fc
  .tuple(fc.integer({ min: -2, max: 40 }), fc.constantFrom("", "", "", ".1", ".00000001", ".9999999"))
  .map(([ten, rest]) => `${ten === 0 ? "" : ten}0${rest}`)
  .map((text) => (text === "00" ? "0" : text));
const pressure = fc.oneof(
  { weight: 6, arbitrary: number.map((one) => `${one} bar`) },
  { weight: 1, arbitrary: number.map((one) => `${one} psi`) },
  fc.constantFrom("4351.1321 psi", "1450.3774 psi", "30 MPa", "10 MPa", "29000 kPa", "10000 mbar", "9999999.999 Pa"),
);
const duration = fc.oneof(
  number.map((one) => `${one} s`),
  fc.constantFrom("1 min", "0.5 min", "0.01 h", "1.5 min", "60.001 s", "59.9999 s"),
);
const spoiled = fc.constantFrom<unknown>(
  undefined,
  null,
  "",
  "  ",
  true,
  [],
  {},
  290,
  "290",
  "bar",
  "many bar",
  "290 parsec",
  "90 dB",
  "0.000000001 bar",
  "0.00001 psi",
);
const mostly = (arbitrary: fc.Arbitrary<string>) =>
  fc.oneof({ weight: 5, arbitrary }, { weight: 1, arbitrary: spoiled });

const limit = (unit: string) => fc.integer({ min: 0, max: 40 }).map((ten) => `${ten * 10} ${unit}`);
const bounds = (unit: string): fc.Arbitrary<Data> =>
  fc.oneof(
    limit(unit).map((one) => ({ "at-least": one })),
    limit(unit).map((one) => ({ "at-most": one })),
    limit(unit).map((one) => ({ above: one })),
    limit(unit).map((one) => ({ below: one })),
    fc
      .tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 }))
      .map(([low, more]) => ({ between: [`${low * 10} ${unit}`, `${(low + more) * 10} ${unit}`] })),
    fc.tuple(limit(unit), limit(unit)).map(([middle, reach]) => ({ nominal: middle, "plus-minus": reach })),
    fc
      .tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 20 }))
      .map(([low, more]) => ({ above: `${low * 10} ${unit}`, below: `${(low + more) * 10} ${unit}` })),
  );
const tolerance = (unit: string) =>
  fc.record({ accept: bounds(unit), caution: fc.option(bounds(unit), { nil: undefined }) });
const gauge = fc.option(fc.constant(GAUGE), { nil: undefined });

/** `outcome`, with `: reason` behind undecided, of each requirement of one step; nothing where the policy is refused. */
function judge(step: Data, entry: Data): Readonly<Record<string, string>> | undefined {
  const { policy } = compilePolicy(
    JSON.stringify({
      tenbar: 1,
      policy: { id: "generated/twin", title: "Twin", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      instruments: { gauge: { quantity: "pressure", rounding: "down", ...GAUGE } },
      checks: { daily: { order: "any", steps: [{ step: "one", basis, ...step }] } },
    }),
  );
  if (policy === undefined) return undefined;
  const { results } = evaluate(policy, {
    tenbar: 1,
    id: "r",
    check: "daily",
    at: "2026-04-12",
    subject: { kind: "set", id: "S" },
    steps: [{ step: "one", ...entry }],
  });
  const asked = results.filter(({ step: name }) => name === "one");
  return Object.fromEntries(
    asked.map(({ requirement, outcome, reason }) => [
      requirement,
      reason === undefined ? outcome : `${outcome}: ${reason}`,
    ]),
  );
}

/** Tries a law and tells what came out, so that a law over one outcome alone is noticed. */
function compare<T>(arbitrary: fc.Arbitrary<T>, judgeBoth: (one: T) => readonly [unknown, unknown]): Set<string> {
  const seen = new Set<string>();
  fc.assert(
    fc.property(arbitrary, (one) => {
      const [engine, twin] = judgeBoth(one);
      fc.pre(engine !== undefined);
      expect(engine, JSON.stringify(one)).toEqual(twin);
      for (const outcome of Object.values(Object(twin))) seen.add(String(outcome));
    }),
    { numRuns: countRuns(1500) },
  );
  return seen;
}

const READ = ["missing", "unreadable", "no-unit", "unknown-unit", "wrong-dimension", "too-fine"];
const list = (...reasons: readonly string[]) => [
  "within",
  "caution",
  "outside",
  ...[...READ, ...reasons].map((reason) => `undecided: ${reason}`),
];

describe("the engine and its slow twin", () => {
  it("agree on readings", () => {
    const one = fc.record({ evidence: mostly(pressure), tolerance: tolerance("bar"), gauge });
    const seen = compare(one, ({ evidence, tolerance: limits, gauge: read }) => [
      judge(
        { kind: "reading", quantity: "pressure", tolerance: limits, ...(read && { instrument: "gauge" }) },
        { reading: evidence },
      ),
      { level: judgeReading(evidence, limits, read) },
    ]);
    if (areRunsFew) return;
    expect([...seen]).toEqual(expect.arrayContaining(list("off-range")));
  });

  it("agree on times", () => {
    const one = fc.record({ evidence: mostly(duration), tolerance: tolerance("s") });
    const seen = compare(one, ({ evidence, tolerance: limits }) => [
      judge({ kind: "timing", tolerance: limits }, { elapsed: evidence }),
      { elapsed: judgeElapsed(evidence, limits) },
    ]);
    if (areRunsFew) return;
    expect([...seen]).toEqual(expect.arrayContaining(list("conflicting")));
  });

  it("agree on holds", () => {
    const one = fc.record({
      entry: fc.record({ start: mostly(pressure), end: mostly(pressure), held: mostly(duration) }),
      name: fc.constantFrom("drop", "rise", "change"),
      tolerance: tolerance("bar"),
      start: fc.option(bounds("bar"), { nil: undefined }),
      lasting: fc.option(bounds("s"), { nil: undefined }),
      gauge,
    });
    const seen = compare(one, ({ entry, ...hold }) => {
      const { name, tolerance: limits, start, lasting, gauge: read } = hold;
      const instrument = read && { instrument: "gauge" };
      return [
        judge({ kind: "hold", quantity: "pressure", [name]: limits, start, lasting, ...instrument }, entry),
        judgeHold(entry, hold),
      ];
    });
    if (areRunsFew) return;
    expect([...seen]).toEqual(
      expect.arrayContaining(
        list("off-range", "mixed-units", "start-too-low", "hold-too-short", "moved-the-wrong-way"),
      ),
    );
  });
});
