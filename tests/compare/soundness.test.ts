import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comparePlans } from "../../src/compare/index.js";
import { compilePolicy, evaluate, type Policy, type Verdict } from "../../src/index.js";
import type { Data } from "../laws/generated-step.js";
import { countCase, countRuns } from "../laws/run-count.js";
import { CHANGE_NAMES, CHILDREN, type GeneratedChild, generatedFamily, RECORDS } from "./generated-pair.js";
import { generatedParent } from "./generated-parent.js";

const WEIGHT: Readonly<Record<Verdict, number>> = { meets: 0, refer: 1, withdraw: 2 };
// Why: some children are refused, and some records are of a check that the parent does not know.
const FAMILIES = countRuns(250, CHILDREN * RECORDS * 0.9);
const PAIRS = FAMILIES * CHILDREN;
/** In milliseconds. */
const PATIENCE = Math.max(30_000, PAIRS * 150);

function compile(policy: Data): Policy | undefined {
  return compilePolicy(JSON.stringify(policy)).policy;
}

function weigh(policy: Policy, record: Data): number {
  return WEIGHT[evaluate(policy, record).verdict ?? "meets"];
}

/** A check that only the child has is not compared. */
function knowsCheck({ plan }: Policy, record: Data): boolean {
  return plan.checks.some(({ check, formerly }) => [check, ...formerly].includes(String(record.check)));
}

/** How many pairs were met that differ in one kind of change, among others, and what became of them. */
interface Tally {
  reached: number;
  tighter: number;
  worse: number;
  improved: number;
}

type Tallies = ReadonlyMap<string, Tally>;

function createTallies(): Tallies {
  return new Map(CHANGE_NAMES.map((name) => [name, { reached: 0, tighter: 0, worse: 0, improved: 0 }]));
}

/** Compares one child with its parent, and judges its records under both. */
function tryPair(one: Policy, { child, changes, records }: GeneratedChild, tallies: Tallies): void {
  const other = compile(child);
  // Limits that leave nothing between them, and the like, are refused.
  if (other === undefined) return;
  const departures = comparePlans(one.plan, other.plan);
  const mayImprove = departures.some(({ relation }) => relation !== "tighter");
  const known = records.filter((record) => knowsCheck(one, record));
  const moves = known.map((record) => {
    countCase();
    return weigh(other, record) - weigh(one, record);
  });
  const improved = known.find((_, index) => (moves[index] ?? 0) < 0);
  if (improved !== undefined && !mayImprove)
    throw new Error(JSON.stringify({ changes, departures, child, record: improved }));
  for (const name of changes) {
    const tally = tallies.get(name);
    if (tally === undefined) throw new Error(`a change that is not listed: ${name}`);
    tally.reached += 1;
    if (!mayImprove && departures.length > 0) tally.tighter += 1;
    if (improved !== undefined) tally.improved += 1;
    if (moves.some((move) => move > 0)) tally.worse += 1;
  }
}

function countPairs(tallies: Tallies, key: keyof Tally): number {
  return [...tallies.values()].reduce((sum, tally) => sum + tally[key], 0);
}

describe("tighter, looser, cannot be compared", () => {
  it(
    "never lets a policy that is called tighter, or the same, improve a verdict",
    () => {
      const tallies = createTallies();
      fc.assert(
        fc.property(generatedFamily, ({ parent, children }) => {
          const policy = compile(parent);
          if (policy === undefined) throw new Error(`a parent is refused: ${JSON.stringify(parent)}`);
          for (const child of children) tryPair(policy, child, tallies);
        }),
        // Why: choices that come of a seed do not get simpler as it gets smaller.
        { numRuns: FAMILIES, endOnFailure: true },
      );
      // Why: a law over pairs that never differ would hold of anything.
      for (const [name, { reached }] of tallies) expect(reached, name).toBeGreaterThanOrEqual(PAIRS / 400);
      expect(countPairs(tallies, "tighter")).toBeGreaterThan(PAIRS / 16);
      expect(countPairs(tallies, "worse")).toBeGreaterThan(PAIRS / 5);
      expect(countPairs(tallies, "improved")).toBeGreaterThan(PAIRS / 8);
    },
    PATIENCE,
  );

  it("finds nothing between a policy and itself", () => {
    fc.assert(
      fc.property(generatedParent, (parent) => {
        const policy = compile(parent);
        fc.pre(policy !== undefined);
        expect(comparePlans(policy.plan, policy.plan)).toEqual([]);
      }),
      { numRuns: countRuns(250) },
    );
  });
});
