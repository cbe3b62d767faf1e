import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compilePolicy, describeCheck, evaluate, type Policy, restorePlan } from "../../src/index.js";

const SHIPPED = "policies/common-practice";
const read = (name: string) => readFileSync(name, "utf8");
const parse = (name: string): unknown => JSON.parse(read(name));

/** Where a value has what JSON would leave out or change. */
function listOdd(value: unknown, pointer = ""): readonly string[] {
  if (value === null || typeof value === "string" || typeof value === "boolean") return [];
  if (typeof value === "number") return Number.isFinite(value) ? [] : [pointer];
  if (typeof value !== "object") return [pointer];
  return Object.entries(value).flatMap(([key, member]) => listOdd(member, `${pointer}/${key}`));
}

function compile(file: string, parents: Readonly<Record<string, string>> = {}): Policy {
  const { policy, diagnostics } = compilePolicy(read(file), { file: "lowmere.yaml", parents });
  if (policy === undefined) throw new Error(diagnostics.map(({ message }) => message).join("; "));
  return policy;
}

const WORKED = compile("tests/contract/lowmere.yaml", {
  "common-practice/open-circuit": read("tests/contract/parent.yaml"),
});
const policies: readonly [string, Policy][] = [
  ["the worked example", WORKED],
  ...readdirSync(SHIPPED).map((name): [string, Policy] => [name, compile(`${SHIPPED}/${name}`)]),
];
const records = [
  "tests/contract/record.json",
  ...readdirSync("examples/records").map((name) => `examples/records/${name}`),
].filter((name) => name.endsWith(".json"));

it("finds what is no plain data", () => {
  expect(listOdd({ a: [1, undefined], b: { c: Number.NaN }, d: () => 1, e: null })).toEqual(["/a/1", "/b/c", "/d"]);
});

describe.each(policies)("under %s", (_, policy) => {
  it("the plan is plain data", () => {
    expect(listOdd(policy.plan)).toEqual([]);
  });

  it("every form is plain data", () => {
    for (const { check } of policy.plan.checks) {
      const form = describeCheck(policy, check, { kind: "set", id: "S-014", fitted: {}, cylinders: [{ id: "C-381" }] });
      expect(form).toBeDefined();
      expect(listOdd(form)).toEqual([]);
    }
  });

  it("every assessment is plain data", () => {
    for (const name of records) {
      const record = parse(name);
      expect(listOdd(evaluate(policy, record))).toEqual([]);
      expect(listOdd(evaluate(policy, { ...Object(record), steps: [] }))).toEqual([]);
    }
  });
});

// A plan that a station has saved must be judged by later releases as it was by this one.
describe("the saved plan of the worked example", () => {
  const saved = parse("tests/contract/plan.json");

  it("is what the policy still compiles to", () => {
    expect(policies[0]?.[1].plan).toEqual(saved);
  });

  it("is restored, and comes to the saved assessment", () => {
    const { policy, problem } = restorePlan(saved);
    if (policy === undefined) throw new Error(problem);
    const record = Object(parse("tests/contract/record.json"));
    const assessment = parse("tests/contract/assessment.json");
    expect(evaluate(policy, record)).toEqual(assessment);
    // Keys stand in the order in which they are printed.
    expect(JSON.stringify(evaluate(policy, record))).toBe(JSON.stringify(assessment));
  });

  it("is restored, and comes to the saved form", () => {
    const { policy, problem } = restorePlan(saved);
    if (policy === undefined) throw new Error(problem);
    const { subject, station, by } = Object(parse("tests/contract/record.json"));
    const form = describeCheck(policy, "daily", subject, { at: "2026-04-12", station, by });
    expect(form).toEqual(parse("tests/contract/form.json"));
  });
});
