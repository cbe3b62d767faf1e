import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Assessment, compilePolicy, evaluate } from "../../src/index.js";
import { isMap, listMaps, type Path, readAt, replaceAt } from "./evidence-path.js";
import { generatedCase } from "./generated-case.js";
import type { Data } from "./generated-step.js";
import { mutate, mutations } from "./mutated-record.js";
import { countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

const VERDICTS = ["meets", "refer", "withdraw"] as const;
const OUTCOMES = ["within", "caution", "undecided", "outside"] as const;
const LIMITS = ["tolerance", "drop", "change", "lasting", "start"] as const;

const add = (limit: unknown, by: number) => String(limit).replace(/^-?\d+/, (number) => String(Number(number) + by));

/** The same limits, each moved inwards by so much of its own unit. */
function tighten(bounds: Data, by: number): Data {
  return Object.fromEntries(
    Object.entries(bounds).map(([name, limit]) => {
      if (Array.isArray(limit)) return [name, [add(limit[0], by), add(limit[1], -by)]];
      if (name === "at-least" || name === "above") return [name, add(limit, by)];
      return [name, name === "nominal" || name === "consequence" ? limit : add(limit, -by)];
    }),
  );
}

/** The paths of all limits that are written in steps. */
function listLimits(data: Data): readonly Path[] {
  const steps = listMaps(readAt(data, ["checks", "daily", "steps"]));
  return steps.flatMap((step, index) =>
    LIMITS.flatMap((name): readonly Path[] => {
      const written = step[name];
      if (!isMap(written)) return [];
      const path = ["checks", "daily", "steps", index, name];
      return [written.accept === undefined ? path : [...path, "accept"]];
    }),
  );
}

const rank = (assessment: Assessment) => VERDICTS.indexOf(assessment.verdict ?? "meets");

/** Outcomes of the requirements of steps, in policy order, as how bad they are; those not asked as -1. */
const rankResults = ({ results }: Assessment) =>
  results
    .filter(({ step }) => step !== undefined)
    .map(({ outcome }) => (outcome === "not-applicable" ? -1 : OUTCOMES.indexOf(outcome)));

function sortKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sortKeys);
  if (!isMap(value)) return value;
  const entries = Object.entries(value).map(([key, member]) => [key, sortKeys(member)] as const);
  return Object.fromEntries(entries.sort(([one], [other]) => (one < other ? -1 : 1)));
}

function reverseKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reverseKeys);
  if (!isMap(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, member]) => [key, reverseKeys(member)]),
  );
}

/** Findings without their places in the policy's text, and results, each in an order of its own. */
function settle({ verdict, findings, results }: Assessment): unknown {
  const bare = findings.map(({ where: _where, limitAt: _limitAt, ...rest }) => JSON.stringify(sortKeys(rest)));
  return { verdict, findings: bare.sort(), results: results.map((result) => JSON.stringify(sortKeys(result))).sort() };
}

describe("a policy that is changed", () => {
  it("never improves a verdict or an outcome by a tighter limit", () => {
    const seen = { worse: 0, same: 0 };
    fc.assert(
      fc.property(
        generatedCase,
        several(mutations),
        fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 30 })), { minLength: 1, maxLength: 3 }),
        ({ data, policy, record }, changed, moves) => {
          const paths = listLimits(data);
          const tighter = moves.reduce<unknown>((moved, [pick, by]) => {
            const path = paths[pick % paths.length] ?? [];
            return replaceAt(moved, path, tighten(Object(readAt(moved, path)), by));
          }, data);
          const { policy: other } = compilePolicy(JSON.stringify(tighter));
          // Limits that leave nothing between them are refused.
          fc.pre(other !== undefined);
          for (const changes of changed) {
            countCase();
            const one = mutate(record, changes);
            const before = evaluate(policy, one);
            const after = evaluate(other, one);
            expect(rank(after)).toBeGreaterThanOrEqual(rank(before));
            const ranks = rankResults(after);
            for (const [index, outcome] of rankResults(before).entries())
              if ((ranks[index] ?? -2) < outcome) throw new Error(JSON.stringify({ index, tighter, one }));
            if (rank(after) > rank(before)) seen.worse += 1;
            else seen.same += 1;
          }
        },
      ),
      { numRuns: countRuns(1200, RECORDS_EACH) },
    );
    expect(seen.worse).toBeGreaterThan(countRuns(1200) / 50);
    expect(seen.same).toBeGreaterThan(countRuns(1200) / 50);
  });

  it("finds the same, in whatever order the keys of its maps are written", () => {
    fc.assert(
      fc.property(generatedCase, several(mutations), ({ data, policy, record }, changed) => {
        const { policy: other } = compilePolicy(JSON.stringify(reverseKeys(data)));
        if (other === undefined) throw new Error("the turned policy was refused");
        for (const changes of changed) {
          countCase();
          const one = mutate(record, changes);
          expect(settle(evaluate(other, one))).toEqual(settle(evaluate(policy, one)));
        }
      }),
      { numRuns: countRuns(600, RECORDS_EACH) },
    );
  });
});
