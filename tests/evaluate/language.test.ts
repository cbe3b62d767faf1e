import { describe, expect, it } from "vitest";
import { german } from "../../src/german.js";
import { compilePolicy, describeCheck, evaluate, recordSchema, restorePlan } from "../../src/index.js";
import { assess, makePolicy, summarise } from "./sample.js";

const basis = { kind: "common-practice" };
const charge = { step: "charge", kind: "reading", quantity: "pressure", basis };
const harness = { step: "harness", kind: "confirm" };
const sound = { step: "harness", result: "satisfactory" };
const role = { role: { at: "/subject/role", "one-of": ["front-line", "spare"] } };

describe("cases", () => {
  const tolerance = {
    cases: [
      { for: { role: "front-line" }, accept: { "at-least": "270 bar" } },
      { for: { role: "spare" }, accept: { "at-least": "240 bar" } },
    ],
  };
  const policy = makePolicy([{ ...charge, tolerance }], { facts: role });
  const judge = (subject: Record<string, unknown>) =>
    summarise(assess(policy, [{ step: "charge", reading: "250 bar" }], subject))["charge level"];

  it.each([
    [{ role: "front-line" }, "outside"],
    [{ role: "spare" }, "within"],
    [{}, "undecided: fact-missing"],
    [{ role: "sparse" }, "undecided: unknown-word"],
    [{ role: 7 }, "undecided: unreadable"],
  ])("%j is %s", (subject, outcome) => {
    expect(judge(subject)).toBe(outcome);
  });

  it("have no case beyond those that are stated", () => {
    const one = makePolicy([{ ...charge, tolerance: { cases: [tolerance.cases[0]] } }], { facts: role });
    expect(summarise(assess(one, [{ step: "charge", reading: "250 bar" }], { role: "spare" }))["charge level"]).toBe(
      "undecided: no-case",
    );
  });

  it("that overlap do not compile", () => {
    const overlapping = {
      cases: [tolerance.cases[0], { for: { station: "Lowmere 1" }, accept: { "at-least": "1 bar" } }],
    };
    expect(() => makePolicy([{ ...charge, tolerance: overlapping }], { facts: role })).toThrow("plan/cases-overlap");
  });
});

describe("one-of instruments", () => {
  const instruments = {
    dial: {
      quantity: "pressure",
      division: "10 bar",
      rounding: "down",
      "max-error": "0 bar",
      range: ["0 bar", "400 bar"],
    },
    digital: { quantity: "pressure", division: "1 bar", "max-error": "4 bar", range: ["0 bar", "350 bar"] },
    gauge: { "one-of": ["dial", "digital"] },
  };
  const policy = makePolicy([{ ...charge, instrument: "gauge", tolerance: { accept: { "at-least": "270 bar" } } }], {
    instruments,
  });
  const judge = (reading: string, instrument?: string) => {
    const { results } = assess(policy, [
      { step: "charge", reading, ...(instrument === undefined ? {} : { instrument }) },
    ]);
    return results[0];
  };

  it("take the one that the record names", () => {
    expect(judge("280 bar", "dial")).toMatchObject({
      outcome: "within",
      confidence: 1,
      span: { from: "280 bar", to: "290 bar", ends: "[)" },
    });
    expect(judge("280 bar", "digital")).toMatchObject({
      outcome: "within",
      span: { from: "275.5 bar", to: "284.5 bar", ends: "[]" },
    });
  });

  it("take the worst where the record names none", () => {
    expect(judge("280 bar")).toMatchObject({ span: { from: "275.5 bar", to: "290 bar", ends: "[)" } });
    expect(judge("360 bar")).toMatchObject({ outcome: "undecided", reason: "off-range" });
    expect(judge("360 bar", "dial")).toMatchObject({ outcome: "within" });
  });

  it("leave open what was read on a stranger", () => {
    expect(judge("280 bar", "watch")).toMatchObject({ outcome: "undecided", reason: "instrument-unknown" });
    expect(judge("200 bar", "watch")).toMatchObject({ outcome: "outside" });
  });
});

