import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comparePlans, coverDepartures, type Departure } from "../../src/compare/index.js";
import { makePolicy } from "../../src/evaluate/index.js";
import { compilePolicy, evaluate, type Policy, type Verdict } from "../../src/index.js";
import type { Covering } from "../../src/model/index.js";
import type { Data } from "../laws/generated-step.js";
import { countCase, countRuns } from "../laws/run-count.js";
import { CHILDREN, type GeneratedChild, generatedFamily, RECORDS } from "./generated-pair.js";

const WEIGHT: Readonly<Record<Verdict, number>> = { meets: 0, refer: 1, withdraw: 2 };
// Why: of most children nothing departs that an adoption could cover.
const FAMILIES = countRuns(150, CHILDREN * RECORDS * 0.3);

const compile = (policy: Data) => compilePolicy(JSON.stringify(policy)).policy;
const weigh = (policy: Policy, record: Data) => WEIGHT[evaluate(policy, record).verdict ?? "meets"];

/** One adoption for each step and interval that departs; undefined where something departs that none can name. */
function coverAll(departures: readonly Departure[], until: string): readonly Covering[] | undefined {
  const loose = departures.filter(({ relation }) => relation !== "tighter");
  if (loose.length === 0 || loose.some(({ step, interval }) => step === undefined && interval === undefined)) {
    return undefined;
  }
  const names = new Map(loose.map(({ step, interval }) => [step ?? interval, { step, interval }]));
  return [...names.values()].map(({ step, interval }, index) => ({
    id: `trial-${index}`,
    from: "2000-01-01",
    until,
    order: "TO 1",
    ...(step === undefined ? {} : { step }),
    ...(interval === undefined ? {} : { interval }),
    pointer: `/adopted/${index}`,
  }));
}

/** What the child's outcomes are, whatever is noted beside them. */
function listOutcomes(policy: Policy, record: Data) {
  const { verdict, results } = evaluate(policy, record);
  const asked = results.filter(({ reason }) => reason !== "omitted-by-adoption");
  return {
    verdict,
    omits: asked.length < results.length,
    results: asked.map(({ step, interval, rule, part, requirement, outcome, reason, accept }) =>
      JSON.stringify([step, interval, rule, part, requirement, outcome, reason, accept]),
    ),
  };
}

interface Tally {
  covered: number;
  improved: number;
  restored: number;
}

function tryChild(one: Policy, { child, records }: GeneratedChild, tally: Tally): void {
  const other = compile(child);
  const departures = other === undefined ? [] : comparePlans(one.plan, other.plan);
  const lapsed = coverAll(departures, "2000-12-31");
  const lasting = coverAll(departures, "2999-12-31");
  if (other === undefined || lapsed === undefined || lasting === undefined) return;
  const plans = { parent: one.plan, parentCovered: one.plan, child: other.plan, generation: 1, inherited: [] };
  const after = coverDepartures(plans, lapsed);
  if (after.stuck.length > 0) return;
  tally.covered += 1;
  const without = makePolicy(after.plan);
  const during = makePolicy(coverDepartures(plans, lasting).plan);
  for (const record of records) {
    countCase();
    const parents = weigh(one, record);
    const lapse = weigh(without, record);
    if (lapse < parents) throw new Error(JSON.stringify({ departures, child, record, parents, lapse }));
    const own = weigh(other, record);
    if (own < parents) tally.improved += 1;
    if (own < lapse) tally.restored += 1;
    const standing = listOutcomes(during, record);
    const stated = listOutcomes(other, record);
    // Why: what is recorded for a step that is left out takes part in the order, and may weigh more than on an unknown step.
    if (standing.omits) expect(weigh(during, record)).toBeGreaterThanOrEqual(own);
    else expect(standing).toEqual(stated);
  }
}

describe("an adoption that covers what a policy states looser", () => {
  it(
    "lets nothing pass after its end that the parent would not, and changes nothing before",
    () => {
      const tally = { covered: 0, improved: 0, restored: 0 };
      fc.assert(
        fc.property(generatedFamily, ({ parent, children }) => {
          const policy = compile(parent);
          if (policy === undefined) throw new Error(`a parent is refused: ${JSON.stringify(parent)}`);
          for (const child of children) tryChild(policy, child, tally);
        }),
        { numRuns: FAMILIES, endOnFailure: true },
      );
      // Why: records that the child lets pass, and the parent does not, are what the law is about.
      expect(tally.covered).toBeGreaterThan((FAMILIES * CHILDREN) / 12);
      expect(tally.improved).toBeGreaterThan(FAMILIES / 4);
      expect(tally.restored).toBeGreaterThan(FAMILIES / 4);
    },
    Math.max(60_000, FAMILIES * 1000),
  );
});
