import { describe, expect, it } from "vitest";
import { type Assessment, evaluate } from "../../src/index.js";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const confirm = (step: string): Data => ({ step, kind: "confirm" });
const sound = (step: string): Data => ({ step, result: "satisfactory" });
const ID = "test%2Fone|S-014";

/** Findings as they are printed, keys in order, but for their places in the policy's text. */
function print({ findings }: Assessment): readonly string[] {
  return findings.map(({ where, limitAt, ...rest }) => {
    for (const place of [where, limitAt]) if (place !== undefined) expect(place.line).toBe(1);
    return JSON.stringify(rest);
  });
}

function printResults({ results }: Assessment): readonly string[] {
  return results.map((result) => JSON.stringify(result));
}

const write = (...values: readonly Data[]) => values.map((value) => JSON.stringify(value));

describe("steps out of order", () => {
  const policy = makePolicy(["a", "b", "c"].map(confirm), {}, { order: { "listed-by": "position" } });
  const accept = "the steps as listed, by their places in the record";

  it("are found each with the step that it stands behind", () => {
    const broken = (late: string, early: string, place: number) => ({
      code: "check/order-outside",
      step: late,
      requirement: "order",
      outcome: "outside",
      consequence: "refer",
      pointer: `/steps/${place}`,
      params: { accept, late, early },
      message: `\`${late}\` stands after \`${early}\`, which it should come before`,
      fingerprint: `${ID}||${late}|order|check/order-outside|${early}`,
    });
    const assessment = assess(policy, [sound("c"), sound("b"), sound("a")]);
    expect(print(assessment)).toEqual(write(broken("b", "c", 1), broken("a", "b", 2)));
    expect(printResults(assessment)[0]).toBe(
      JSON.stringify({
        requirement: "order",
        outcome: "outside",
        consequence: "refer",
        accept,
        pointers: ["/steps/1", "/steps/2"],
      }),
    );
  });

  it("are found once where nothing tells their order", () => {
    expect(print(assess(policy, [{ step: "b" }, sound("a"), sound("c")]))[0]).toBe(
      JSON.stringify({
        code: "check/order-undecided",
        requirement: "order",
        outcome: "undecided",
        reason: "order-unknown",
        consequence: "refer",
        pointer: "/steps",
        params: { accept, reason: "order-unknown" },
        message:
          "the order of the steps cannot be judged: the record does not tell in which order the steps were taken",
        fingerprint: `${ID}|||order|check/order-undecided|`,
      }),
    );
  });
});

describe("limits that depend on each member", () => {
  const policy = makePolicy([
    {
      step: "charge",
      kind: "reading",
      quantity: "pressure",
      each: "subject.cylinders",
      tolerance: { accept: { "at-least": "90 % of rated-pressure" } },
      basis,
    },
  ]);
  const charge = (of: string, reading: string) => ({ step: "charge", of, reading });

  it("are said with the member's own figures", () => {
    const cylinders = [
      { id: "A", ratedPressure: "300 bar" },
      { id: "B", ratedPressure: "200 bar" },
    ];
    const assessment = assess(policy, [charge("A", "260 bar"), charge("B", "185 bar")], { cylinders });
    const of = (part: string, rest: Data, pointers: string) => ({
      step: "charge",
      part,
      requirement: "level",
      ...rest,
      pointers: [pointers],
    });
    expect(printResults(assessment)).toEqual(
      write(
        of(
          "A",
          {
            outcome: "outside",
            consequence: "withdraw",
            observed: "260 bar",
            accept: "at least 270 bar (90 % of rated-pressure)",
            margin: "-10 bar",
          },
          "/steps/0",
        ),
        of(
          "B",
          {
            outcome: "within",
            consequence: "withdraw",
            observed: "185 bar",
            accept: "at least 180 bar (90 % of rated-pressure)",
            margin: "5 bar",
          },
          "/steps/1",
        ),
      ),
    );
    expect(print(assessment)).toEqual(
      write({
        code: "reading/level-outside",
        step: "charge",
        part: "A",
        requirement: "level",
        outcome: "outside",
        consequence: "withdraw",
        pointer: "/steps/0",
        params: { observed: "260 bar", accept: "at least 270 bar (90 % of rated-pressure)" },
        basis,
        message: "`260 bar` was read; at least `270 bar` (`90 %` of rated-pressure) is accepted",
        fingerprint: `${ID}|A|charge|level|reading/level-outside|`,
      }),
    );
  });
});