describe("attested steps", () => {
  const policy = makePolicy([
    { ...harness, attestable: true },
    { step: "hoses", kind: "confirm" },
  ]);
  const attested = { steps: ["harness", "hoses"], wording: "all sound", by: "W-231" };

  it("are within, and say so; a step that may not be attested is missing, and named", () => {
    const assessment = assess(policy, [], {}, { attested });
    expect(assessment.results[0]).toMatchObject({ outcome: "within", evidence: "attested" });
    expect(assessment.results[1]).toMatchObject({ outcome: "undecided", reason: "missing" });
    expect(assessment.findings.map(({ code }) => code)).toContain("record/not-attestable");
  });

  it.each([{ ...attested, wording: " " }, { ...attested, by: null }, { ...attested, steps: "harness" }, "all"])(
    "attest nothing as %j",
    (one) => {
      expect(assess(policy, [], {}, { attested: one }).results[0]).toMatchObject({
        outcome: "undecided",
        reason: "missing",
      });
    },
  );

  it("give way to what was recorded", () => {
    expect(assess(policy, [{ step: "harness", defect: "torn" }], {}, { attested }).results[0]).toMatchObject({
      outcome: "outside",
    });
  });
});

describe("intervals that a check names", () => {
  const intervals = {
    requalified: {
      of: "cylinder",
      every: "P5Y",
      counted: "from-last",
      date: "requalifiedOn",
      forbids: "fill",
      consequence: "refer",
      basis,
    },
  };
  const policy = makePolicy([harness], { intervals }, { intervals: ["requalified"] });
  const judge = (cylinders: unknown) => summarise(assess(policy, [sound], { cylinders }));

  it.each([
    ["2021-04-12", "within"],
    ["2021-04-11", "outside"],
    ["2021-04", "outside"],
    ["2021-05", "within"],
    [undefined, "undecided: no-date"],
    ["2021-02-30", "undecided: unreadable"],
    ["2026-04-13", "undecided: date-ahead"],
  ])("%s is %s", (requalifiedOn, outcome) => {
    expect(judge([{ id: "C", requalifiedOn }])["requalified due C"]).toBe(outcome);
  });

  it("judges every member, and a missing list as one", () => {
    expect(judge([{ id: "A", requalifiedOn: "2024-01-01" }, { id: "B" }])).toMatchObject({
      "requalified due A": "within",
      "requalified due B": "undecided: no-date",
    });
    expect(judge(undefined)).toMatchObject({ "requalified due": "undecided: no-date" });
  });
});

describe("adoptions", () => {
  const leak = { step: "leak", kind: "hold", quantity: "pressure", drop: { accept: { "at-most": "10 bar" } }, basis };
  const adoption = {
    id: "trial",
    step: "daily/leak",
    requirement: "drop",
    accept: { "at-most": "20 bar" },
    only: { station: "Lowmere 3" },
    from: "2026-04-01",
    until: "2026-04-30",
    order: "TO 1",
    by: "An officer",
    reason: "A trial",
  };
  const policy = makePolicy([harness, leak], { adopted: [adoption] });
  const drop = (at: string, station: string | undefined) =>
    assess(policy, [sound, { step: "leak", start: "290 bar", end: "270 bar" }], {}, { at, station });

  it("apply by date and scope, and leave what it would have been", () => {
    const assessment = drop("2026-04-30", "Lowmere 3");
    expect(assessment.verdict).toBe("meets");
    expect(assessment.results[1]).toMatchObject({
      outcome: "within",
      without: "outside",
      adopted: "trial",
      accept: "at most 20 bar",
    });
    expect(assessment.findings.map(({ code, consequence }) => [code, consequence])).toEqual([["step/adopted", "note"]]);
  });

  it.each([
    ["2026-03-31", "Lowmere 3"],
    ["2026-05-01", "Lowmere 3"],
    ["2026-04-12", "Lowmere 1"],
  ])("change nothing on %s at %s", (at, station) => {
    const assessment = drop(at, station);
    expect(assessment.verdict).toBe("withdraw");
    expect(assessment.results[1]).not.toHaveProperty("adopted");
  });

  it("judge both and take the worse where the scope cannot be told", () => {
    expect(drop("2026-04-12", undefined).results[1]).toMatchObject({
      outcome: "outside",
      without: "outside",
      adopted: "trial",
    });
  });

  it("let what rests on an adopted limit be judged by it", () => {
    const held = { ...leak, start: { "at-least": "200 bar" } };
    const lower = { ...adoption, requirement: "start", accept: { "at-least": "100 bar" } };
    const other = makePolicy([harness, held], { adopted: [lower] });
    const judge = (at: string) =>
      summarise(
        assess(other, [sound, { step: "leak", start: "120 bar", end: "115 bar" }], {}, { at, station: "Lowmere 3" }),
      );
    expect(judge("2026-04-12")).toMatchObject({ "leak start": "within", "leak drop": "within" });
    expect(judge("2026-05-12")).toMatchObject({ "leak start": "outside", "leak drop": "undecided: start-too-low" });
  });

  it("ask a step instead of another only while they apply", () => {
    const { accept: _accept, requirement: _requirement, ...rest } = adoption;
    const voice = { step: "voice", kind: "confirm" };
    const other = makePolicy([harness, leak, voice], { adopted: [{ ...rest, instead: "daily/voice" }] });
    const judge = (at: string, steps: readonly Record<string, unknown>[]) =>
      assess(other, [sound, ...steps], {}, { at, station: "Lowmere 3" });
    const during = judge("2026-04-12", [{ step: "voice", result: "satisfactory" }]);
    expect(summarise(during)).toEqual({
      "harness condition": "within",
      "leak drop": "not-applicable: omitted-by-adoption",
      "voice condition": "within",
    });
    const after = judge("2026-05-12", [{ step: "voice", defect: "mute" }]);
    expect(summarise(after)).toEqual({ "harness condition": "within", "leak drop": "undecided: missing" });
    expect(after.findings.map(({ code, consequence }) => [code, consequence])).toContainEqual([
      "step/defect",
      "withdraw",
    ]);
  });
});

