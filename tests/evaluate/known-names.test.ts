import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { type Assessment, compilePolicy, evaluate, type Policy, recordSchema } from "../../src/index.js";
import { assess, makePolicy, summarise } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const confirm = (step: string, parts: Data = {}) => ({ step, kind: "confirm", ...parts });
const sound = (step: string) => ({ step, result: "satisfactory" });

function compile(parts: Data): Policy {
  const { policy, diagnostics } = compilePolicy(
    JSON.stringify({
      tenbar: 1,
      policy: { id: "test/one", title: "One", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      ...parts,
    }),
  );
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
  return policy;
}

const judge = (policy: Policy, check: string, kind: string, steps: readonly Data[]) =>
  evaluate(policy, { tenbar: 1, id: "r", check, at: "2026-04-12", subject: { kind, id: "S-014" }, steps });

const codes = ({ findings }: Assessment) => findings.map(({ code }) => code);

describe("a check that was called otherwise", () => {
  const policy = compile({
    checks: {
      daily: { order: "any", formerly: ["morning", "start"], steps: [confirm("harness")] },
      weekly: { order: "any", formerly: ["long"], steps: [confirm("hoses")] },
    },
  });

  it.each([
    ["daily", "harness"],
    ["morning", "harness"],
    ["start", "harness"],
    [" start ", "harness"],
    ["weekly", "hoses"],
    ["long", "hoses"],
  ])("is judged by the name of %j", (check, step) => {
    expect(judge(policy, check, "set", [sound(step)])).toMatchObject({
      verdict: "meets",
      results: [{ step, outcome: "within" }],
    });
  });

  it("is not known by any other", () => {
    expect(codes(judge(policy, "evening", "set", [sound("harness")]))).toEqual(["record/unknown-check"]);
  });
});

describe("a step that was called otherwise", () => {
  const policy = makePolicy([confirm("harness", { formerly: ["straps", "webbing"] }), confirm("hoses")]);

  it.each(["harness", "straps", " webbing "])("is judged by the name of %j", (step) => {
    const assessment = assess(policy, [sound(step), sound("hoses")]);
    expect(summarise(assessment)).toEqual({ "harness condition": "within", "hoses condition": "within" });
    expect(assessment.findings).toEqual([]);
  });

  it("is recorded once under each of its names, which is twice", () => {
    const steps = [sound("harness"), { step: "straps", result: "defect" }, sound("hoses")];
    expect(assess(policy, steps).verdict).toBe("withdraw");
  });
});

describe("a kind of subject that was called otherwise", () => {
  const check = (kind: string, formerly: readonly string[]) => ({
    order: "any",
    subject: { kind, formerly },
    steps: [confirm("harness")],
  });
  const rule = (kind: string) => ({
    rule: kind,
    when: { "==": [{ var: "kind" }, kind] },
    require: { "==": [{ var: "class" }, "open"] },
    basis,
  });

  it("is the present one where no other has the name, and where two have had it none", () => {
    const policy = compile({
      rules: [rule("set"), rule("mask")],
      checks: {
        one: check("set", ["apparatus", "thing"]),
        two: check("mask", ["thing", "facepiece"]),
        any: { order: "any", steps: [confirm("harness")] },
      },
    });
    const asked = (kind: string) =>
      judge(policy, "any", kind, [sound("harness")])
        .results.filter(({ rule: name, outcome }) => name !== undefined && outcome !== "not-applicable")
        .map(({ rule: name }) => name);
    expect(["set", "apparatus", "mask", "facepiece", "thing", "other"].map(asked)).toEqual([
      ["set"],
      ["set"],
      ["mask"],
      ["mask"],
      [],
      [],
    ]);
  });
});

describe("a key of the subject", () => {
  const reading = (parts: Data) => ({
    kind: "reading",
    quantity: "pressure",
    tolerance: { accept: { "at-least": "1 bar" } },
    basis,
    ...parts,
  });
  const due = { every: "P1Y", counted: "from-last", basis };
  const policy = makePolicy(
    [
      {
        step: "number",
        kind: "match",
        places: ["back", "mask"],
        equals: "subject.tally",
        "differs-from": "subject.old",
      },
      { step: "charge", ...reading({ each: "subject.bottles" }) },
      confirm("harness"),
    ],
    {
      facts: {
        colour: { at: "/subject/colour", value: "text" },
        bought: { at: "/bought", each: "/subject/masks", take: "lowest", value: "date" },
        shift: { at: "/local/shift", value: "text" },
      },
      intervals: { flow: { of: "lung", date: "flowOn", ...due } },
    },
    { intervals: ["flow"] },
  );

  it.each(["tally", "old", "bottles", "colour", "masks", "flowOn", "lungs", "marking", "role"])(
    "that the policy names is known: %s",
    (key) => {
      const value = ["bottles", "masks", "lungs"].includes(key) ? [{ id: "X" }] : "x";
      expect(codes(assess(policy, [], { [key]: value }))).not.toContain("record/unknown-key");
    },
  );

  it.each(["shift", "bought", "subject", "number", "subject.tally", "lung"])("that it does not is noted: %s", (key) => {
    const { findings } = assess(policy, [], { [key]: "x" });
    expect(findings.filter(({ code }) => code === "record/unknown-key").map(({ pointer }) => pointer)).toEqual([
      `/subject/${key}`,
    ]);
  });
});

describe("two entries of one step", () => {
  const policy = makePolicy([{ step: "number", kind: "match", places: ["back", "mask"] }]);
  const number = (seen: Data, rest: Data = {}) => ({ step: "number", seen, ...rest });
  const outcome = (...steps: readonly Data[]) => Object.values(summarise(assess(policy, steps)))[0];

  it("agree where they say the same, in whatever order, at whatever time and with whatever note", () => {
    const one = number({ back: "014", mask: "014" });
    expect(outcome(one, one)).toBe("within");
    expect(outcome(one, number({ mask: "014", back: "014" }))).toBe("within");
    expect(outcome({ seen: one.seen, step: "number" }, one)).toBe("within");
    expect(outcome(one, { ...one, note: "again", at: "2026-04-12T07:00:00Z" })).toBe("within");
  });

  it("are in conflict where they do not", () => {
    const one = number({ back: "014", mask: "014" });
    expect(outcome(one, number({ back: "015", mask: "015" }))).toBe("undecided: conflicting");
    expect(outcome(one, { ...one, weather: ["fair", null] })).toBe("undecided: conflicting");
    expect(outcome({ ...one, weather: [1, 2] }, { ...one, weather: [2, 1] })).toBe("undecided: conflicting");
    expect(outcome({ ...one, weather: [{ a: 1, b: null }] }, { ...one, weather: [{ b: null, a: 1 }] })).toBe("within");
  });
});

describe("a compiled plan", () => {
  it("cannot be changed, however deep", () => {
    const { plan } = makePolicy([confirm("harness")]);
    const listThawed = (value: unknown, path: string): readonly string[] => {
      if (typeof value !== "object" || value === null) return [];
      const inner = Object.entries(value).flatMap(([key, member]) => listThawed(member, `${path}/${key}`));
      return Object.isFrozen(value) ? inner : [path, ...inner];
    };
    expect(listThawed(plan, "")).toEqual([]);
    expect(listThawed({ a: Object.freeze({ b: [] }) }, "")).toEqual(["", "/a/b"]);
  });
});

describe("the fingerprint of a finding", () => {
  it.each([
    ["a-b_c.d~e", "a-b_c.d~e"],
    ["Ärmel|1", "%C3%84rmel%7C1"],
    ["S 14", "S%2014"],
    ["a%", "a%25"],
  ])("has the subject %s as %s", (id, encoded) => {
    const { findings } = assess(makePolicy([confirm("harness")]), [], { id });
    expect(findings[0]?.fingerprint).toContain(`|${encoded}|`);
  });
});

describe("the schema of a record's quantities", () => {
  const makeRecord = (parts: Data) => ({
    tenbar: 1,
    id: "r",
    check: "daily",
    at: "2026-04-12",
    subject: { kind: "any", id: "S-014" },
    steps: [],
    ...parts,
  });
  const quantities: readonly [string, unknown, readonly unknown[], readonly unknown[]][] = [
    [
      "pressure",
      "1 bar",
      ["1.12345678 bar", "1.123 mbar", "1 Pa", "1234567 bar"],
      ["1.123456789 bar", "1.5 Bar", "1 s"],
    ],
    ["duration", "1 s", ["1.001 s", "1.0001 min", "1.001 h"], ["1.0001 s", "1 bar", "1"]],
    ["length", "1 m", ["1.001 m", "1 mm"], ["1 bar"]],
    ["flow", "1 L/min", ["40.5 L/min"], ["40 LXmin", "40 L"]],
    ["temperature", "1 Cel", ["-20.5 Cel", "293 K"], ["20 C"]],
    ["count", 1, [0, 3, 999_999_999], [1.5, "1", 1_000_000_000]],
  ];

  it.each(quantities)("of %s accepts what is read, and nothing that is not", (quantity, limit, right, wrong) => {
    const tolerance = { accept: { "at-most": limit } };
    const policy = makePolicy([{ step: "one", kind: "reading", quantity, tolerance, basis }]);
    const accepts = new Ajv2020({ strict: false }).compile(recordSchema(policy, "daily") ?? false);
    const record = (reading: unknown) => makeRecord({ steps: [{ step: "one", reading }] });
    const isRead = (reading: unknown) => evaluate(policy, record(reading)).results[0]?.outcome !== "undecided";
    for (const reading of right)
      expect([reading, accepts(record(reading)), isRead(reading)]).toEqual([reading, true, true]);
    for (const reading of wrong) expect([reading, accepts(record(reading))]).toEqual([reading, false]);
  });

  it.each<[string, string, readonly unknown[], readonly unknown[]]>([
    ["a count by which limits are chosen", "count", [0, 2], [-1, "2"]],
    ["a length by which limits are chosen", "length", ["0 m", "2 m"], ["-1 m", 2]],
    ["a temperature by which limits are chosen", "temperature", ["-20 Cel", "20 Cel"], ["20"]],
  ])("knows what %s may be", (_name, quantity, right, wrong) => {
    const up = quantity === "count" ? 9 : quantity === "length" ? "9 m" : "30 Cel";
    const rows = [{ "up-to": up, accept: { "at-most": "1 bar" } }];
    const policy = makePolicy(
      [
        {
          step: "one",
          kind: "reading",
          quantity: "pressure",
          tolerance: { "accept-by": { fact: "size", rows } },
          basis,
        },
      ],
      { facts: { size: { at: "/local/size", quantity } } },
    );
    const accepts = new Ajv2020({ strict: false }).compile(recordSchema(policy, "daily") ?? false);
    const record = (size: unknown) => makeRecord({ local: { size } });
    for (const size of right) expect([size, accepts(record(size))]).toEqual([size, true]);
    for (const size of wrong) expect([size, accepts(record(size))]).toEqual([size, false]);
  });

  it("reads dates from which something falls due on the subject and in its list, where it may be either", () => {
    const due = { every: "P1Y", counted: "from-last", date: "testedOn", basis };
    const policy = makePolicy(
      [confirm("harness")],
      { intervals: { tested: { of: "set", ...due } } },
      { intervals: ["tested"] },
    );
    const accepts = new Ajv2020({ strict: false }).compile(recordSchema(policy, "daily") ?? false);
    const record = (subject: Data) => makeRecord({ subject: { kind: "any", id: "S-014", ...subject } });
    expect(accepts(record({ testedOn: "2026-01-01", sets: [{ testedOn: "2026-01-01" }] }))).toBe(true);
    expect(accepts(record({ testedOn: "2026" }))).toBe(false);
    expect(accepts(record({ sets: [{ testedOn: "2026" }] }))).toBe(false);
  });
});
