import { describe, expect, it } from "vitest";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const confirm = (step: string, parts: Data = {}) => ({ step, kind: "confirm", ...parts });
const STEPS = ["a", "b", "c"].map((step) => confirm(step));

/** Each entry as `step` or `step@time`; what the order comes to. */
function judgeOrder(order: unknown, steps: readonly Data[], ...entries: readonly (string | Data)[]) {
  const policy = makePolicy(steps, {}, { order });
  const recorded = entries.map((entry) => {
    if (typeof entry !== "string") return entry;
    const [step, at] = entry.split("@");
    return { step, result: "satisfactory", ...(at === undefined ? {} : { at: `2026-04-12T${at}` }) };
  });
  const { results, findings } = assess(policy, recorded);
  const row = results.find(({ requirement }) => requirement === "order");
  return {
    said: row?.reason ?? row?.outcome,
    pointers: row?.pointers,
    findings: findings.filter(({ requirement }) => requirement === "order").length,
  };
}

const say = (...given: Parameters<typeof judgeOrder>) => judgeOrder(...given).said;

describe("an order listed by position", () => {
  const order = { "listed-by": "position" };

  it.each<[readonly (string | Data)[], string]>([
    [["a", "b", "c"], "within"],
    [["a", "c"], "within"],
    [["a", "a", "b"], "within"],
    [["b", "a", "c"], "outside"],
    [["a", "c", "b"], "outside"],
    [["a", "b", "a"], "outside"],
    [["a"], "only-one"],
    [[], "only-one"],
    [["a", "stranger", "b"], "within"],
    [["b", "stranger", "a"], "outside"],
    [[{ step: "b" }, "a", "c"], "order-unknown"],
    [[{ step: "b", note: "later" }, "a"], "only-one"],
    [[{ step: "b", defect: "torn" }, "a"], "outside"],
    [[{ step: "b", result: "not-done" }, "a"], "outside"],
  ])("%j is %s", (entries, said) => {
    expect(say(order, STEPS, ...entries)).toBe(said);
  });

  it("points at each entry that comes too late", () => {
    expect(judgeOrder(order, STEPS, "c", "b", "a")).toMatchObject({ pointers: ["/steps/1", "/steps/2"], findings: 2 });
    expect(judgeOrder(order, STEPS, "b", "c", "a")).toMatchObject({ pointers: ["/steps/2"], findings: 1 });
  });
});

describe("an order listed by time", () => {
  const order = { "listed-by": "at" };

  it.each<[readonly string[], string]>([
    [["a@07:00:00Z", "b@07:01:00Z", "c@07:02:00Z"], "within"],
    [["b@07:01:00Z", "a@07:00:00Z"], "within"],
    [["a@07:01:00Z", "b@07:00:00Z"], "outside"],
    [["a@07:00:00Z", "b@07:00:00Z"], "within"],
    [["b@07:00:00Z", "a@07:00:00Z"], "within"],
    [["a@07:00:00Z", "b@07:30:00+01:00"], "outside"],
    [["a@07:00:00", "b@07:01:00"], "within"],
    [["a@07:01:00", "b@07:00:00"], "outside"],
    [["a@07:00:00Z", "b@07:01:00"], "order-unknown"],
    [["a", "b@07:01:00Z"], "order-unknown"],
    [["a", "b"], "order-unknown"],
    [["a@07:02:00Z", "b@07:01:00Z", "c"], "outside"],
    [["a@07:00:00Z"], "only-one"],
  ])("%j is %s", (entries, said) => {
    expect(say(order, STEPS, ...entries)).toBe(said);
  });
});