describe("rules", () => {
  const rules = [
    {
      rule: "spare-is-sound",
      when: { "==": [{ var: "role" }, "spare"] },
      require: { "==": [{ var: "harness.result" }, "satisfactory"] },
      consequence: "refer",
      basis,
    },
  ];
  const policy = makePolicy([harness], { facts: role, rules });

  it.each([
    [{ role: "front-line" }, [sound], "not-applicable: condition-false"],
    [{ role: "spare" }, [sound], "within"],
    [{ role: "spare" }, [{ step: "harness", result: "defect" }], "outside"],
    [{ role: "spare" }, [], "undecided: rule-incomplete"],
    [{}, [{ step: "harness", result: "defect" }], "undecided: rule-incomplete"],
  ])("%j with %j is %s", (subject, steps, outcome) => {
    expect(summarise(assess(policy, steps, subject))["spare-is-sound rule"]).toBe(outcome);
  });
});

describe("inheritance", () => {
  const parent = `tenbar: 1
policy: { id: p, title: P, version: "1.2.0", status: common-practice }
deference: Local procedure stands above this policy.
tolerances:
  drop: { accept: { at-most: 10 bar }, basis: { kind: common-practice } }
checks:
  daily:
    order: any
    steps:
      - { step: harness, kind: confirm }
      - { step: leak, kind: hold, quantity: pressure, drop: drop }
      - { step: torch, kind: confirm, consequence: advise }
`;
  const compile = (rest: string) =>
    compilePolicy(`tenbar: 1\npolicy: { id: c, title: C, version: "1", status: local }\n${rest}`, {
      file: "child.yaml",
      parents: { "shipped/p": parent },
    });
  const codes = (rest: string) => compile(rest).diagnostics.map(({ code }) => code);

  it("of an empty child is the parent", () => {
    const { policy, diagnostics } = compile("extends: shipped/p@1\n");
    const alone = compilePolicy(parent).policy;
    expect(diagnostics).toEqual([]);
    expect(policy?.plan.checks).toEqual(alone?.plan.checks);
  });

  it.each([
    ["extends: shipped/p\n", ["resolve/unpinned-parent"]],
    ["extends: shipped/p@2\n", ["resolve/other-major"]],
    ["extends: shipped/q@1\n", ["resolve/no-parent"]],
    [
      "extends: shipped/p@1\ntolerances:\n  drop: { accept: { at-most: 5 bar }, basis: { kind: common-practice } }\n",
      [],
    ],
    [
      "extends: shipped/p@1\ntolerances:\n  drop: { accept: { at-most: 15 bar }, basis: { kind: common-practice } }\n",
      ["resolve/looser"],
    ],
    [
      "extends: shipped/p@1\ntolerances:\n  drop: { accept: { below: 10 bar }, basis: { kind: common-practice } }\n",
      [],
    ],
    ["extends: shipped/p@1\nchecks: { daily: { without: [torch] } }\n", ["resolve/looser"]],
    ["extends: shipped/p@1\nchecks: { daily: { without: [torhc] } }\n", ["plan/unknown-name"]],
    [
      'extends: shipped/p@1\nchecks: { daily: { without: [torch] } }\nadopted:\n  - { id: a, step: daily/torch, from: 2026-01-01, review: 2027-01-01, order: "LO 1", by: me, reason: none fitted }\n',
      [],
    ],
    [
      "extends: shipped/p@1\nchecks: { daily: { steps: [{ step: harness, kind: confirm, consequence: refer }] } }\n",
      ["resolve/looser"],
    ],
    ["extends: shipped/p@1\nchecks: { daily: { steps: [{ step: hoses, kind: confirm, behind: harness }] } }\n", []],
  ])("%j gives %j", (rest, expected) => {
    expect(codes(rest)).toEqual(expected);
  });

  it("puts a new step where it says, and keeps the place of a replaced one", () => {
    const { policy } = compile(
      "extends: shipped/p@1\nchecks: { daily: { steps: [{ step: leak, kind: confirm }, { step: hoses, kind: confirm, before: harness }, { step: last, kind: confirm }] } }\n",
    );
    expect(policy?.plan.checks[0]?.steps.map(({ step }) => step)).toEqual([
      "hoses",
      "harness",
      "leak",
      "torch",
      "last",
    ]);
  });

  it("offers the parent that was given under a close name", () => {
    const [found] = compile("extends: shipd/p@1\n").diagnostics;
    expect(found).toMatchObject({ code: "resolve/no-parent", nearest: "shipped/p@1", mend: "write `shipped/p@1`" });
  });

  it("names the file that states a limit", () => {
    const { policy } = compile("extends: shipped/p@1\n");
    if (policy === undefined) throw new Error("the child does not compile");
    const [finding] = assess(policy, [sound, { step: "leak", start: "290 bar", end: "250 bar" }]).findings;
    expect(finding).toMatchObject({ where: { file: "shipped/p", line: 11 }, limitAt: { file: "shipped/p", line: 5 } });
  });
});

