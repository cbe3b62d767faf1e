import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate, restorePlan } from "../../src/index.js";
import { areWrittenAlike } from "../../src/terms/index.js";
import { assess, makePolicy, summarise } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const harness = { step: "harness", kind: "confirm" };
const done = [{ step: "harness", result: "satisfactory" }];
const tested = { of: "set", every: "P1Y", counted: "from-last", date: "testedOn", consequence: "refer", basis };
const never = { rule: "never", require: { "==": [{ var: "harness.result" }, "defect"] }, basis };
const charge = { step: "charge", kind: "reading", quantity: "pressure", tolerance: "charge" };
const full = (limit: string, parts: Data = {}) => ({ accept: { "at-least": limit }, ...parts });
const WRITTEN = [
  "Open-Circuit",
  "open circuit",
  "OPEN_CIRCUIT",
  "opencircuit",
  "open\u2013circuit",
  "ｏｐｅｎ-circuit",
];

describe("words that differ only in how they are written", () => {
  it.each([
    ["Open Circuit", "open-circuit"],
    ["north 1", "North1"],
    ["1/11", "1-11"],
    ["PRESSLUFT", "Preßluft"],
    ["ΟΔΟΣΑΒΓ", "ΟΔΟΣ ΑΒΓ"],
    ["St John's", "St Johnʼs"],
    ["A\u3164", "A"],
    ["A\u200b", "a"],
    ["-open", "open"],
    ["A +", "A+"],
  ])("are %s and %s", (one, other) => {
    expect(areWrittenAlike(one, other)).toBe(true);
    expect(areWrittenAlike(other, one)).toBe(true);
  });

  it.each([
    ["open", "open"],
    ["open", "opens"],
    ["open", "closed"],
    ["1/11", "11/1"],
    ["1/11", "111"],
    ["1.2", "12"],
    ["A+", "A"],
    ["A-", "A"],
    ["A-", "A+"],
    ["-1", "1"],
    ["03", "3"],
    ["का", "कि"],
    ["-", "–"],
    ["", " "],
  ])("are not %s and %s", (one, other) => {
    expect(areWrittenAlike(one, other)).toBe(false);
    expect(areWrittenAlike(other, one)).toBe(false);
  });
});

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

  const chosen = (yes: unknown, no: unknown) => ({ if: [{ "==": [{ var: "station" }, "Lowmere 3"] }, yes, no] });
  it.each<[string, Data]>([
    ["by its scope", { for: { class: "open-circuit" } }],
    ["by its condition", { when: { "==": [{ var: "class" }, "open-circuit"] } }],
    ["by its condition, the word first", { when: { "==": ["open-circuit", { var: "class" }] } }],
    ["by a list in its condition", { when: { in: [{ var: "class" }, ["airline", "open-circuit"]] } }],
    ["by one term of its condition", { when: { and: [{ "==": [{ var: "class" }, "open-circuit"] }, true] } }],
    ["by a word that is chosen", { when: { "==": [{ var: "class" }, chosen("open-circuit", "airline")] } }],
    ["by a fact that is chosen", { when: { "==": [chosen({ var: "class" }, "airline"), "open-circuit"] } }],
    ["by another fact", { when: { "==": [{ var: "class" }, { var: "depot" }] } }],
  ])("leaves a rule open %s", (_, asked) => {
    const facts = { depot: { at: "/subject/depot", value: "text" } };
    const policy = makePolicy([harness], { facts, rules: [{ ...never, ...asked }] });
    const judge = (word: string) =>
      assess(policy, done, { class: word, depot: "open-circuit" }, { station: "Lowmere 3" });
    expect(judge("open-circuit").verdict).toBe("withdraw");
    expect(judge("closed-circuit").verdict).toBe("meets");
    for (const word of WRITTEN) expect(judge(word).verdict).toBe("refer");
  });

  it("is not the other word that a rule asks for", () => {
    const require = { "!=": [{ var: "class" }, "open-circuit"] };
    const policy = makePolicy([harness], { rules: [{ ...never, require }] });
    expect(assess(policy, done, { class: "closed-circuit" }).verdict).toBe("meets");
    expect(assess(policy, done, { class: "Open Circuit" }).verdict).toBe("refer");
  });

  it("leaves a rule over the members of a list open", () => {
    const require = { none: [{ var: "subject.cylinders" }, { "==": [{ var: "id" }, "C-381"] }] };
    const policy = makePolicy([harness], { rules: [{ ...never, require }] });
    const judge = (id: string) => assess(policy, done, { cylinders: [{ id }] }).verdict;
    expect(["C-382", "C-381", "c-381", "C 381"].map(judge)).toEqual(["meets", "withdraw", "refer", "refer"]);
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
    const cases = [full("200 bar", { for: { class: "open-circuit" } }), full("100 bar", { for: { class: "airline" } })];
    const policy = makePolicy([charge], { tolerances: { charge: { cases, basis } } });
    const judge = (word: string) =>
      summarise(assess(policy, [{ step: "charge", reading: "210 bar" }], { class: word }));
    expect(judge("open-circuit")).toEqual({ "charge level": "within" });
    expect(judge("Open Circuit")).toEqual({ "charge level": "undecided: unknown-word" });
    expect(judge("closed-circuit")).toEqual({ "charge level": "undecided: no-case" });
  });

  it("leaves open whether an order applies", () => {
    const order = { from: "2026-04-01", review: "2027-01-01", order: "LO 1", by: "An officer", reason: "A trial" };
    const only = { station: "Lowmere 3" };
    const tighter = { id: "trial", step: "daily/charge", accept: { "at-least": "280 bar" }, only, ...order };
    const policy = makePolicy([charge], { tolerances: { charge: { ...full("200 bar"), basis } }, adopted: [tighter] });
    const judge = (station: string) =>
      assess(policy, [{ step: "charge", reading: "210 bar" }], {}, { station }).verdict;
    expect(judge("Lowmere 4")).toBe("meets");
    for (const station of ["Lowmere 3", "LOWMERE 3", "Lowmere3"]) expect(judge(station)).toBe("withdraw");
  });

  it("is another word where the policy lists all of them", () => {
    const facts = { depot: { at: "/subject/depot", "one-of": ["north-1", "north1"] } };
    const policy = makePolicy([harness], { facts, rules: [{ ...never, for: { depot: "north-1" } }] });
    const judge = (word: string) => assess(policy, done, { depot: word }).verdict;
    expect(["north-1", "north1", "North 1"].map(judge)).toEqual(["withdraw", "meets", "refer"]);
  });

  it("is judged alike under a saved plan", () => {
    const policy = makePolicy([harness], { rules: [{ ...never, for: { class: "open-circuit" } }] });
    const { policy: restored } = restorePlan(JSON.parse(JSON.stringify(policy.plan)));
    if (restored === undefined) throw new Error("the plan was refused");
    const record = { tenbar: 1, id: "r", check: "daily", at: "2026-04-12", steps: done };
    const judge = (word: string) => evaluate(restored, { ...record, subject: { kind: "set", id: "S", class: word } });
    expect(judge("Open Circuit").verdict).toBe("refer");
  });
});

