import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Assessment, evaluate, type Policy } from "../../src/index.js";
import { listMaps, replaceAt } from "./evidence-path.js";
import { generatedCase } from "./generated-case.js";
import { mutate, mutations } from "./mutated-record.js";
import { countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

const judgePartly = (policy: Policy, record: unknown) => evaluate(policy, record, { partial: true });

const listReasons = ({ results }: Assessment) => results.map(({ reason }) => reason);

describe("a form that is half filled", () => {
  it("has no verdict, and calls nothing missing", () => {
    fc.assert(
      fc.property(generatedCase, several(mutations), ({ policy, record }, changed) => {
        for (const changes of changed) {
          countCase();
          const assessment = judgePartly(policy, mutate(record, changes));
          expect(assessment.verdict).toBeNull();
          expect(listReasons(assessment)).not.toContain("missing");
        }
      }),
      { numRuns: countRuns(600, RECORDS_EACH) },
    );
  });

  it("waits for the steps that are not filled yet, and finds nothing against them", () => {
    let waited = 0;
    fc.assert(
      fc.property(generatedCase, fc.nat(), ({ policy, record }, pick) => {
        const entries = listMaps(record.steps);
        const empty = entries[pick % entries.length]?.step;
        const filled = entries.filter(({ step }) => step !== empty);
        const { results, findings } = judgePartly(policy, replaceAt(record, ["steps"], filled));
        const asked = results.filter(({ step }) => step === empty);
        for (const { outcome, reason } of asked) expect([outcome, reason]).toEqual(["undecided", "not-yet"]);
        expect(findings.filter(({ step }) => step === empty)).toEqual([]);
        waited += asked.length;
      }),
      { numRuns: countRuns(400) },
    );
    expect(waited).toBeGreaterThanOrEqual(countRuns(400));
  });

  it("is judged as it will be, once it is filled", () => {
    fc.assert(
      fc.property(generatedCase, ({ policy, record }) => {
        expect(judgePartly(policy, record).results).toEqual(evaluate(policy, record).results);
      }),
      { numRuns: countRuns(300) },
    );
  });
});