describe("a form, a schema, a half-filled record, a digest, a plan", () => {
  const policy = makePolicy([
    { ...harness, "when-fitted": "harness" },
    { ...charge, each: "subject.cylinders", tolerance: { accept: { "at-least": "90 % of rated-pressure" } } },
  ]);

  it("describes what applies to a subject, with limits in words", () => {
    const form = describeCheck(policy, "daily", {
      kind: "set",
      fitted: { harness: false },
      cylinders: [{ id: "C", ratedPressure: "300 bar" }],
    });
    expect(form?.steps.map(({ step, applies }) => [step, applies])).toEqual([
      ["harness", "no"],
      ["charge", "yes"],
    ]);
    expect(form?.steps[1]?.asked).toEqual([
      {
        part: "C",
        limits: [
          { requirement: "level", consequence: "withdraw", accept: "at least 270 bar (90 % of rated-pressure)" },
        ],
      },
    ]);
    const lengths = makePolicy([
      { step: "line", kind: "reading", quantity: "length", tolerance: { accept: { "at-least": "5.95 m" } }, basis },
    ]);
    expect(describeCheck(lengths, "daily")?.steps[0]?.fields[0]).toMatchObject({
      key: "reading",
      units: ["m", "mm", "cm"],
    });
    expect(describeCheck(policy, "weekly")).toBeUndefined();
    expect(recordSchema(policy, "weekly")).toBeUndefined();
  });

  it("says what is accepted where no figure limits it: a condition, a match, a date", () => {
    const plain = makePolicy([
      harness,
      { step: "numbers", kind: "match", places: ["back", "mask"] },
      { step: "seen", kind: "in-date", within: "P30D", basis },
      { step: "expiry", kind: "in-date", "not-past": true, basis },
    ]);
    const listAccepted = (words?: typeof german) =>
      describeCheck(plain, "daily", {}, { words })?.steps.map(({ asked }) => asked[0]?.limits[0]?.accept);
    expect(listAccepted()).toEqual(["satisfactory", "the same in every place", "at most 30 days old", "not past"]);
    expect(listAccepted(german)).toEqual([
      "in Ordnung",
      "an jeder Stelle gleich",
      "höchstens 30 Tage alt",
      "nicht abgelaufen",
    ]);
  });

  it("says the date of the parent where the adoption of a longer one has lapsed", () => {
    const parent = `tenbar: 1
policy: { id: lowmere/one, title: One, version: "1", status: local }
deference: Local procedure stands above this policy.
checks:
  daily:
    order: any
    steps:
      - { step: seen, kind: in-date, within: P30D, basis: { kind: common-practice } }
`;
    const child = `tenbar: 1
policy: { id: lowmere/two, title: Two, version: "1", status: local }
extends: ./one.yaml
checks:
  daily:
    steps:
      - { step: seen, kind: in-date, within: P60D, basis: { kind: local, order: "LO 1" } }
adopted:
  - { id: a, step: daily/seen, from: 2026-04-01, until: 2026-05-31, order: "LO 1", by: me, reason: test }
`;
    const covered = compilePolicy(child, { parents: { "./one.yaml": parent } }).policy;
    if (covered === undefined) throw new Error("the child does not compile");
    const acceptedOn = (at: string) =>
      describeCheck(covered, "daily", {}, { at })?.steps[0]?.asked[0]?.limits[0]?.accept;
    expect(acceptedOn("2026-05-31")).toBe("at most 60 days old");
    expect(acceptedOn("2026-06-01")).toBe("at most 30 days old");
  });

  it("gives no verdict and no finding for what is still to be filled in", () => {
    const record = {
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12",
      subject: { kind: "set", id: "S", fitted: { harness: true } },
      steps: [],
    };
    const assessment = evaluate(policy, record, { partial: true });
    expect(assessment.verdict).toBeNull();
    expect(assessment.findings.filter(({ reason }) => reason === "missing" || reason === "nothing-judged")).toEqual([]);
    expect(assessment.results[0]).toMatchObject({ outcome: "undecided", reason: "not-yet" });
  });

  it("digests a record on request, and says where it cannot", () => {
    const record = {
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12",
      subject: { kind: "set", id: "S" },
      steps: [],
    };
    expect(evaluate(policy, record)).not.toHaveProperty("recordDigest");
    expect(evaluate(policy, record, { digest: true }).recordDigest).toMatch(/^sha256:[0-9a-f]{64}$/);
    const lone = evaluate(policy, { ...record, decision: "\uD800" }, { digest: true });
    expect(lone.recordDigest).toBeNull();
    expect(lone.findings.map(({ code }) => code)).toContain("record/no-digest");
  });

  it("restores a plan that was saved, and refuses one that was changed", () => {
    const saved = JSON.stringify(policy.plan);
    expect(restorePlan(JSON.parse(saved)).policy?.plan).toEqual(policy.plan);
    for (const changed of [
      saved.replace("90 %", "10 %"),
      saved.replace('"format":1', '"format":2'),
      saved.replace('"kind":"plan"', '"kind":"p"'),
      "[]",
      "null",
      '{"kind":"plan"}',
    ]) {
      expect(changed).not.toBe(saved);
      expect(restorePlan(JSON.parse(changed))).toMatchObject({ policy: undefined, problem: expect.any(String) });
    }
  });
});

