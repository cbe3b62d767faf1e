import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Assessment, evaluate, type Finding, type Result } from "../../src/index.js";
import { generatedCase } from "./generated-case.js";
import { mutate, mutations } from "./mutated-record.js";
import { areRunsFew, countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

const CONSEQUENCES = ["note", "advise", "refer", "withdraw"] as const;
const REFER = CONSEQUENCES.indexOf("refer");
const weigh = (consequence: (typeof CONSEQUENCES)[number]) => CONSEQUENCES.indexOf(consequence);

/** What a result weighs by the words of the language, before anything that was recorded against the set. */
function weighResult({ outcome, consequence }: Result, asOutside: boolean): number {
  const failure = weigh(consequence);
  if (outcome === "caution") return Math.min(failure, weigh("advise"));
  return outcome === "undecided" && !asOutside ? Math.min(failure, REFER) : failure;
}

const isOpen = ({ outcome }: Result) => outcome !== "within" && outcome !== "not-applicable";

const nameAsked = ({ step, interval, rule, part, requirement }: Result | Finding) =>
  JSON.stringify([step, interval, rule, part, requirement]);

function listOpen({ results }: Assessment): Map<string, Result> {
  return new Map(results.filter(isOpen).map((result) => [nameAsked(result), result]));
}

/** Order is asked of a check and found between steps, so that its findings name a step and its result none. */
const isOrder = ({ requirement }: Finding) => requirement === "order";
const isFound = ({ outcome }: Finding) => outcome !== undefined;

const assertLaw = (usual: number, law: (assessment: Assessment, data: Readonly<Record<string, unknown>>) => void) => {
  fc.assert(
    fc.property(generatedCase, several(mutations), ({ data, policy, record }, changed) => {
      for (const changes of changed) {
        countCase();
        law(evaluate(policy, mutate(record, changes)), data);
      }
    }),
    { numRuns: countRuns(usual, RECORDS_EACH) },
  );
};

describe("findings and verdict, told again from the results", () => {
  it("every result that is open has its finding, and no other has one", () => {
    const seen = new Set<string>();
    assertLaw(1200, (assessment) => {
      const { results, findings } = assessment;
      for (const { outcome } of results) seen.add(outcome);
      const found = findings.filter((finding) => isFound(finding) && !isOrder(finding)).map(nameAsked);
      const open = results.filter((result) => isOpen(result) && result.requirement !== "order").map(nameAsked);
      expect(found.sort()).toEqual(open.sort());
      const broken = results.some((result) => result.requirement === "order" && isOpen(result));
      expect(findings.some((finding) => isOrder(finding) && isFound(finding))).toBe(broken);
    });
    if (areRunsFew) return;
    expect([...seen].sort()).toEqual(["caution", "not-applicable", "outside", "undecided", "within"]);
  });

  it("a finding weighs what its result weighs, more only where something was recorded against it", () => {
    let equal = 0;
    assertLaw(1200, (assessment, data) => {
      const open = listOpen(assessment);
      for (const finding of assessment.findings.filter(isFound)) {
        const result = open.get(nameAsked(finding));
        if (result === undefined) continue;
        const least = weighResult(result, data.undecided === "as-outside");
        expect(weigh(finding.consequence)).toBeGreaterThanOrEqual(least);
        // What was recorded against a set weighs at least `refer`, and lifts nothing beyond that.
        if (weigh(finding.consequence) > least) expect(finding.consequence).toBe("refer");
        else equal += 1;
      }
    });
    expect(equal).toBeGreaterThan(countRuns(1200) / 4);
  });

  it("the verdict is the heaviest finding, and meets only where something that weighs refer was judged", () => {
    const seen = new Set<unknown>();
    assertLaw(1200, ({ verdict, results, findings, counts }) => {
      seen.add(verdict);
      const heaviest = Math.max(0, ...findings.map(({ consequence }) => weigh(consequence)));
      const told = heaviest < REFER ? "meets" : CONSEQUENCES[heaviest];
      expect(verdict).toBe(told);
      const judged = results.some(
        ({ step, outcome, consequence }) =>
          step !== undefined && weigh(consequence) >= REFER && (outcome === "within" || outcome === "caution"),
      );
      if (verdict === "meets") expect(judged).toBe(true);
      const count = (wanted: string) => results.filter(({ outcome }) => outcome === wanted).length;
      expect(counts).toEqual({
        within: count("within"),
        caution: count("caution"),
        outside: count("outside"),
        undecided: count("undecided"),
        notApplicable: count("not-applicable"),
      });
      const weights = findings.map(({ consequence }) => weigh(consequence));
      expect(weights).toEqual([...weights].sort((one, other) => other - one));
    });
    expect([...seen].sort()).toEqual(["meets", "refer", "withdraw"]);
  });

  it("a fingerprint is policy, subject, part, what asked, requirement, code and defect", () => {
    let tried = 0;
    assertLaw(600, ({ policy, subject, findings }) => {
      for (const { part, step, interval, rule, requirement, code, pointer, params, fingerprint } of findings) {
        // A remark is told apart by its place or key, a key of the record itself by where it stands; a broken order by the step
        // that should come later.
        const key = step === undefined && params?.["key"] !== undefined ? pointer : params?.["key"];
        const last = params?.["defect"] ?? params?.["place"] ?? key ?? params?.["early"];
        const names = [policy.id, subject, part, step ?? interval ?? rule, requirement, last].map((one) =>
          String(one ?? ""),
        );
        if (names.some((name) => /\p{Surrogate}/u.test(name))) continue;
        tried += 1;
        const encoded = names.map(encodeURIComponent);
        expect(fingerprint).toBe([...encoded.slice(0, -1), code, ...encoded.slice(-1)].join("|"));
      }
    });
    expect(tried).toBeGreaterThan(countRuns(600) / 4);
  });
});
