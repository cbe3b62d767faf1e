import { describe, expect, it } from "vitest";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const level = { accept: { "at-least": "200 bar" } };
const harness = { step: "harness", kind: "confirm" };
const sound = { step: "harness", result: "satisfactory" };

const KINDS: readonly [string, Data, Data][] = [
  ["confirm", {}, { result: "satisfactory" }],
  ["reading", { quantity: "pressure", tolerance: level, basis }, { reading: "250 bar" }],
  ["match", { places: ["back", "mask"] }, { seen: { back: "014", mask: "014" } }],
  ["timing", { tolerance: { accept: { "at-most": "30 s" } }, basis }, { elapsed: "25 s" }],
  ["in-date", { within: "P1Y", basis }, { on: "2026-04-01" }],
  [
    "hold",
    {
      quantity: "pressure",
      drop: { accept: { "at-most": "10 bar" } },
      basis,
    },
    { start: "250 bar", end: "250 bar", held: "60 s" },
  ],
];

// What is left undone is somebody's to decide on, however little the policy makes of it.
describe.each(KINDS)("a %s step that weighs no more than advice", (kind, parts, evidence) => {
  const policy = makePolicy([harness, { step: "one", kind, consequence: "advise", ...parts }]);
  const judge = (...entries: readonly Data[]) => {
    const { verdict, findings } = assess(policy, [sound, ...entries.map((entry) => ({ step: "one", ...entry }))]);
    return { verdict, weights: findings.map(({ consequence }) => consequence) };
  };

  it("meets with its evidence, and with advice where nothing is recorded", () => {
    expect(judge(evidence)).toEqual({ verdict: "meets", weights: [] });
    const { verdict, weights } = judge({});
    expect(verdict).toBe("meets");
    expect(new Set(weights)).toEqual(new Set(["advise"]));
  });

  it("is referred where it is recorded as not done, in so far as nothing else is", () => {
    const { verdict, weights } = judge({ result: "not-done" });
    expect(verdict).toBe("refer");
    expect(new Set(weights)).toEqual(new Set(["refer"]));
  });

  it("is referred where one of two entries says so, in either order", () => {
    const done = { ...evidence, note: "in the yard" };
    for (const entries of [
      [done, { result: "not-done" }],
      [{ result: "not-done" }, done],
    ]) {
      const { verdict, weights } = judge(...entries);
      expect(verdict).toBe("refer");
      expect(weights).toContain("refer");
    }
  });
});