describe("reasons that need several members or a scope", () => {
  it("facts-differ: cylinders of different rated pressures, where one figure is asked for", () => {
    const policy = makePolicy([{ ...charge, tolerance: { accept: { "at-least": "90 % of rated-pressure" } } }]);
    const judge = (...rated: string[]) =>
      summarise(
        assess(policy, [{ step: "charge", reading: "290 bar" }], {
          cylinders: rated.map((ratedPressure, index) => ({ id: `C${index}`, ratedPressure })),
        }),
      )["charge level"];
    expect([judge("300 bar", "300 bar"), judge("300 bar", "200 bar"), judge("300 bar", "0 bar")]).toEqual([
      "within",
      "undecided: facts-differ",
      "undecided: unreadable",
    ]);
  });

  it("out-of-scope: an interval and a rule for other subjects", () => {
    const scoped = { for: { role: "spare" } };
    const policy = makePolicy(
      [harness],
      {
        facts: role,
        intervals: { tested: { of: "set", every: "P1Y", counted: "from-last", date: "testedOn", basis, ...scoped } },
        rules: [{ rule: "one", require: { "==": [{ var: "harness.result" }, "satisfactory"] }, basis, ...scoped }],
      },
      { intervals: ["tested"] },
    );
    expect(summarise(assess(policy, [sound], { role: "front-line" }))).toEqual({
      "harness condition": "within",
      "tested due": "not-applicable: out-of-scope",
      "one rule": "not-applicable: out-of-scope",
    });
    expect(summarise(assess(policy, [sound], {}))).toMatchObject({ "tested due": "undecided: fact-missing" });
  });
});