describe("steps that come after others, in any order", () => {
  const steps = [confirm("a"), confirm("b", { after: ["a"] }), confirm("c", { after: ["a", "b"] })];

  it.each<[readonly (string | Data)[], string]>([
    [["a@07:00:00Z", "b@07:01:00Z", "c@07:02:00Z"], "within"],
    [["c@07:02:00Z", "b@07:01:00Z", "a@07:00:00Z"], "within"],
    [["a@07:00:00Z", "b@07:00:00Z"], "within"],
    [["a@07:01:00Z", "b@07:00:00Z"], "outside"],
    [["a@07:00:00", "b@07:01:00"], "within"],
    [["a@07:01:00", "b@07:00:00"], "outside"],
    [["a", "b"], "order-unknown"],
    [["a@07:00:00Z", "b"], "order-unknown"],
    [["a", "b@07:00:00Z"], "order-unknown"],
    [["a@07:00:00Z", "b@07:01:00"], "order-unknown"],
    [["a@07:00:00Z", "a@07:02:00Z", "b@07:01:00Z"], "outside"],
    [["a@07:01:00Z", "b@07:00:00Z", "b@07:02:00Z"], "outside"],
    [["a@07:00:00Z", "a@07:01:00Z", "b@07:02:00Z", "b@07:03:00Z"], "within"],
    [["a@07:00:00Z", "a", "b@07:02:00Z"], "order-unknown"],
    [["a@07:02:00Z", "a", "b@07:01:00Z"], "outside"],
    [["a@07:02:00Z", "b", "b@07:01:00Z"], "outside"],
    [["a@07:00:00Z"], "only-one"],
    [["b@07:00:00Z", { step: "a", at: "2026-04-12T07:01:00Z" }], "only-one"],
    [[], "only-one"],
  ])("%j is %s", (entries, said) => {
    expect(say("any", steps, ...entries)).toBe(said);
  });

  it("points at the last of those that should have been first", () => {
    const entries = ["a@07:00:00Z", "a@07:02:00Z", "b@07:01:00Z"];
    expect(judgeOrder("any", steps, ...entries)).toMatchObject({ pointers: ["/steps/1"], findings: 1 });
    const both = ["c@07:00:00Z", "a@07:01:00Z", "b@07:02:00Z"];
    expect(judgeOrder("any", steps, ...both)).toMatchObject({ pointers: ["/steps/1", "/steps/2"], findings: 2 });
  });

  it("have no order where none names another", () => {
    expect(say("any", STEPS, "c@07:00:00Z", "a@07:01:00Z")).toBeUndefined();
  });
});

