import { describe, expect, it } from "vitest";
import { compilePolicy, describeCheck } from "../../src/index.js";
import { assess, makePolicy } from "../evaluate/sample.js";

const basis = { kind: "common-practice" };
const limit = { accept: { "at-most": "10 bar" } };

/** The mistakes of a policy whose only step is `step`: code, params, and the text at their place. */
function listMistakes(step: Readonly<Record<string, unknown>>) {
  const text = JSON.stringify(
    {
      tenbar: 1,
      policy: { id: "test/one", title: "One", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      checks: { daily: { order: "any", steps: [{ step: "one", ...step }] } },
    },
    undefined,
    1,
  );
  const { policy, diagnostics } = compilePolicy(text);
  expect(policy).toBeUndefined();
  const lines = text.split("\n");
  return diagnostics.map(({ code, params, line, column, endColumn }) => [
    code,
    params,
    (lines[line - 1] ?? "").slice(column - 1, endColumn - 1),
  ]);
}

const hold = { kind: "hold", quantity: "pressure", basis };
const timing = { kind: "timing", tolerance: { accept: { "at-most": "30 s" } }, basis };

describe("a step of a kind that needs one of several keys", () => {
  it.each([
    [hold, "plan/needs-one-of", { keys: ["drop", "rise", "change"], given: [] }],
    [
      { ...hold, drop: limit, rise: limit },
      "plan/needs-one-of",
      { keys: ["drop", "rise", "change"], given: ["drop", "rise"] },
    ],
    [
      { ...hold, rise: limit, change: limit },
      "plan/needs-one-of",
      { keys: ["drop", "rise", "change"], given: ["rise", "change"] },
    ],
    [{ kind: "in-date", basis }, "plan/needs-one-of", { keys: ["within", "not-past"], given: [] }],
    [
      { kind: "in-date", within: "P30D", "not-past": true, basis },
      "plan/needs-one-of",
      { keys: ["within", "not-past"], given: ["within", "not-past"] },
    ],
  ])("is told what it needs: %j", (step, code, params) => {
    expect(listMistakes(step).map(([found, said]) => [found, said])).toEqual([[code, params]]);
  });

  it.each([
    [
      { ...timing, "from-event": "alarm" },
      "plan/half-stated",
      { present: "from-event", absent: "to-event" },
      '"from-event"',
    ],
    [
      { ...timing, "to-event": "alarm" },
      "plan/half-stated",
      { present: "to-event", absent: "from-event" },
      '"to-event"',
    ],
    [{ kind: "in-date", within: "P30X", basis }, "plan/bad-span", { found: "P30X" }, '"P30X"'],
    [{ kind: "in-date", within: "P30D" }, "plan/no-basis", {}, '"within"'],
    [{ kind: "in-date", "not-past": true }, "plan/no-basis", {}, '"not-past"'],
  ])("is told where: %j", (step, code, params, place) => {
    expect(listMistakes(step)).toEqual([[code, params, place]]);
  });
});

describe("a date that a step asks for", () => {
  const steps = [
    { step: "book", kind: "in-date", within: "P30D", consequence: "refer", basis },
    { step: "label", kind: "in-date", "not-past": true, consequence: "refer", basis },
  ];
  const rule = {
    rule: "together",
    checks: ["daily"],
    require: { "<": [{ var: "book.on" }, { var: "label.on" }] },
    consequence: "refer",
    basis,
  };
  const policy = makePolicy(steps, { rules: [rule] });

  it.each([
    ["2026-03-13", "within", "at most 30 days old (good to 2026-04-12)"],
    ["2026-03-12", "outside", "at most 30 days old (good to 2026-04-11)"],
    ["2026-04-13", "undecided", undefined],
    ["9999-12-01", "undecided", undefined],
    ["", "undecided", "at most 30 days old"],
    [7, "undecided", "at most 30 days old"],
  ])("is judged and told as recorded: %j", (on, outcome, accept) => {
    const { results } = assess(policy, [{ step: "book", on }]);
    const book = results.find(({ step }) => step === "book");
    expect(book?.outcome).toBe(outcome);
    if (accept !== undefined) expect(book?.accept).toBe(accept);
    expect(book?.observed).toBe(typeof on === "string" && on !== "" ? on : undefined);
  });

  it.each([
    [{ on: "2026-04-12" }, "within", undefined],
    [{ on: "2026-04-11" }, "outside", undefined],
    [{ result: "not-done" }, "undecided", "not-done"],
    [{ result: "satisfactory" }, "undecided", "missing"],
    [{}, "undecided", "missing"],
  ])("may be one that is not to have passed: %j", (entry, outcome, reason) => {
    const { results } = assess(policy, [{ step: "label", ...entry }]);
    expect(results.find(({ step }) => step === "label")).toMatchObject({
      outcome,
      accept: "not past",
      ...(reason === undefined ? {} : { reason }),
    });
  });

  it("can be named in rules, and has a field in a form", () => {
    const read = (book: string, label: string) =>
      assess(policy, [
        { step: "book", on: book },
        { step: "label", on: label },
      ]).results.find(({ rule: name }) => name === "together")?.outcome;
    expect([read("2026-04-01", "2026-05-01"), read("2026-04-01", "2026-04-01")]).toEqual(["within", "outside"]);
    const form = describeCheck(policy, "daily");
    expect(form?.steps.map(({ fields }) => fields)).toEqual([
      [{ key: "on", type: "date" }],
      [{ key: "on", type: "date" }],
    ]);
  });
});
