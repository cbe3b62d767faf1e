import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Assessment, compilePolicy, evaluate, type Policy, restorePlan, type Verdict } from "../../src/index.js";
import { policyData, recordData } from "../compare/generate-policies.js";
import { countCase, countRuns, RECORDS_EACH, several } from "../laws/run-count.js";

const USUAL = 3750;
const WEIGHT: Readonly<Record<Verdict, number>> = { meets: 0, refer: 1, withdraw: 2 };

const ajv = new Ajv2020({ strict: false });
const isAssessment = ajv.compile(JSON.parse(readFileSync("schemas/assessment.schema.json", "utf8")));
const isPlan = ajv.compile(JSON.parse(readFileSync("schemas/plan.schema.json", "utf8")));

const policy = policyData.map((data) => compilePolicy(JSON.stringify(data)).policy).filter((one) => one !== undefined);

const weigh = ({ verdict }: Assessment) => WEIGHT[verdict ?? "meets"];

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function listSteps(record: unknown): Record<string, unknown>[] {
  const steps = isObject(record) ? record.steps : undefined;
  return Array.isArray(steps) ? steps.filter(isObject) : [];
}

function withSteps(record: unknown, steps: readonly unknown[]): unknown {
  return { ...Object(record), steps };
}

function shuffleKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(shuffleKeys);
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, member]) => [key, shuffleKeys(member)] as const)
      .reverse(),
  );
}

/** The heaviest finding, told from the findings alone. */
function weighFindings({ findings }: Assessment): number {
  return Math.max(
    0,
    ...findings.map(({ consequence }) => ({ note: 0, advise: 0, refer: 1, withdraw: 2 })[consequence]),
  );
}

/** Findings without what moves when steps change places, in an order of their own. */
function settle({ findings, results, verdict }: Assessment): unknown {
  const sort = (texts: readonly string[]) => [...texts].sort();
  return {
    verdict,
    findings: sort(findings.map(({ pointer: _pointer, ...rest }) => JSON.stringify(rest))),
    results: sort(results.map(({ pointers, ...rest }) => JSON.stringify([rest, pointers.length]))),
  };
}

/** A law that gives false says nothing of a case; `share` is how many it speaks of, at the least. */
const assertLaw = (law: (policy: Policy, record: unknown, pick: number) => unknown, share = 1) => {
  fc.assert(
    fc.property(policy, several(fc.tuple(recordData, fc.nat())), (one, records) => {
      for (const [record, pick] of records) {
        if (law(one, record, pick) !== false) countCase();
      }
    }),
    { numRuns: countRuns(USUAL, RECORDS_EACH * share) },
  );
};