describe("a level", () => {
  const policy = makePolicy([
    {
      step: "whistle",
      kind: "reading",
      quantity: "pressure",
      tolerance: { accept: { "at-least": "50 bar" }, caution: { below: "55 bar" } },
      basis,
    },
  ]);
  const accept = "at least 50 bar";

  it.each<[Data, string, string, string, string]>([
    [{ reading: "40 bar" }, "outside", "withdraw", "40 bar", "`40 bar` was read; at least `50 bar` is accepted"],
    [
      { reading: "52 bar" },
      "caution",
      "advise",
      "52 bar",
      "`52 bar` was read; at least `50 bar` is accepted, and this is close to the limit",
    ],
    [{ occurred: false }, "outside", "withdraw", "did not occur", "it never came; at least `50 bar` is accepted"],
  ])("of %j is found to be %s", (entry, outcome, consequence, observed, message) => {
    expect(print(assess(policy, [{ step: "whistle", ...entry }]))).toEqual(
      write({
        code: `reading/level-${outcome}`,
        step: "whistle",
        requirement: "level",
        outcome,
        consequence,
        pointer: "/steps/0",
        params: { observed, accept },
        basis,
        message,
        fingerprint: `${ID}||whistle|level|reading/level-${outcome}|`,
      }),
    );
  });

  it("that cannot be judged says why, with what is recorded where something is", () => {
    const open = (reason: string, pointer: string, message: string, observed?: string) => ({
      code: "reading/level-undecided",
      step: "whistle",
      requirement: "level",
      outcome: "undecided",
      reason,
      consequence: "refer",
      pointer,
      params: { ...(observed === undefined ? {} : { observed }), accept, reason },
      basis,
      message: `the reading cannot be judged: ${message}`,
      fingerprint: `${ID}||whistle|level|reading/level-undecided|`,
    });
    expect(print(assess(policy, [{ step: "whistle", reading: "50" }]))).toEqual(
      write(open("no-unit", "/steps/0", "the figure has no unit, recorded is `50`", "50")),
    );
    expect(print(assess(policy, []))).toEqual(write(open("missing", "/steps", "nothing is recorded")));
  });

  it("of a form that is half filled is only found where something is recorded", () => {
    const judge = (...steps: readonly Data[]) => {
      const subject = { kind: "set", id: "S-014" };
      return evaluate(
        policy,
        { tenbar: 1, id: "r", check: "daily", at: "2026-04-12", subject, steps },
        { partial: true },
      );
    };
    expect(print(judge())).toEqual([]);
    expect(judge().results).toMatchObject([{ outcome: "undecided", reason: "not-yet" }]);
    expect(judge({ step: "whistle", reading: "50" })).toMatchObject({
      verdict: null,
      results: [{ reason: "no-unit" }],
      findings: [{ code: "reading/level-undecided", reason: "no-unit" }],
    });
  });
});

describe("who carried the check out", () => {
  const policy = makePolicy([confirm("a")], {}, { competence: ["wearer", "technician"] });
  const accept = "`wearer` or `technician`";
  const found = (outcome: string, params: Data, message: string, reason?: string) => ({
    code: `check/competence-${outcome}`,
    requirement: "competence",
    outcome,
    ...(reason === undefined ? {} : { reason }),
    consequence: "refer",
    pointer: "/by/competence",
    params,
    message,
    fingerprint: `${ID}|||competence|check/competence-${outcome}|`,
  });

  it("is asked of the check, which names no step", () => {
    const undecided = assess(policy, [sound("a")]);
    expect(print(undecided)).toEqual(
      write(
        found(
          "undecided",
          { accept, reason: "fact-missing" },
          "who carried the check out cannot be judged: the record does not state a fact that the limit depends on",
          "fact-missing",
        ),
      ),
    );
    const outside = assess(policy, [sound("a")], {}, { by: { competence: "cook" } });
    expect(print(outside)).toEqual(
      write(
        found(
          "outside",
          { competence: "cook", observed: "cook", accept },
          "the check was carried out by `cook`; it is for `wearer` or `technician`",
        ),
      ),
    );
    expect(printResults(outside)[0]).toBe(
      JSON.stringify({
        requirement: "competence",
        outcome: "outside",
        consequence: "refer",
        observed: "cook",
        accept,
        pointers: ["/by/competence"],
      }),
    );
  });
});

describe("a rule that does not hold", () => {
  const policy = makePolicy([confirm("a")], {
    facts: { role: { at: "/subject/role", "one-of": ["front-line", "spare"] } },
    rules: [
      { rule: "other", checks: ["daily"], require: { "==": [{ var: "class" }, "open"] }, basis },
      { rule: "own", checks: ["daily"], require: { "==": [{ var: "role" }, "front-line"] }, basis },
    ],
  });

  it("is found by its name, of the record as a whole, each in its own words", () => {
    const assessment = assess(policy, [sound("a")], { role: "spare", class: "open" });
    expect(print(assessment)).toEqual(
      write({
        code: "rule/rule-outside",
        rule: "own",
        requirement: "rule",
        outcome: "outside",
        consequence: "withdraw",
        pointer: "",
        params: { accept: "role is front-line" },
        basis,
        message: "the rule does not hold: role is front-line",
        fingerprint: `${ID}||own|rule|rule/rule-outside|`,
      }),
    );
    expect(assessment.results.map(({ rule, accept }) => [rule, accept]).slice(1)).toEqual([
      ["other", "class is open"],
      ["own", "role is front-line"],
    ]);
  });
});

