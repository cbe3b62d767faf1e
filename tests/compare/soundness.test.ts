import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comparePlans } from "../../src/compare/index.js";
import { compilePolicy, evaluate, type Policy, type Verdict } from "../../src/index.js";
import { policyPair, recordData } from "./generate-policies.js";

const RUNS = Number(process.env.TENBAR_RUNS ?? 2000);
const WEIGHT: Readonly<Record<Verdict, number>> = { meets: 0, refer: 1, withdraw: 2 };

function compile(text: string): Policy | undefined {
  return compilePolicy(text).policy;
}

function weigh(policy: Policy, record: unknown): number {
  return WEIGHT[evaluate(policy, record).verdict ?? "meets"];
}

describe("tighter, looser, cannot be compared", () => {
  it("never lets a policy that is called tighter improve a verdict", () => {
    const seen = { compared: 0, tighter: 0, worse: 0, improved: 0 };
    fc.assert(
      fc.property(policyPair, fc.array(recordData, { minLength: 6, maxLength: 6 }), ({ parent, child }, records) => {
        const one = compile(parent);
        const other = compile(child);
        fc.pre(one !== undefined && other !== undefined);
        const departures = comparePlans(one.plan, other.plan);
        const mayImprove = departures.some(({ relation }) => relation !== "tighter");
        seen.compared += 1;
        if (!mayImprove && departures.length > 0) seen.tighter += 1;
        for (const record of records) {
          const before = weigh(one, record);
          const after = weigh(other, record);
          if (after > before) seen.worse += 1;
          if (after < before) {
            seen.improved += 1;
            if (!mayImprove) {
              throw new Error(JSON.stringify({ parent, child, record, departures, before, after }));
            }
          }
        }
      }),
      { numRuns: RUNS },
    );
    // Why: a law over pairs that never differ would hold of anything.
    expect(seen.tighter).toBeGreaterThan(seen.compared / 50);
    expect(seen.worse).toBeGreaterThan(0);
    expect(seen.improved).toBeGreaterThan(0);
  });

  it("finds nothing between a policy and itself", () => {
    fc.assert(
      fc.property(policyPair, ({ parent }) => {
        const policy = compile(parent);
        fc.pre(policy !== undefined);
        expect(comparePlans(policy.plan, policy.plan)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
