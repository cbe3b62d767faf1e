import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { assess, makePolicy, summarise } from "./sample.js";

const basis = { kind: "common-practice" };
const harness = { step: "harness", kind: "confirm" };
const done = [{ step: "harness", result: "satisfactory" }];
const tested = { of: "set", every: "P1Y", counted: "from-last", date: "testedOn", consequence: "refer", basis };
const never = { rule: "never", require: { "==": [{ var: "harness.result" }, "defect"] }, basis };
const WRITTEN = [
  "Open-Circuit",
  "open circuit",
  "OPEN_CIRCUIT",
  "opencircuit",
  "open\u2013circuit",
  "ｏｐｅｎ-circuit",
];

// Taken for another word, `Open-Circuit` would be out of every scope of `open-circuit`, and nothing would be asked of it.
describe("a word that a policy compares, written another way", () => {
  it.each(WRITTEN)("leaves an interval open: %s", (word) => {
    const interval = { ...tested, for: { class: "open-circuit" } };
    const policy = makePolicy([harness], { intervals: { tested: interval } }, { intervals: ["tested"] });
    const judge = (stated: string, on: string) => assess(policy, done, { class: stated, testedOn: on });
    expect(judge("open-circuit", "2026-04-01").verdict).toBe("meets");
    expect(judge("closed-circuit", "2020-04-12").verdict).toBe("meets");
    expect(summarise(judge(word, "2026-04-01"))).toMatchObject({ "tested due": "undecided: unknown-word" });
    expect(judge(word, "2026-04-01").verdict).toBe("refer");
    expect(summarise(judge(word, "2020-04-12"))).toMatchObject({ "tested due": "outside" });
  });

  it.each([
    ["by its scope", { for: { class: "open-circuit" } }],
    ["by its condition", { when: { "==": [{ var: "class" }, "open-circuit"] } }],
    ["by its condition, the word first", { when: { "==": ["open-circuit", { var: "class" }] } }],
    ["by a list in its condition", { when: { in: [{ var: "class" }, ["airline", "open-circuit"]] } }],
    ["by one term of its condition", { when: { and: [{ "==": [{ var: "class" }, "open-circuit"] }, true] } }],
  ])("leaves a rule open %s", (_, asked) => {
    const policy = makePolicy([harness], { rules: [{ ...never, ...asked }] });
    const judge = (word: string) => assess(policy, done, { class: word });
    expect(judge("open-circuit").verdict).toBe("withdraw");
    expect(judge("closed-circuit").verdict).toBe("meets");
    for (const word of WRITTEN) expect(judge(word).verdict).not.toBe("meets");
  });

  it("is not the other word that a rule asks for", () => {
    const require = { "!=": [{ var: "class" }, "open-circuit"] };
    const policy = makePolicy([harness], { rules: [{ ...never, require }] });
    expect(assess(policy, done, { class: "closed-circuit" }).verdict).toBe("meets");
    expect(assess(policy, done, { class: "Open Circuit" }).verdict).toBe("refer");
  });

  it("is not for another policy or check, but leaves open whether this one is meant", () => {
    const checked = makePolicy([harness], {}, { for: { class: "open-circuit" } });
    for (const policy of [makePolicy([harness], { for: { class: "open-circuit" } }), checked]) {
      const codes = (word: string) => assess(policy, done, { class: word }).findings.map(({ code }) => code);
      expect(codes("Open-Circuit")).toEqual(["record/scope-unknown"]);
      expect(codes("closed-circuit")[0]).toMatch(/^record\/not-for-this-/);
    }
  });

  it("leaves a limit open", () => {
    const cases = [
      { for: { class: "open-circuit" }, accept: { "at-least": "200 bar" } },
      { for: { class: "airline" }, accept: { "at-least": "100 bar" } },
    ];
    const charge = { step: "charge", kind: "reading", quantity: "pressure", tolerance: "charge" };
    const policy = makePolicy([charge], { tolerances: { charge: { cases, basis } } });
    const judge = (word: string) =>
      summarise(assess(policy, [{ step: "charge", reading: "210 bar" }], { class: word }));
    expect(judge("open-circuit")).toEqual({ "charge level": "within" });
    expect(judge("Open Circuit")).toEqual({ "charge level": "undecided: unknown-word" });
    expect(judge("closed-circuit")).toEqual({ "charge level": "undecided: no-case" });
  });

  it("is told of a declared fact too, and of two words that a policy holds apart", () => {
    const facts = { depot: { at: "/subject/depot", value: "text" } };
    const rules = ["north-1", "north1"].map((word) => ({ ...never, rule: word, for: { depot: word } }));
    const policy = makePolicy([harness], { facts, rules });
    const judge = (word: string) => assess(policy, done, { depot: word });
    expect(judge("north-1").verdict).toBe("withdraw");
    expect(judge("north1").verdict).toBe("withdraw");
    expect(judge("North 1").verdict).toBe("refer");
    expect(judge("south").verdict).toBe("meets");
  });

  it("takes words of marks alone as they are written", () => {
    const policy = makePolicy([harness], { rules: [{ ...never, for: { class: "-" } }] });
    expect(assess(policy, done, { class: "+" }).verdict).toBe("meets");
    expect(assess(policy, done, { class: "-" }).verdict).toBe("withdraw");
  });
});

describe("a rule over the kind of subject", () => {
  const compile = (word: string, daily: object, others: object = {}) =>
    compilePolicy(
      JSON.stringify({
        tenbar: 1,
        policy: { id: "test/one", title: "One", version: "1", status: "draft" },
        deference: "Local procedure stands above this policy.",
        rules: [{ ...never, when: { "==": [{ var: "kind" }, word] } }],
        checks: { daily: { order: "any", steps: [harness], ...daily }, ...others },
      }),
    );
  const subject = { kind: "set", formerly: ["apparatus"] };
  const mask = { order: "any", steps: [harness], subject: "mask" };

  // A record under a former name is judged under the present one, so that such a rule would hold for nobody.
  it("does not take a former name, nor a kind that no check is of", () => {
    for (const word of ["apparatus", "cylinder"]) {
      const { policy, diagnostics } = compile(word, { subject }, { masks: mask });
      expect(policy).toBeUndefined();
      expect(diagnostics.map(({ code, params }) => [code, params["word"], params["known"]])).toEqual([
        ["rule/unknown-word", word, ["set", "mask"]],
      ]);
    }
  });

  it("takes the kinds of all checks, and any where a check says none", () => {
    for (const word of ["set", "mask"]) expect(compile(word, { subject }, { masks: mask }).diagnostics).toEqual([]);
    expect(compile("apparatus", { subject }, { other: { order: "any", steps: [harness] } }).diagnostics).toEqual([]);
    expect(compile("cylinder", {}).diagnostics).toEqual([]);
  });
});