describe("what falls due", () => {
  const due = { counted: "from-last", basis };
  const policy = makePolicy(
    [confirm("a")],
    {
      intervals: {
        flow: { of: "set", every: "P1Y", date: "flowTestedOn", ...due },
        requalified: { of: "cylinder", every: "P5Y", date: "requalifiedOn", ...due },
      },
    },
    { intervals: ["flow", "requalified"], subject: "set" },
  );
  const undecided = (interval: string, pointer: string, part?: string) => ({
    code: "interval/due-undecided",
    interval,
    ...(part === undefined ? {} : { part }),
    requirement: "due",
    outcome: "undecided",
    reason: "no-date",
    consequence: "refer",
    pointer,
    params: { reason: "no-date" },
    basis,
    message: "what falls due cannot be judged: the record does not state the date that this counts from",
    fingerprint: `${ID}|${part ?? ""}|${interval}|due|interval/due-undecided|`,
  });

  it("is found by its interval, at its date", () => {
    const cylinders = [{ id: "C-1", requalifiedOn: "2024-01-01" }, { id: "C-2" }];
    const assessment = assess(policy, [sound("a")], { flowTestedOn: "2024-04-12", cylinders });
    expect(print(assessment)).toEqual(
      write(
        {
          code: "interval/due-outside",
          interval: "flow",
          requirement: "due",
          outcome: "outside",
          consequence: "withdraw",
          pointer: "/subject/flowTestedOn",
          params: {
            date: "2024-04-12",
            every: "P1Y",
            due: "2025-04-12",
            observed: "2024-04-12",
            accept: "at most 1 year old (good to 2025-04-12)",
          },
          basis,
          message: "it was last done on `2024-04-12`; at most 1 year old (good to 2025-04-12) is accepted",
          fingerprint: `${ID}||flow|due|interval/due-outside|`,
        },
        undecided("requalified", "/subject/cylinders/1/requalifiedOn", "C-2"),
      ),
    );
  });

  it("is found without a place where the things are not listed", () => {
    expect(print(assess(policy, [sound("a")]))).toEqual(
      write(undecided("flow", "/subject/flowTestedOn"), undecided("requalified", "/steps")),
    );
  });
});

describe("a record in which nothing that matters was judged", () => {
  it("is found to be so, before what is advised", () => {
    const policy = makePolicy([{ ...confirm("a"), consequence: "advise" }]);
    expect(print(assess(policy, []))).toEqual(
      write(
        {
          code: "record/nothing-judged",
          outcome: "undecided",
          reason: "nothing-judged",
          consequence: "refer",
          pointer: "/steps",
          params: {},
          message: "nothing that matters could be judged",
          fingerprint: `${ID}||||record/nothing-judged|`,
        },
        {
          code: "confirm/condition-undecided",
          step: "a",
          requirement: "condition",
          outcome: "undecided",
          reason: "missing",
          consequence: "advise",
          pointer: "/steps",
          params: { accept: "satisfactory", reason: "missing" },
          message: "the condition cannot be judged: nothing is recorded",
          fingerprint: `${ID}||a|condition|confirm/condition-undecided|`,
        },
      ),
    );
  });
});

it("a form that is half filled is not said to have nothing in it that matters", () => {
  const policy = makePolicy([{ ...confirm("a"), consequence: "advise" }]);
  const subject = { kind: "set", id: "S-014" };
  const record = { tenbar: 1, id: "r", check: "daily", at: "2026-04-12", subject, steps: [] };
  expect(evaluate(policy, record, { partial: true }).findings).toEqual([]);
});

describe("remarks of one kind", () => {
  const policy = makePolicy([confirm("a"), { step: "number", kind: "match", places: ["back", "mask"] }]);

  it("are told apart by place, by key, and by where a key of the record stands", () => {
    const entry = { step: "number", seen: { back: "014", mask: "014", tally: "014" }, mood: "fair" };
    const assessment = assess(policy, [sound("a"), entry], { mood: "fair" }, { mood: "fair" });
    expect(assessment.findings.map(({ fingerprint }) => fingerprint)).toEqual([
      `${ID}||||record/unknown-key|%2Fmood`,
      `${ID}||||record/unknown-key|%2Fsubject%2Fmood`,
      `${ID}||number||record/unknown-key|mood`,
      `${ID}||number||step/unknown-place|tally`,
    ]);
  });
});
