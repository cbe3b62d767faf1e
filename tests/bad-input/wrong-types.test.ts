import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { type Assessment, compilePolicy, describeCheck, evaluate, type Policy, recordSchema } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";
import { countRuns } from "../laws/run-count.js";
import { JUNK, listPaths, type Path, pickSpoilt, pointTo, readAt } from "./junk.js";

type Result = Assessment["results"][number];

/** Cases whose records hold evidence of every kind: sound ones, and ones with something wrong. */
const CASES = [
  "clean-single-cylinder",
  "clean-twin-set",
  "clean-after-use",
  "clean-monthly",
  "leak",
  "cylinder-cover-torn",
  "defect-beside-a-good-reading",
  "numbers-differ-and-one-missing",
  "pre-alarm-by-instants",
  "lowmere-clean",
  "lowmere-whistle-attested",
  "lowmere-mast-in-force",
  "lowmere-training-on-red",
  "mask-in-order",
  "cylinder-composite-dent",
  "air-at-200-bar",
  "fit-factor-500",
  "psi-clean",
] as const;

const readJson = (path: string) => JSON.parse(readFileSync(path, "utf8"));
const isWeighty = ({ consequence }: Result) => consequence === "refer" || consequence === "withdraw";
const passes = ({ outcome }: Result) => outcome === "within" || outcome === "caution";
const nameOf = ({ step, interval, rule, requirement, part }: Result) =>
  [step, interval, rule, requirement, part].join("|");
const touches = (at: string, { pointers }: Result) =>
  pointers.some((one) => one === at || at.startsWith(`${one}/`) || one.startsWith(`${at}/`));

const COMMON_KEYS = ["step", "result", "defect", "note", "at", "of", "instrument"];

/**
 * What the wrong value may stand for all the same: a fitting that is not there; or nothing at all in place of a defect, or of a
 * word beside figures, which a record need not have.
 */
function saysSomethingElse(path: Path, spoilt: unknown): boolean {
  const value = readAt(spoilt, path);
  const key = path.at(-1);
  if (path.includes("fitted")) return typeof value === "boolean";
  const isNothing =
    value === null || (typeof value === "string" && value.trim() === "") || JSON.stringify(value) === "[]";
  const others = Object.keys(Object(readAt(spoilt, path.slice(0, -1)))).filter((one) => !COMMON_KEYS.includes(one));
  return isNothing && (key === "defect" || (key === "result" && others.length > 0));
}

describe.each(CASES)("a wrong value anywhere in the record of %s", (name) => {
  const { policy: policyPath, record: recordPath } = readJson(`tests/cases/${name}/case.json`);
  const record: unknown = readJson(recordPath);

  it("never throws, never makes it better, and never passes for the evidence that it took away", async () => {
    const { policy } = await loadPolicy(policyPath);
    if (policy === undefined) throw new Error(`${policyPath} does not compile`);
    const before = evaluate(policy, record);
    let tried = 0;
    let lost = 0;
    for (const { path, name: wrong, spoilt } of pickSpoilt(record, countRuns(600))) {
      tried += 1;
      const at = pointTo(path);
      const after = evaluate(policy, spoilt, { digest: tried % 8 === 0 });
      if (!after.judged) {
        expect([at, wrong, after.verdict, after.results]).toEqual([at, wrong, "refer", []]);
        continue;
      }
      if (before.verdict !== "meets" && !saysSomethingElse(path, spoilt)) {
        expect([at, wrong, after.verdict]).not.toEqual([at, wrong, "meets"]);
      }
      const now = new Map(after.results.map((one) => [nameOf(one), one]));
      for (const one of before.results.filter((result) => isWeighty(result) && passes(result) && touches(at, result))) {
        const other = now.get(nameOf(one));
        const kept = other !== undefined && passes(other);
        if (!kept) lost += 1;
        if (kept) expect([at, wrong, nameOf(one), other.observed]).toEqual([at, wrong, nameOf(one), one.observed]);
        if (other === undefined) expect([at, wrong, after.verdict]).not.toEqual([at, wrong, "meets"]);
      }
    }
    expect(tried).toBeGreaterThanOrEqual(Math.min(countRuns(300), listPaths(record).length * JUNK.length));
    expect(lost).toBeGreaterThan(0);
    expect(Reflect.get({}, "polluted")).toBeUndefined();
  });
});

const PARENTS = {
  contract: { "common-practice/open-circuit": readFileSync("tests/contract/parent.yaml", "utf8") },
  shipped: { "common-practice/open-circuit": readFileSync("policies/common-practice/open-circuit.yaml", "utf8") },
};
const POLICIES = [
  { path: "tests/contract/lowmere.yaml", parents: PARENTS.contract, record: "tests/contract/record.json" },
  {
    path: "examples/lowmere/policy.yaml",
    parents: PARENTS.shipped,
    record: "examples/lowmere/records/lowmere-clean.json",
  },
  {
    path: "policies/common-practice/cylinders.yaml",
    parents: {},
    record: "examples/workshop/records/cylinder-in-order.json",
  },
  {
    path: "policies/common-practice/breathing-air.yaml",
    parents: {},
    record: "examples/workshop/records/air-at-200-bar.json",
  },
];

/** Everything that a policy can be asked. */
function useAll(policy: Policy, record: unknown): void {
  evaluate(policy, record);
  evaluate(policy, record, { partial: true });
  for (const { check } of policy.plan.checks) {
    expect(describeCheck(policy, check, Object(record).subject)).toBeDefined();
    expect(recordSchema(policy, check)).toBeDefined();
  }
}

describe.each(POLICIES)("a wrong value anywhere in $path", ({ path, parents, record: recordPath }) => {
  it("is a mistake with its place, or makes a policy that can be used", { timeout: 120_000 }, () => {
    const document: unknown = parse(readFileSync(path, "utf8"));
    const record: unknown = readJson(recordPath);
    let [refused, made] = [0, 0];
    for (const { path: at, name, spoilt } of pickSpoilt(document, countRuns(300))) {
      const text = JSON.stringify(spoilt, undefined, 1);
      const { policy, diagnostics } = compilePolicy(text, { parents });
      const errors = diagnostics.filter(({ severity }) => severity === "error");
      expect([pointTo(at), name, policy === undefined]).toEqual([pointTo(at), name, errors.length > 0]);
      const lines = text.split("\n");
      for (const { line, column, message } of errors) {
        expect([line <= lines.length, column <= (lines[line - 1] ?? "").length + 1]).toEqual([true, true]);
        expect(message.length).toBeLessThanOrEqual(2000);
      }
      if (policy === undefined) refused += 1;
      else {
        made += 1;
        useAll(policy, record);
      }
    }
    expect(refused).toBeGreaterThan(countRuns(150));
    expect(made).toBeGreaterThan(0);
    expect(Reflect.get({}, "polluted")).toBeUndefined();
  });
});

describe("a blank text where a policy must say something", () => {
  it.each(["", " ", "\n", "\u00a0", "\u200b"])("%j is no sentence that stands above the policy", (blank) => {
    const document = { ...parse(readFileSync("tests/contract/parent.yaml", "utf8")), deference: blank };
    expect(compilePolicy(JSON.stringify(document)).policy).toBeUndefined();
  });
});
