import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const harness = { step: "harness", kind: "confirm" };
const require = { "==": [{ var: "harness.result" }, "satisfactory"] };
const interval = { of: "set", every: "P1Y", counted: "from-last", date: "testedOn", basis };
const head = { id: "test/one", title: "One", version: "1", status: "draft" };

/** What is said of a policy for the class `open-circuit` with `parts`: code, severity, fact and both words. */
function check(parts: Data, daily: Data = {}, options: Parameters<typeof compilePolicy>[1] = {}) {
  const { policy, diagnostics } = compilePolicy(
    JSON.stringify({
      tenbar: 1,
      policy: head,
      deference: "Local procedure stands above this policy.",
      ...parts,
      checks: { daily: { order: "any", steps: [harness], ...daily } },
    }),
    options,
  );
  expect(policy).toBeDefined();
  return diagnostics.map(({ code, severity, params }) => [
    code,
    severity,
    params["fact"],
    params["word"],
    params["other"],
  ]);
}

const alike = (fact: string, word: string, other: string) => [["plan/words-alike", "warning", fact, word, other]];
const scope = { for: { class: "open-circuit" } };
const rule = (parts: Data) => ({ rules: [{ rule: "one", require, basis, ...parts }] });

describe("two words of one fact that differ only in how they are written", () => {
  const inClass = alike("class", "Open Circuit", "open-circuit");

  it.each<[string, Data, Data?]>([
    ["a check's scope", scope, { for: { class: "Open Circuit" } }],
    ["a list of a scope", scope, { for: { class: ["airline", "Open Circuit"] } }],
    [
      "an interval",
      { ...scope, intervals: { tested: { ...interval, for: { class: "Open Circuit" } } } },
      { intervals: ["tested"] },
    ],
    ["a rule's scope", { ...scope, ...rule({ for: { class: "Open Circuit" } }) }],
    ["a rule's condition", { ...scope, ...rule({ when: { "==": [{ var: "class" }, "Open Circuit"] } }) }],
    ["a condition turned round", { ...scope, ...rule({ when: { "!=": ["Open Circuit", { var: "class" }] } }) }],
    ["a list of a condition", { ...scope, ...rule({ when: { in: [{ var: "class" }, ["airline", "Open Circuit"]] } }) }],
    ["what a rule requires", { ...scope, ...rule({ require: { "==": [{ var: "class" }, "Open Circuit"] } }) }],
    [
      "a word that is chosen",
      { ...scope, ...rule({ when: { "==": [{ var: "class" }, { if: [require, "Open Circuit", "airline"] }] } }) },
    ],
    [
      "a term within another",
      { ...scope, ...rule({ when: { and: [require, { "==": [{ var: "class" }, "Open Circuit"] }] } }) },
    ],
    [
      "a case",
      {
        ...scope,
        tolerances: {
          charge: { basis, cases: [{ for: { class: "Open Circuit" }, accept: { "at-least": "200 bar" } }] },
        },
      },
      { steps: [harness, { step: "charge", kind: "reading", quantity: "pressure", tolerance: "charge" }] },
    ],
    [
      "an order",
      {
        ...scope,
        adopted: [
          {
            id: "trial",
            step: "daily/harness",
            omit: true,
            only: { class: "Open Circuit" },
            from: "2026-04-01",
            until: "2026-05-01",
            order: "LO 1",
            by: "An officer",
            reason: "A trial",
          },
        ],
      },
    ],
  ])("are found in %s", (_, parts, daily) => {
    expect(check(parts, daily)).toEqual(inClass);
  });

  it("are found in what checks are of and who makes them", () => {
    expect(check({ for: { kind: "BA set" } }, { subject: "ba-set" })).toEqual(alike("kind", "ba-set", "BA set"));
    expect(check({ for: { kind: "BA set" } }, { subject: { kind: "ba-set", formerly: ["x"] } })).toEqual(
      alike("kind", "ba-set", "BA set"),
    );
    expect(check(rule({ for: { competence: "Wearer" } }), { competence: ["officer", "wearer"] })).toEqual(
      alike("competence", "wearer", "Wearer"),
    );
    expect(check(rule({ for: { competence: "Wearer" } }), { competence: "wearer" })).toEqual(
      alike("competence", "wearer", "Wearer"),
    );
  });

  it("are told once, with the place of the other", () => {
    const twice = {
      ...scope,
      ...rule({ for: { class: "Open Circuit" }, when: { "==": [{ var: "class" }, "Open Circuit"] } }),
    };
    const parts = { tenbar: 1, policy: head, deference: "Local procedure stands above this policy.", ...twice };
    const { diagnostics } = compilePolicy(
      JSON.stringify({ ...parts, checks: { daily: { order: "any", steps: [harness] } } }, undefined, 1),
    );
    expect(diagnostics).toHaveLength(1);
    const [only] = diagnostics;
    expect(only?.frame).toContain("Open Circuit");
    expect(only?.related?.[0]?.line).toBeLessThan(only?.line ?? 0);
    expect(only?.related?.[0]?.line).toBeGreaterThan(1);
  });

  it("are told in the policy's own file, wherever the parent's word stands", () => {
    const parent = `tenbar: 1
policy: { id: p, title: P, version: "1", status: common-practice }
deference: Local procedure stands above this policy.
for: { class: open-circuit }
checks: { daily: { order: any, steps: [{ step: harness, kind: confirm }] } }
rules: [{ rule: one, for: { class: airline }, require: { "==": [{ var: harness.result }, satisfactory] }, basis: { kind: common-practice } }]
`;
    const child = (own: string) =>
      compilePolicy(`tenbar: 1\npolicy: { id: c, title: C, version: "1", status: draft }\nextends: ./p.yaml\n${own}`, {
        file: "c.yaml",
        parents: { "./p.yaml": parent },
      }).diagnostics.filter(({ code }) => code === "plan/words-alike");
    const later = child("checks: { daily: { for: { class: Open Circuit } } }\n");
    expect(later.map(({ file, params }) => [file, params["word"]])).toEqual([["c.yaml", "Open Circuit"]]);
    const sooner = child("for: { class: [open-circuit, Air Line] }\n");
    expect(sooner.map(({ file, params }) => [file, params["word"]])).toEqual([["c.yaml", "Air Line"]]);
  });
});

describe("nothing is said", () => {
  it.each<[string, Data, Data?]>([
    ["of one word twice", scope, { for: { class: "open-circuit" } }],
    ["of two words", scope, { for: { class: "closed-circuit" } }],
    ["of words of two facts", scope, { for: { station: "Open Circuit" } }],
    [
      "of the words of a list",
      { facts: { depot: { at: "/subject/depot", "one-of": ["north-1", "north1"] } }, for: { depot: "north-1" } },
      { for: { depot: "north1" } },
    ],
    [
      "of a text beside no fact",
      { ...scope, ...rule({ require: { "==": [{ var: "harness.defect" }, "Open Circuit"] } }) },
    ],
    ["of a former name", { for: { kind: "BA set" } }, { subject: { kind: "set", formerly: ["BA set"] } }],
  ])("%s", (_, parts, daily) => {
    expect(check(parts, daily)).toEqual([]);
  });
});
