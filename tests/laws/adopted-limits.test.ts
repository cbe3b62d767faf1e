import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate, type Policy } from "../../src/index.js";
import { areRunsFew, countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

const OUTCOMES = ["within", "caution", "undecided", "outside"];
const DAYS = ["2026-03-31", "2026-04-01", "2026-04-15", "2026-04-30", "2026-05-01"];
const STATIONS = ["Lowmere 3", "Lowmere 4"];

interface Limits {
  readonly lasting: number;
  readonly drop: number;
}

const generatedAdoption = fc.record({
  requirement: fc.constantFrom("lasting" as const, "drop" as const),
  limit: fc.constantFrom(5, 10, 20, 40, 60),
  station: fc.option(fc.constantFrom(...STATIONS), { nil: undefined }),
  from: fc.constantFrom(...DAYS.slice(0, 3)),
  until: fc.constantFrom(...DAYS.slice(2)),
});

const generatedRecord = fc.record({
  day: fc.constantFrom(...DAYS),
  station: fc.option(fc.constantFrom("Lowmere 5", ...STATIONS), { nil: undefined }),
  held: fc.constantFrom(4, 15, 30, 60),
  fall: fc.constantFrom(4, 8, 15, 30, 50),
});
type Adoption = typeof generatedAdoption extends fc.Arbitrary<infer One> ? One : never;

const bound = (requirement: string, limit: number) =>
  requirement === "drop" ? { "at-most": `${limit} bar` } : { "at-least": `${limit} s` };

function compile(limits: Limits, adoptions: readonly Adoption[]) {
  const basis = { kind: "local", order: "LO 1" };
  const lasting = bound("lasting", limits.lasting);
  const drop = { accept: bound("drop", limits.drop) };
  const leak = { step: "leak", kind: "hold", quantity: "pressure", lasting, drop, basis };
  const adopted = adoptions.map(({ requirement, limit, station, from, until }, index) => ({
    id: `order-${requirement}-${limit}-${station?.slice(-1) ?? "all"}-${index}`,
    step: "daily/leak",
    requirement,
    accept: bound(requirement, limit),
    ...(station === undefined ? {} : { only: { station } }),
    from,
    until,
    order: "LO 1",
    by: "An officer",
    reason: "A trial",
  }));
  const { policy, diagnostics } = compilePolicy(
    JSON.stringify({
      tenbar: 1,
      policy: { id: "p", title: "P", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      checks: { daily: { order: "any", steps: [leak] } },
      ...(adopted.length === 0 ? {} : { adopted }),
    }),
  );
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
  return policy;
}

function judge(policy: Policy, record: unknown) {
  const results = evaluate(policy, record).results.filter(({ step }) => step === "leak");
  return results.map(({ requirement, outcome, reason, accept }) => ({ requirement, outcome, reason, accept }));
}
type Results = ReturnType<typeof judge>;

const rankOf = (outcome: string | undefined) => OUTCOMES.indexOf(outcome ?? "");

/** The worst of several judgements, each requirement for itself. */
function worstOf(judged: readonly Results[]): readonly string[] {
  return (judged[0] ?? []).map((_, index) => {
    const ranked = judged.map((results) => rankOf(results[index]?.outcome));
    return OUTCOMES[Math.max(...ranked)] ?? "";
  });
}

/** Every pair of limits of which each may stand: those of the orders that apply, else the policy's own. */
function listStanding(limits: Limits, adoptions: readonly Adoption[], day: string, station: string): readonly Limits[] {
  const inForce = adoptions.filter(
    (one) => one.from <= day && day <= one.until && (one.station ?? station) === station,
  );
  const of = (wanted: "lasting" | "drop") => {
    const found = inForce.filter(({ requirement }) => requirement === wanted).map(({ limit }) => limit);
    return found.length === 0 ? [limits[wanted]] : found;
  };
  return of("lasting").flatMap((lasting) => of("drop").map((drop) => ({ lasting, drop })));
}

describe("limits of adoptions", () => {
  it("judge as limits that are written directly, in whatever order the adoptions stand", () => {
    const known = new Map<string, Policy>();
    const find = (limits: Limits): Policy => {
      const key = JSON.stringify(limits);
      const policy = known.get(key) ?? compile(limits, []);
      known.set(key, policy);
      return policy;
    };
    const seen = { changed: 0, met: 0, open: 0 };
    fc.assert(
      fc.property(
        fc.record({ lasting: fc.constantFrom(20, 60), drop: fc.constantFrom(10, 20) }),
        fc.array(generatedAdoption, { minLength: 1, maxLength: 4 }),
        several(generatedRecord),
        (limits, adoptions, records) => {
          const policy = compile(limits, adoptions);
          const other = compile(limits, [...adoptions].reverse());
          for (const { day, station, held, fall } of records) {
            countCase();
            const record = {
              tenbar: 1,
              id: "r",
              check: "daily",
              at: day,
              ...(station === undefined ? {} : { station }),
              subject: { kind: "set", id: "S-014" },
              steps: [{ step: "leak", start: "290 bar", end: `${290 - fall} bar`, held: `${held} s` }],
            };
            const judged = judge(policy, record);
            const outcomes = judged.map(({ outcome }) => outcome);
            expect(judge(other, record).map(({ outcome }) => outcome)).toEqual(outcomes);
            const stations = station === undefined ? ["", ...STATIONS] : [station];
            const standing = stations.flatMap((one) => listStanding(limits, adoptions, day, one));
            const direct = standing.map((one) => judge(find(one), record));
            const worst = worstOf(direct);
            if (station === undefined) {
              for (const [index, outcome] of worst.entries())
                expect(rankOf(outcomes[index])).toBeGreaterThanOrEqual(rankOf(outcome));
              seen.open += 1;
            } else expect(outcomes).toEqual(worst);
            if (station !== undefined && direct.length === 1) {
              expect(judged).toEqual(direct[0]);
              if (standing[0]?.drop !== limits.drop || standing[0].lasting !== limits.lasting) seen.changed += 1;
            } else if (station !== undefined) seen.met += 1;
          }
        },
      ),
      { numRuns: countRuns(600, RECORDS_EACH) },
    );
    if (areRunsFew) return;
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(countRuns(600) / 50);
  });
});