describe("a rule over a step", () => {
  const charge = {
    step: "charge",
    kind: "reading",
    quantity: "pressure",
    tolerance: { accept: { "at-least": "1 bar" } },
    basis,
  };
  const each = { ...charge, each: "subject.cylinders" };
  const cylinders = [{ id: "C-1" }, { id: "C-2" }];
  const judge = (require: unknown, entries: readonly Data[], steps: readonly Data[] = [charge], subject: Data = {}) => {
    const policy = makePolicy(steps, { rules: [{ rule: "one", require, basis }] });
    const found = assess(policy, entries, subject).results.find(({ rule }) => rule === "one");
    return found?.reason ?? found?.outcome;
  };
  const full = { ">=": [{ var: "charge.reading" }, "200 bar"] };
  const reading = (value: unknown, parts: Data = {}) => ({ step: "charge", reading: value, ...parts });

  it("takes the value on which all its entries agree", () => {
    expect(judge(full, [reading("200 bar")])).toBe("within");
    expect(judge(full, [reading("199 bar")])).toBe("outside");
    expect(judge(full, [reading("200 bar"), reading("200 bar")])).toBe("within");
    expect(judge(full, [reading("200 bar"), reading("210 bar")])).toBe("rule-incomplete");
    expect(judge(full, [reading("200 bar"), { step: "charge" }])).toBe("rule-incomplete");
    expect(judge(full, [reading("many")])).toBe("rule-incomplete");
    expect(judge(full, [])).toBe("rule-incomplete");
  });

  it("takes words of a closed list alone", () => {
    const sound = { "==": [{ var: "charge.result" }, "satisfactory"] };
    expect(judge(sound, [reading("200 bar", { result: "satisfactory" })])).toBe("within");
    expect(judge(sound, [reading("200 bar", { result: "defect" })])).toBe("outside");
    expect(judge(sound, [reading("200 bar", { result: "fine" })])).toBe("rule-incomplete");
    expect(judge(sound, [reading("200 bar", { result: 3 })])).toBe("rule-incomplete");
    expect(judge(sound, [reading("200 bar")])).toBe("rule-incomplete");
  });

  it("asks of each member that was recorded, and is open for the others", () => {
    const all = { all: [{ var: "charge" }, { ">=": [{ var: "reading" }, "200 bar"] }] };
    const of = (id: string, value: unknown) => reading(value, { of: id });
    const judgeAll = (...entries: readonly Data[]) => judge(all, entries, [each], { cylinders });
    expect(judgeAll(of("C-1", "200 bar"), of("C-2", "210 bar"))).toBe("within");
    expect(judgeAll(of("C-1", "200 bar"), of("C-2", "190 bar"))).toBe("outside");
    expect(judgeAll(of("C-1", "200 bar"))).toBe("rule-incomplete");
    expect(judgeAll(of("C-1", "190 bar"))).toBe("outside");
    expect(judgeAll()).toBe("rule-incomplete");
    const second = { some: [{ var: "charge" }, { "==": [{ var: "of" }, "C-2"] }] };
    expect(judge(second, [of("C-2", "200 bar")], [each], { cylinders })).toBe("within");
    expect(judge(second, [of(" C-2 ", "200 bar")], [each], { cylinders })).toBe("within");
    expect(judge(second, [of("C-1", "200 bar"), of("C-3", "1 bar")], [each], { cylinders })).toBe("rule-incomplete");
  });

  it("asks of the members of a list of the subject", () => {
    const six = { all: [{ var: "subject.cylinders" }, { "==": [{ var: "waterCapacity" }, "6 L"] }] };
    const judgeSix = (subject: Data) => judge(six, [reading("200 bar")], [charge], subject);
    expect(judgeSix({ cylinders: [{ waterCapacity: "6 L" }, { waterCapacity: "6.0 L" }] })).toBe("within");
    expect(judgeSix({ cylinders: [{ waterCapacity: "6 L" }, { waterCapacity: "9 L" }] })).toBe("outside");
    expect(judgeSix({ cylinders: [{ waterCapacity: "6 L" }, {}] })).toBe("rule-incomplete");
    expect(judgeSix({ cylinders: [{ waterCapacity: "6 L" }, "C-2"] })).toBe("rule-incomplete");
    expect(judgeSix({ cylinders: [] })).toBe("rule-incomplete");
    expect(judgeSix({ cylinders: "C-1" })).toBe("rule-incomplete");
    expect(judgeSix({})).toBe("rule-incomplete");
    const old = { all: [{ var: "subject.cylinders" }, { "<": [{ var: "manufacturedOn" }, "2020-01-01"] }] };
    expect(judge(old, [], [charge], { cylinders: [{ manufacturedOn: "2019-12-31" }] })).toBe("within");
    expect(judge(old, [], [charge], { cylinders: [{ manufacturedOn: "2020-01-01" }] })).toBe("outside");
    const tested = { all: [{ var: "subject.cylinders" }, { ">=": [{ var: "requalifiedOn" }, "2020-01-01"] }] };
    expect(judge(tested, [], [charge], { cylinders: [{ requalifiedOn: "2020-01-01" }] })).toBe("within");
  });

  it("is open where its scope or its condition is, unless what it requires holds", () => {
    const policy = (parts: Data) => makePolicy([charge], { rules: [{ rule: "one", require: full, basis, ...parts }] });
    const say = (parts: Data, value: string, subject: Data = {}) => {
      const found = assess(policy(parts), [reading(value)], subject).results.find(({ rule }) => rule === "one");
      return found?.reason ?? found?.outcome;
    };
    const scope = { for: { class: "open-circuit" } };
    expect(say(scope, "190 bar", { class: "open-circuit" })).toBe("outside");
    expect(say(scope, "190 bar", { class: "airline" })).toBe("out-of-scope");
    expect(say(scope, "190 bar")).toBe("fact-missing");
    expect(say(scope, "200 bar")).toBe("within");
    const when = { when: { "==": [{ var: "class" }, "open-circuit"] } };
    expect(say(when, "190 bar", { class: "open-circuit" })).toBe("outside");
    expect(say(when, "190 bar", { class: "airline" })).toBe("condition-false");
    expect(say(when, "190 bar")).toBe("rule-incomplete");
    expect(say(when, "200 bar")).toBe("within");
    expect(say({ ...scope, ...when }, "190 bar", { class: 3 })).toBe("unreadable");
  });
});
