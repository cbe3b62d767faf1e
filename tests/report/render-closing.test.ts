import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/index.js";
import { countVerdict, NO_VERDICTS, renderClosing, type VerdictCounts } from "../../src/report/index.js";
import { assessSample, compileSample } from "./sample-assessments.js";

const { plan } = compileSample();
const PLAIN = { color: false, width: 80 } as const;
const render = (counts: Partial<VerdictCounts>) => renderClosing({ ...NO_VERDICTS, ...counts }, plan, PLAIN);

describe("the close of a run", () => {
  it("counts verdicts, and of those referred the records that could not be judged", () => {
    const unjudged = evaluate(compileSample(), {});
    const assessments = [assessSample({}), assessSample({ end: "270 bar" }), assessSample({ harness: "" }), unjudged];
    expect(assessments.reduce(countVerdict, NO_VERDICTS)).toEqual({
      meets: 1,
      refer: 2,
      withdraw: 1,
      notJudged: 1,
      notRead: 0,
    });
  });

  it("is a table where there are several", () => {
    const rows = render({ meets: 7, refer: 12, withdraw: 3, notJudged: 2, notRead: 1 }).split("\n").slice(0, 7);
    expect(rows.map((row) => row.split(/ {2,}/).filter((cell) => cell !== ""))).toEqual([
      ["verdict", "records"],
      ["meets the policy", "7"],
      ["refer to a competent person", "12"],
      ["of these, not judged", "2"],
      ["withdraw from use", "3"],
      ["in all", "22"],
      ["beside these, not read", "1"],
    ]);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([50]));
  });

  it("has no table for one record, and one where something beside it could not be read", () => {
    expect(render({ meets: 1 })).not.toContain("verdict");
    expect(render({ meets: 1, notRead: 1 })).toContain("beside these, not read");
  });

  it("names the policy with its version and digest, the deference, and each caution", () => {
    const text = render({ meets: 1 }).replaceAll(/\s+/g, " ");
    expect(text).toContain(`policy lowmere/leak-only 2026.1, Leak check of Lowmere (${plan.digest.slice(0, 19)})`);
    expect(text).toContain(plan.deference);
    expect(text).toContain("- Anyone in doubt about a set takes it off the run.");
    expect(text).toContain("it says nothing about findings of earlier records.");
  });
});