describe("a text that states nothing", () => {
  const NOTHING = ["-", "?", "–", "...", "\u200b", "\u3164"];

  it.each(NOTHING)("is no other word: %j", (text) => {
    const policy = makePolicy([harness], { rules: [{ ...never, for: { class: "open-circuit" } }] });
    expect(assess(policy, done, { class: "airline" }).verdict).toBe("meets");
    const nothing = assess(policy, done, { class: text });
    expect([nothing.verdict, nothing.results.find(({ rule }) => rule === "never")?.reason]).toEqual([
      "refer",
      "fact-missing",
    ]);
  });

  it.each(NOTHING)("matches nothing: %j", (text) => {
    const marking = { step: "marking", kind: "match", places: ["back", "mask"] };
    const equal = { ...marking, equals: "subject.marking" };
    const judge = (step: Data, seen: string, stated: string) =>
      summarise(
        assess(makePolicy([step]), [{ step: "marking", seen: { back: seen, mask: seen } }], { marking: stated }),
      );
    expect(judge(marking, "014", "014")).toEqual({ "marking match": "within" });
    expect(judge(marking, text, "014")).toEqual({ "marking match": "undecided: missing" });
    expect(judge(equal, "014", "014")).toEqual({ "marking match": "within" });
    expect(judge(equal, text, text)).toEqual({ "marking match": "undecided: fact-missing" });
    expect(judge(equal, "014", text)).toEqual({ "marking match": "undecided: fact-missing" });
  });
});

describe("a rule over the kind of subject", () => {
  const subject = { kind: "set", formerly: ["apparatus"] };
  const rule = (word: string, require: unknown = never.require) => ({
    ...never,
    require,
    when: { "==": [{ var: "kind" }, word] },
  });

  it("takes either name of one that is recorded under a former name", () => {
    for (const check of [{ subject }, {}]) {
      const masks = { order: "any", steps: [harness], subject };
      const judge = (word: string, kind: string) => {
        const text = JSON.stringify({
          tenbar: 1,
          policy: { id: "test/one", title: "One", version: "1", status: "draft" },
          deference: "Local procedure stands above this policy.",
          rules: [rule(word)],
          checks: { daily: { order: "any", steps: [harness], ...check }, masks },
        });
        const { policy } = compilePolicy(text);
        if (policy === undefined) throw new Error("the policy was refused");
        return assess(policy, done, { kind }).verdict;
      };
      expect(judge("set", "set")).toBe("withdraw");
      expect(judge("set", "apparatus")).toBe("withdraw");
      expect(judge("apparatus", "apparatus")).toBe("withdraw");
      expect(judge("apparatus", "set")).toBe("meets");
      expect(judge("Apparatus", "apparatus")).toBe("refer");
    }
  });

  it("takes either name beside another fact, in a list, and turned round", () => {
    const facts = { sort: { at: "/subject/kind", value: "text" }, depot: { at: "/subject/depot", value: "text" } };
    const judge = (when: unknown, depot = "x1") => {
      const policy = makePolicy([harness], { facts, rules: [{ ...never, when }] }, { subject });
      return assess(policy, done, { kind: "apparatus", depot }).verdict;
    };
    for (const name of ["kind", "sort"]) {
      const fact = { var: name };
      expect(judge({ "==": [fact, { var: "depot" }] }, "apparatus")).toBe("withdraw");
      expect(judge({ "==": [{ var: "depot" }, fact] }, "set")).toBe("withdraw");
      expect(judge({ "==": [fact, { var: "depot" }] }, "mask")).toBe("meets");
      expect(judge({ in: [fact, ["mask", "apparatus"]] })).toBe("withdraw");
      expect(judge({ in: [fact, ["mask", "cylinder"]] })).toBe("meets");
      expect(judge({ "!=": [fact, "apparatus"] })).toBe("meets");
      expect(judge({ "!=": [fact, "mask"] })).toBe("withdraw");
      expect(judge({ "==": [fact, fact] })).toBe("withdraw");
    }
  });
});