describe("what a reading leaves open", () => {
  const dial = { quantity: "pressure", division: "10 bar", rounding: "down", "max-error": "10 bar" };
  const policy = makePolicy(
    [{ ...charge, instrument: "dial", tolerance: { accept: { "at-most": "300 bar" } } }, harness],
    { instruments: { dial } },
  );
  const judge = (reading: string) => assess(policy, [{ step: "charge", reading }, sound]);

  it("is said where within is more likely outside, and changes no verdict", () => {
    const { results, findings, verdict } = judge("300 bar");
    expect(results[0]).toMatchObject({ outcome: "within", confidence: 0.25 });
    expect(findings).toMatchObject([
      {
        code: "step/more-likely-outside",
        consequence: "advise",
        pointer: "/steps/0",
        step: "charge",
        requirement: "level",
        params: { observed: "300 bar", accept: "at most 300 bar", confidence: "0.25" },
      },
    ]);
    expect(verdict).toBe("meets");
  });

  it("is said too where the limit is near already, and weighs no more than the step", () => {
    const tolerance = { accept: { "at-most": "300 bar" }, caution: { "at-least": "300 bar" } };
    const parts = { instruments: { dial } };
    const near = makePolicy([{ ...charge, instrument: "dial", tolerance }, harness], parts);
    const light = makePolicy([{ ...charge, instrument: "dial", tolerance, consequence: "note" }, harness], parts);
    const judgeNear = (one: typeof near) =>
      assess(one, [{ step: "charge", reading: "300 bar" }, sound]).findings.map(({ code, consequence }) => [
        code,
        consequence,
      ]);
    expect(judgeNear(near)).toEqual([
      ["reading/level-caution", "advise"],
      ["step/more-likely-outside", "advise"],
    ]);
    expect(judgeNear(light)).toEqual([
      ["reading/level-caution", "note"],
      ["step/more-likely-outside", "note"],
    ]);
  });

  it("is not said where it is as likely inside", () => {
    expect(judge("290 bar").findings).toEqual([]);
  });
});

describe("a scope that stays open", () => {
  const shift = { shift: { at: "/local/shift", "one-of": ["white", "red"] } };

  it("names what is open, and where the record would state it", () => {
    const ofCheck = assess(makePolicy([harness], { facts: shift }, { for: { shift: "white" } }), [sound]);
    expect(ofCheck.findings).toMatchObject([
      { code: "record/scope-unknown", consequence: "refer", pointer: "/local/shift" },
    ]);
    expect(ofCheck.findings[0]?.message).toContain("whether this check is for it");
    const ofPolicy = assess(makePolicy([harness], { facts: shift, for: { shift: "white" } }), [sound]);
    expect(ofPolicy.findings[0]?.message).toContain("whether this policy is for it");
  });

  it("points at what refuses", () => {
    const refused = assess(
      makePolicy([harness], { facts: shift, for: { shift: "white" } }),
      [sound],
      {},
      { local: { shift: "red" } },
    );
    expect(refused.findings).toMatchObject([{ code: "record/not-for-this-policy", pointer: "/local/shift" }]);
  });
});
