import { describe, expect, it } from "vitest";
import { compilePolicy, describeCheck } from "../../src/index.js";
import { assess, makePolicy, summarise } from "./sample.js";

const basis = { kind: "common-practice" };
const harness = { step: "harness", kind: "confirm" };
const done = [{ step: "harness", result: "satisfactory" }];
const subject = { kind: "set", formerly: ["apparatus"] };
const tested = { of: "set", every: "P1Y", counted: "from-last", date: "testedOn", consequence: "refer", basis };

// A former name is the present one by another word, so what is asked of the present kind is asked of an old record too.
describe("a subject that is recorded under a former name of its kind", () => {
  const compare = (policy: ReturnType<typeof makePolicy>, parts = {}, steps: readonly object[] = done) => {
    const entries = steps.map((step) => ({ ...step }));
    const [present, former] = ["set", "apparatus"].map((kind) => assess(policy, entries, { ...parts, kind }));
    if (present === undefined || former === undefined) throw new Error("nothing was judged");
    expect(summarise(former)).toEqual(summarise(present));
    expect(former.verdict).toBe(present.verdict);
    return former;
  };

  it("falls due as it does under its present name", () => {
    for (const scope of [{}, { for: { kind: "set" } }]) {
      const policy = makePolicy(
        [harness],
        { intervals: { tested: { ...tested, ...scope } } },
        { intervals: ["tested"], subject },
      );
      expect(compare(policy, { testedOn: "2020-04-12" }).verdict).toBe("refer");
      expect(compare(policy, { testedOn: "2026-04-01" }).verdict).toBe("meets");
      expect(compare(policy).verdict).toBe("refer");
    }
  });

  it.each([
    ["by the scope of a rule", { for: { kind: "set" } }],
    ["by the condition of a rule", { when: { "==": [{ var: "kind" }, "set"] } }],
    ["by a fact of the policy's own", { for: { sort: "set" } }],
  ])("is held to a rule %s", (_, scope) => {
    const rule = { rule: "never", require: { "==": [{ var: "harness.result" }, "defect"] }, basis, ...scope };
    const facts = { sort: { at: "/subject/kind", "one-of": ["set", "mask"] } };
    const policy = makePolicy([harness], { facts, rules: [rule] }, { subject });
    expect(compare(policy).verdict).toBe("withdraw");
  });

  it("has the limits of its kind, and is what the policy is for", () => {
    const cases = [
      { for: { kind: "set" }, accept: { "at-least": "200 bar" } },
      { for: { kind: "cylinder" }, accept: { "at-least": "100 bar" } },
    ];
    const charge = { step: "charge", kind: "reading", quantity: "pressure", tolerance: "charge" };
    const parts = { for: { kind: "set" }, tolerances: { charge: { cases, basis } } };
    const policy = makePolicy([charge], parts, { subject });
    expect(compare(policy, {}, [{ step: "charge", reading: "190 bar" }]).verdict).toBe("withdraw");
    expect(compare(policy, {}, [{ step: "charge", reading: "210 bar" }]).verdict).toBe("meets");
    const asked = (kind: string) => describeCheck(policy, "daily", { kind, id: "S-014" })?.steps;
    expect(asked("apparatus")).toEqual(asked("set"));
    expect(asked("mask")).not.toEqual(asked("set"));
  });

  it("is still what a scope means that says the former name", () => {
    const interval = { ...tested, for: { kind: "apparatus" } };
    const policy = makePolicy([harness], { intervals: { tested: interval } }, { intervals: ["tested"], subject });
    const late = { testedOn: "2020-04-12" };
    expect(assess(policy, done, { ...late, kind: "apparatus" }).verdict).toBe("refer");
    expect(assess(policy, done, { ...late, kind: "set" }).verdict).toBe("meets");
  });

  it("is meant by a fact of the policy's own, under either name", () => {
    for (const fact of [{ value: "text" }, { "one-of": ["set", "apparatus", "mask"] }]) {
      const facts = { sort: { at: "/subject/kind", ...fact } };
      const due = (sort: string, kind: string) => {
        const intervals = { tested: { ...tested, for: { sort } } };
        const policy = makePolicy([harness], { facts, intervals }, { intervals: ["tested"], subject });
        return assess(policy, done, { testedOn: "2020-04-12", kind }).verdict;
      };
      expect([due("set", "set"), due("set", "apparatus")]).toEqual(["refer", "refer"]);
      expect([due("apparatus", "apparatus"), due("apparatus", "set")]).toEqual(["refer", "meets"]);
      expect(due("mask", "apparatus")).toBe("meets");
    }
  });

  it("is known by the former name of another check, where its own says no kind", () => {
    const compile = (daily: object, ...others: readonly object[]) => {
      const { policy } = compilePolicy(
        JSON.stringify({
          tenbar: 1,
          policy: { id: "test/one", title: "One", version: "1", status: "draft" },
          deference: "Local procedure stands above this policy.",
          intervals: { tested: { ...tested, for: { kind: "set" } } },
          checks: {
            daily: { order: "any", intervals: ["tested"], steps: [harness], ...daily },
            ...Object.fromEntries(
              others.map((other, index) => [`other-${index}`, { order: "any", steps: [harness], ...other }]),
            ),
          },
        }),
      );
      if (policy === undefined) throw new Error("the policy was refused");
      return (kind: string) => assess(policy, done, { testedOn: "2020-04-12", kind });
    };
    expect(compile({}, { subject })("apparatus").verdict).toBe("refer");
    expect(compile({}, { subject })("mask").verdict).toBe("meets");
    // A name that is some check's present kind, or was that of two kinds, is left as it is.
    expect(compile({}, { subject }, { subject: "apparatus" })("apparatus").verdict).toBe("meets");
    expect(compile({}, { subject }, { subject: { kind: "mask", formerly: ["apparatus"] } })("apparatus").verdict).toBe(
      "meets",
    );
    expect(compile({}, { subject }, { subject })("apparatus").verdict).toBe("refer");
    // A check that says its kind takes no other.
    const other = compile({ subject: "mask" }, { subject })("apparatus");
    expect(other.findings.map(({ code }) => code)).toContain("record/not-for-this-check");
  });

  it("has no limits where there is a case for either name, whichever is stated first", () => {
    const either = [
      { for: { kind: "apparatus" }, accept: { "at-least": "100 bar" } },
      { for: { kind: "set" }, accept: { "at-least": "200 bar" } },
    ];
    for (const cases of [either, [...either].reverse()]) {
      const charge = { step: "charge", kind: "reading", quantity: "pressure", tolerance: "charge" };
      const policy = makePolicy([charge], { tolerances: { charge: { cases, basis } } }, { subject });
      const read = (kind: string) => summarise(assess(policy, [{ step: "charge", reading: "210 bar" }], { kind }));
      expect(read("apparatus")).toEqual({ "charge level": "undecided: facts-differ" });
      expect(read("set")).toEqual({ "charge level": "within" });
    }
  });
});