describe("laws of evaluation", () => {
  it("the verdict is what the findings weigh, the counts are those of the results, the form is the published one", () => {
    const seen = new Set<unknown>();
    assertLaw((one, record) => {
      const assessment = evaluate(one, record);
      seen.add(assessment.verdict);
      expect(weigh(assessment)).toBe(weighFindings(assessment));
      const { within, caution, outside, undecided, notApplicable } = assessment.counts;
      expect(within + caution + outside + undecided + notApplicable).toBe(assessment.results.length);
      const open = assessment.results.filter(({ outcome }) => ["caution", "outside", "undecided"].includes(outcome));
      for (const { requirement, step, part } of open) {
        const found = assessment.findings.some(
          (finding) =>
            finding.requirement === requirement &&
            (requirement === "order" || finding.step === step) &&
            finding.part === part,
        );
        expect(found).toBe(true);
      }
      if (!isAssessment(assessment)) throw new Error(ajv.errorsText(isAssessment.errors));
    });
    expect([...seen].sort()).toEqual(["meets", "refer", "withdraw"]);
  });

  it("the same gives the same, whatever the order of keys", () => {
    assertLaw((one, record) => {
      const text = JSON.stringify(evaluate(one, record));
      expect(JSON.stringify(evaluate(one, structuredClone(record)))).toBe(text);
      expect(JSON.stringify(evaluate(one, shuffleKeys(record)))).toBe(text);
    });
  });

  it("a record of empty steps, or of none, never meets", () => {
    assertLaw((one, record) => {
      const empty = listSteps(record).map(({ step }) => ({ step }));
      const bare = { ...Object(record), attested: undefined };
      expect(weigh(evaluate(one, withSteps(bare, [])))).toBeGreaterThan(0);
      expect(weigh(evaluate(one, withSteps(bare, empty)))).toBeGreaterThan(0);
    });
  });

  it("bad news never improves a verdict", () => {
    let worse = 0;
    assertLaw((one, record, pick) => {
      const steps = listSteps(record);
      const before = weigh(evaluate(one, record));
      const target = steps[pick % Math.max(1, steps.length)];
      const news: readonly unknown[][] = [
        [...steps, { step: "stranger", result: "defect" }],
        [...steps, { step: "stranger", result: "not-done" }],
        ...(target === undefined
          ? []
          : [
              [...steps, { ...target, defect: "burnt" }],
              [...steps, { ...target, result: "not-done" }],
            ]),
        ...(target === undefined
          ? []
          : [
              steps.map((entry) =>
                entry === target && entry.defect === undefined ? { ...entry, defect: "burnt" } : entry,
              ),
            ]),
      ];
      for (const changed of news) {
        const after = weigh(evaluate(one, withSteps(record, changed)));
        if (after < before) throw new Error(JSON.stringify({ plan: one.plan.checks, record, changed, before, after }));
        if (after > before) worse += 1;
      }
    });
    expect(worse).toBeGreaterThan(0);
  });

  it("changing places changes no finding but its pointers, where the order is any or told by instants", () => {
    let tried = 0;
    assertLaw((one, record) => {
      if (one.plan.checks[0]?.order === "position") return false;
      tried += 1;
      const turned = withSteps(record, listSteps(record).reverse());
      expect(settle(evaluate(one, turned))).toEqual(settle(evaluate(one, record)));
      return true;
    }, 0.65);
    expect(tried).toBeGreaterThan(countRuns(USUAL) / 4);
  });

  it("a restored plan judges as the original, and has the published form", () => {
    assertLaw((one, record) => {
      const { policy: restored } = restorePlan(JSON.parse(JSON.stringify(one.plan)));
      if (restored === undefined) throw new Error("the plan was refused");
      expect(JSON.stringify(evaluate(restored, record))).toBe(JSON.stringify(evaluate(one, record)));
      if (!isPlan(one.plan)) throw new Error(ajv.errorsText(isPlan.errors));
    });
  });

  it("an adoption outside its dates changes nothing", () => {
    const dates = fc.constantFrom(["2020-01-01", "2026-04-11"], ["2026-04-13", "2030-01-01"]);
    const change = fc.constantFrom<Record<string, unknown>>(
      { omit: true },
      { requirement: "level", accept: { "at-least": "0 bar" } },
    );
    fc.assert(
      fc.property(policyData, several(recordData), dates, change, (data, records, [from, until], changed) => {
        const adoption = {
          id: "a",
          step: "daily/charge",
          from,
          until,
          order: "TO 1",
          by: "An officer",
          reason: "A trial",
          ...changed,
        };
        const plain = compilePolicy(JSON.stringify(data)).policy;
        const adopted = compilePolicy(JSON.stringify({ ...Object(data), adopted: [adoption] })).policy;
        fc.pre(plain !== undefined && adopted !== undefined);
        const strip = ({ policy: _policy, ...rest }: Assessment) => JSON.stringify(rest);
        for (const record of records) {
          countCase();
          expect(withoutPlaces(strip(evaluate(adopted, record)))).toBe(withoutPlaces(strip(evaluate(plain, record))));
        }
      }),
      { numRuns: countRuns(USUAL, RECORDS_EACH) },
    );
  });

  it("an empty child equals its parent", () => {
    const head =
      "tenbar: 1\npolicy: { id: generated/one, title: Generated, version: '1', status: draft }\nextends: shipped/parent@1\n";
    fc.assert(
      fc.property(policyData, (data) => {
        const parent = compilePolicy(JSON.stringify(data)).policy;
        fc.pre(parent !== undefined);
        const child = compilePolicy(head, { parents: { "shipped/parent": JSON.stringify(data) } });
        expect(child.diagnostics.filter(({ code }) => code.startsWith("resolve/"))).toEqual([]);
        expect(child.policy?.plan.digest).toBe(parent.plan.digest);
      }),
      { numRuns: countRuns(USUAL / 5) },
    );
  });

  it("never throws, and gives an assessment of the published form for any JSON value", () => {
    fc.assert(
      fc.property(policy, fc.jsonValue(), recordData, fc.nat(), (one, value, record, pick) => {
        const spoiled = [
          value,
          { ...Object(record), steps: value },
          { ...Object(record), subject: value },
          spoil(record, value, pick),
        ];
        for (const any of spoiled) {
          countCase();
          const assessment = evaluate(one, any, { digest: true });
          if (!isAssessment(assessment)) throw new Error(ajv.errorsText(isAssessment.errors));
        }
      }),
      { numRuns: countRuns(USUAL, 4) },
    );
  });

  it.each([
    ["nested 5,000 deep", () => JSON.parse(`${"[".repeat(5000)}${"]".repeat(5000)}`)],
    ["with 10,001 steps", () => Array.from({ length: 10_001 }, () => ({ step: "charge" }))],
  ])("refuses steps %s by name", (_name, make) => {
    const [one] = fc.sample(policy, 1);
    if (one === undefined) throw new Error("no policy was made");
    const assessment = evaluate(one, {
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12",
      subject: { kind: "set", id: "S" },
      steps: make(),
    });
    expect(assessment).toMatchObject({ judged: false, verdict: "refer" });
  });

  it("takes prototype names for ordinary names", () => {
    const [one] = fc.sample(policy, 1);
    if (one === undefined) throw new Error("no policy was made");
    const names = ["__proto__", "constructor", "toString", "hasOwnProperty"];
    const record: unknown = JSON.parse(
      `{"tenbar":1,"id":"r","check":"constructor","at":"2026-04-12","subject":{"kind":"set","id":"S","fitted":{"__proto__":{"alarm":true}}},"steps":[${names.map((name) => `{"step":"${name}","${name}":1,"defect":"${name}"}`).join()}],"__proto__":{"x":1}}`,
    );
    expect(evaluate(one, record)).toMatchObject({ judged: true, verdict: "refer" });
    expect(evaluate(one, { ...Object(record), check: "daily" }).verdict).not.toBe("meets");
  });
});

/** Lines and columns move with every character that is put into a policy. */
function withoutPlaces(text: string): string {
  return text.replace(/"(line|column)":\d+/g, '"$1":0');
}

/** Puts a value in place of one field of one step. */
function spoil(record: unknown, value: unknown, pick: number): unknown {
  const steps = listSteps(record);
  const index = pick % Math.max(1, steps.length);
  const keys = Object.keys(steps[index] ?? {}).filter((key) => key !== "step");
  const key = keys[pick % Math.max(1, keys.length)];
  return withSteps(
    record,
    steps.map((step, place) => (place === index && key !== undefined ? { ...step, [key]: value } : step)),
  );
}
