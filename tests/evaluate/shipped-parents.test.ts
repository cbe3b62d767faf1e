import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate } from "../../src/index.js";

const PARENT = readFileSync("policies/common-practice/open-circuit.yaml", "utf8");
const RECORD = readFileSync("examples/records/clean-after-use.json", "utf8");

const compileChild = (text: string) =>
  compilePolicy(
    `tenbar: 1
policy: { id: lowmere/sets, title: Sets, version: "1", issuer: Lowmere, status: local }
extends: common-practice/open-circuit@1
${text}`,
    { file: "lowmere.yaml", parents: { "common-practice/open-circuit": PARENT } },
  );

function judge(policy: ReturnType<typeof compileChild>["policy"], text: string) {
  if (policy === undefined) throw new Error("the child has mistakes");
  const { verdict, findings } = evaluate(policy, JSON.parse(text));
  return { verdict, codes: findings.map(({ code }) => code) };
}

describe("a rule of the parent", () => {
  it("speaks of the other checks where the child takes one away", () => {
    const { policy, diagnostics } = compileChild("without: [monthly]\n");
    expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(judge(policy, RECORD)).toEqual({ verdict: "meets", codes: [] });
    const wrong = RECORD.replace('"ratedPressure": "300 bar"', '"ratedPressure": "230 bar"').replace(
      "290 bar",
      "210 bar",
    );
    expect(judge(policy, wrong)).toMatchObject({ verdict: "refer" });
    expect(judge(policy, wrong).codes).toContain("rule/rule-outside");
  });

  it("falls away where the child takes away every check that it names", () => {
    const { diagnostics } = compileChild(
      `without: [daily, after-use, monthly]
checks:
  short:
    order: any
    steps:
      - { step: harness, kind: confirm, ask: "Are the straps sound?" }
`,
    );
    expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  it("gives way to one of its name, for cylinders of other rated pressures", () => {
    const { policy } = compileChild(`rules:
  - rule: rated-pressure-known
    checks: [daily, after-use, monthly]
    require: { all: [{ var: subject.cylinders }, { in: [{ var: ratedPressure }, [232 bar]] }] }
    consequence: refer
    basis: { kind: local, order: "LO 20" }
`);
    expect(judge(policy, RECORD).codes).toEqual(["rule/rule-outside"]);
    const other = RECORD.replace('"ratedPressure": "300 bar"', '"ratedPressure": "232 bar"').replace(
      "290 bar",
      "230 bar",
    );
    expect(judge(policy, other).verdict).not.toBe("withdraw");
    expect(judge(policy, other).codes).not.toContain("rule/rule-outside");
  });
});
