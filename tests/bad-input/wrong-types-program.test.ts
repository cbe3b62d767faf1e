import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { makeFolder, runProgram } from "../cli/run-in-process.js";
import { POLICY_TEXT, writeRecord } from "../cli/sample-policy.js";
import { countRuns } from "../laws/run-count.js";
import { pickSpoilt } from "./junk.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const good = files.put("good.json", writeRecord());
const WEIGHTY = ["refer", "withdraw"];

/** Codes as `tenbar evaluate --help` documents them: 1 for a finding at or above `refer`, or a record that could not be judged. */
function codeOf(assessment: { judged: boolean; findings: readonly { consequence: string }[] }): 0 | 1 {
  return !assessment.judged || assessment.findings.some(({ consequence }) => WEIGHTY.includes(consequence)) ? 1 : 0;
}

describe("the program on records with a wrong value somewhere", () => {
  it("ends with the code that its help documents, one file at a time", async () => {
    const seen = new Set<number>();
    for (const { spoilt } of pickSpoilt(JSON.parse(writeRecord()), countRuns(400))) {
      const path = files.put("spoilt.json", JSON.stringify(spoilt));
      const { code, out, error } = await runProgram(["evaluate", policy, path, "--format", "json"]);
      const assessment = JSON.parse(out);
      expect(code).toBe(codeOf(assessment));
      expect(error).toBe(assessment.judged ? "" : `${path}:1: the record could not be judged\n`);
      seen.add(code);
    }
    expect([...seen].sort()).toEqual([0, 1]);
  });

  it("loses none of many", async () => {
    const spoilt = [...pickSpoilt(JSON.parse(readFileSync("tests/contract/record.json", "utf8")), countRuns(1000))];
    const lines = spoilt.map((one) => JSON.stringify(one.spoilt)).join("\n");
    const { code, out, error } = await runProgram(["evaluate", policy, "-", "--format", "ndjson"], { input: lines });
    const assessments = out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect([code, assessments.length]).toEqual([1, spoilt.length]);
    const unjudged = assessments.flatMap(({ judged }, index) =>
      judged ? [] : [`-:${index + 1}: the record could not be judged\n`],
    );
    expect(unjudged.length).toBeGreaterThan(0);
    expect(error).toBe(unjudged.join(""));
    const text = await runProgram(["evaluate", policy, "-"], { input: lines });
    expect([text.code, text.error]).toEqual([1, error]);
  });
});

describe("the program on policies with a wrong value somewhere", () => {
  it("compiles or shows what is wrong, and never judges by what it could not compile", async () => {
    const seen = new Set<number>();
    for (const { spoilt } of pickSpoilt(parse(POLICY_TEXT), countRuns(300))) {
      const path = files.put("spoilt.yaml", JSON.stringify(spoilt));
      const compiled = await runProgram(["compile", path]);
      const judged = await runProgram(["evaluate", path, good]);
      expect(compiled.error).toBe("");
      expect([0, 2]).toContain(compiled.code);
      if (compiled.code === 2) expect([judged.code, judged.out]).toEqual([2, ""]);
      else expect(judged.code).toBeLessThan(2);
      seen.add(compiled.code);
    }
    expect([...seen].sort()).toEqual([0, 2]);
  });
});
