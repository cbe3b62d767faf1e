import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate } from "../../src/index.js";

const read = (name: string) => readFileSync(`tests/contract/${name}`, "utf8");

/** The worked example of the language page: a local policy, its shortened parent, one record, fifteen results. */
function assess() {
  const parents = { "common-practice/open-circuit": read("parent.yaml") };
  const { policy, diagnostics } = compilePolicy(read("lowmere.yaml"), { file: "lowmere.yaml", parents });
  expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  if (policy === undefined) throw new Error("the worked example does not compile");
  return evaluate(policy, JSON.parse(read("record.json")));
}

describe("the worked example", () => {
  it("comes to withdraw with fifteen results", () => {
    const assessment = assess();
    expect(assessment).toMatchObject({
      tenbar: 1,
      kind: "assessment",
      recordId: "lm3-s014-0412",
      check: "daily",
      subject: "S-014",
      judged: true,
      verdict: "withdraw",
      policy: { id: "lowmere/open-circuit", version: "2026.1" },
      counts: { within: 11, caution: 0, outside: 1, undecided: 0, notApplicable: 3 },
    });
    expect(assessment.results).toHaveLength(15);
  });

  it("states the drop to the letter", () => {
    expect(assess().results.find(({ requirement }) => requirement === "drop")).toEqual({
      step: "leak",
      requirement: "drop",
      outcome: "outside",
      consequence: "withdraw",
      observed: "20 bar",
      span: { from: "10 bar", to: "30 bar", ends: "()" },
      accept: "at most 10 bar",
      margin: "-10 bar",
      confidence: 0,
      pointers: ["/steps/3"],
    });
  });

  it("finds the drop, with the places in the policy that ask for it and limit it", () => {
    expect(assess().findings).toEqual([
      {
        code: "hold/drop-outside",
        step: "leak",
        requirement: "drop",
        outcome: "outside",
        consequence: "withdraw",
        pointer: "/steps/3",
        where: { file: "lowmere.yaml", line: 78, column: 9 },
        limitAt: { file: "lowmere.yaml", line: 37, column: 13 },
        params: { observed: "20 bar", accept: "at most 10 bar" },
        basis: { kind: "common-practice" },
        message: "pressure fell `20 bar` over the hold; at most `10 bar` is accepted",
        fingerprint: "lowmere%2Fopen-circuit|S-014||leak|drop|hold/drop-outside|",
      },
    ]);
  });
});
