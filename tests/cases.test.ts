import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as z from "zod";
import { type Assessment, evaluate, type Policy } from "../src/index.js";
import { loadPolicy } from "../src/node.js";
import { CONSEQUENCES, VERDICTS } from "../src/terms/index.js";

/** A case is data: a policy, a record, and what a competent person would expect of it. */
const caseModel = z.strictObject({
  policy: z.string(),
  record: z.string(),
  why: z.string().min(20),
  verdict: z.enum(VERDICTS),
  judged: z.boolean().optional(),
  findings: z.array(
    z.strictObject({
      step: z.string().optional(),
      interval: z.string().optional(),
      rule: z.string().optional(),
      part: z.string().optional(),
      requirement: z.string().optional(),
      outcome: z.string(),
      reason: z.string().optional(),
      consequence: z.enum(CONSEQUENCES),
    }),
  ),
  remarks: z.array(z.strictObject({ step: z.string().optional(), consequence: z.enum(CONSEQUENCES) })),
});

const policies = new Map<string, Policy>();

async function findPolicy(path: string): Promise<Policy> {
  const known = policies.get(path);
  if (known !== undefined) return known;
  const { policy, diagnostics } = await loadPolicy(path);
  if (policy === undefined || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics, undefined, 2));
  policies.set(path, policy);
  return policy;
}

const sortTexts = (texts: readonly string[]) => [...texts].sort();

/** The findings that have an outcome, and the remarks, each as comparable text. */
function summarise({ findings }: Assessment) {
  const judged = findings.filter(({ outcome }) => outcome !== undefined);
  const remarks = findings.filter(({ outcome }) => outcome === undefined);
  return {
    findings: sortTexts(
      judged.map(({ step, interval, rule, part, requirement, outcome, reason, consequence }) =>
        JSON.stringify([step, interval, rule, part, requirement, outcome, reason, consequence]),
      ),
    ),
    remarks: sortTexts(remarks.map(({ step, consequence }) => JSON.stringify([step, consequence]))),
  };
}

const names = readdirSync("tests/cases");

describe("cases", () => {
  it("has at least 25 of them", () => {
    expect(names.length).toBeGreaterThanOrEqual(25);
  });

  it.each(names)("%s", async (name) => {
    const expected = caseModel.parse(JSON.parse(readFileSync(`tests/cases/${name}/case.json`, "utf8")));
    const record: unknown = JSON.parse(readFileSync(expected.record, "utf8"));
    const assessment = evaluate(await findPolicy(expected.policy), record);
    expect({ verdict: assessment.verdict, judged: assessment.judged, ...summarise(assessment) }).toEqual({
      verdict: expected.verdict,
      judged: expected.judged ?? true,
      findings: sortTexts(
        expected.findings.map(({ step, interval, rule, part, requirement, outcome, reason, consequence }) =>
          JSON.stringify([step, interval, rule, part, requirement, outcome, reason, consequence]),
        ),
      ),
      remarks: sortTexts(expected.remarks.map(({ step, consequence }) => JSON.stringify([step, consequence]))),
    });
  });
});
