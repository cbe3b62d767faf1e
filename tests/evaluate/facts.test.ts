import { describe, expect, it } from "vitest";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const harness = { step: "harness", kind: "confirm" };
const done = [{ step: "harness", result: "satisfactory" }];

/** The outcome and reason of a rule over the fact `f`, for a record whose subject has `masks`. */
function judgeRule(fact: Data, require: unknown, subject: Data): string {
  const rules = [{ rule: "one", require, basis }];
  const policy = makePolicy([harness], { facts: { f: fact }, rules });
  const result = assess(policy, done, subject).results.find(({ rule }) => rule === "one");
  return result?.reason ?? String(result?.outcome);
}

const f = { var: "f" };

describe("a fact at one place", () => {
  const date = { at: "/subject/bought", value: "date" };
  const flag = { at: "/subject/lined", value: "flag" };
  const length = { at: "/subject/hose", quantity: "length" };
  const text = { at: "/subject/depot", value: "text" };

  it.each<[Data, unknown, Data, string]>([
    [date, { "<": [f, "2026-01-01"] }, { bought: "2025-12-31" }, "within"],
    [date, { "<": [f, "2026-01-01"] }, { bought: "2026-01-01" }, "outside"],
    [date, { "<": [f, "2026-01-01"] }, { bought: "31.12.2025" }, "rule-incomplete"],
    [date, { "<": [f, "2026-01-01"] }, {}, "rule-incomplete"],
    [flag, f, { lined: true }, "within"],
    [flag, f, { lined: false }, "outside"],
    [flag, f, { lined: "yes" }, "rule-incomplete"],
    [flag, f, { lined: null }, "rule-incomplete"],
    [length, { ">=": [f, "20 m"] }, { hose: "20 m" }, "within"],
    [length, { ">=": [f, "20 m"] }, { hose: "1999 cm" }, "outside"],
    [length, { ">=": [f, "20 m"] }, { hose: "20" }, "rule-incomplete"],
    [length, { ">=": [f, "20 m"] }, { hose: "20 bar" }, "rule-incomplete"],
    [text, { "==": [f, "north"] }, { depot: " north " }, "within"],
    [text, { "==": [f, "north"] }, { depot: "south" }, "outside"],
    [text, { "==": [f, "north"] }, { depot: 3 }, "rule-incomplete"],
    [text, { "==": [f, "north"] }, { depot: "  " }, "rule-incomplete"],
  ])("%j %j of %j: %s", (fact, require, subject, outcome) => {
    expect(judgeRule(fact, require, subject)).toBe(outcome);
  });

  it.each<[string, Data, string]>([
    ["/subject/masks/0/id", { masks: [{ id: "north" }] }, "within"],
    ["/subject/masks/1/id", { masks: [{ id: "south" }, { id: "north" }] }, "within"],
    [
      "/subject/masks/10/id",
      { masks: [...Array.from({ length: 10 }, () => ({ id: "south" })), { id: "north" }] },
      "within",
    ],
    ["/subject/masks/1/id", { masks: [{ id: "north" }] }, "rule-incomplete"],
    ["/subject/masks/01/id", { masks: [{ id: "south" }, { id: "north" }] }, "rule-incomplete"],
    ["/subject/masks/1x/id", { masks: [{ id: "south" }, { id: "north" }] }, "rule-incomplete"],
    ["/subject/masks/x1/id", { masks: [{ id: "south" }, { id: "north" }] }, "rule-incomplete"],
    ["/subject/masks/length", { masks: ["north"] }, "rule-incomplete"],
    ["/subject/masks/0/id", { masks: "north" }, "rule-incomplete"],
    ["/subject/masks/0/id", { masks: { "0": { id: "north" } } }, "within"],
    ["/subject/a~1b/c~0d", { "a/b": { "c~d": "north" } }, "within"],
    ["/subject/depot/id", { depot: "north" }, "rule-incomplete"],
  ])("%s is followed in %j: %s", (at, subject, outcome) => {
    expect(judgeRule({ at, value: "text" }, { "==": [f, "north"] }, subject)).toBe(outcome);
  });
});

describe("a fact over a list", () => {
  const each = "/subject/masks";
  const masks = (...members: readonly unknown[]) => ({ masks: members });
  const dates = (...bought: readonly unknown[]) => masks(...bought.map((on) => ({ bought: on })));
  const date = (take: string) => ({ at: "/bought", each, take, value: "date" });
  const early = { "==": [f, "2024-01-01"] };
  const late = { "==": [f, "2026-01-01"] };

  it.each<[string, unknown, Data, string]>([
    ["lowest", early, dates("2026-01-01", "2024-01-01", "2025-01-01"), "within"],
    ["lowest", early, dates("2024-01-01", "2025-01-01"), "within"],
    ["lowest", late, dates("2024-01-01", "2026-01-01"), "outside"],
    ["highest", late, dates("2024-01-01", "2026-01-01", "2025-01-01"), "within"],
    ["highest", late, dates("2026-01-01", "2024-01-01"), "within"],
    ["highest", early, dates("2026-01-01", "2024-01-01"), "outside"],
    ["only", early, dates("2024-01-01", "2024-01-01"), "within"],
    ["only", early, dates("2024-01-01"), "within"],
    ["only", early, dates("2024-01-01", "2025-01-01"), "rule-incomplete"],
    ["only", early, dates("2024-01-01", "2025-01-01", "2024-01-01"), "rule-incomplete"],
    ["lowest", early, dates("2024-01-01", undefined), "rule-incomplete"],
    ["lowest", early, dates(undefined, "2024-01-01"), "rule-incomplete"],
    ["lowest", early, dates("2024-01-01", "soon"), "rule-incomplete"],
    ["lowest", early, masks(), "rule-incomplete"],
    ["lowest", early, {}, "rule-incomplete"],
    ["lowest", early, { masks: "2024-01-01" }, "rule-incomplete"],
    ["lowest", early, { masks: { bought: "2024-01-01" } }, "rule-incomplete"],
    ["lowest", early, masks("2024-01-01"), "rule-incomplete"],
  ])("takes the %s: %j of %j: %s", (take, require, subject, outcome) => {
    expect(judgeRule(date(take), require, subject)).toBe(outcome);
  });

  it("compares quantities by their size, whatever their unit", () => {
    const set = (take: string) => ({ at: "/set", each, take, quantity: "pressure" });
    const valves = masks({ set: "6 bar" }, { set: "0.68 MPa" }, { set: "6.5 bar" });
    expect(judgeRule(set("lowest"), { "==": [f, "6 bar"] }, valves)).toBe("within");
    expect(judgeRule(set("highest"), { "==": [f, "6.8 bar"] }, valves)).toBe("within");
    expect(judgeRule(set("only"), { "==": [f, "6 bar"] }, masks({ set: "6 bar" }, { set: "0.6 MPa" }))).toBe("within");
    expect(judgeRule(set("only"), { "==": [f, "6 bar"] }, valves)).toBe("rule-incomplete");
  });

  it("takes a text or a flag that all members share", () => {
    const depot = { at: "/depot", each, value: "text" };
    const lined = { at: "/lined", each, value: "flag" };
    const north = { "==": [f, "north"] };
    expect(judgeRule(depot, north, masks({ depot: "north" }, { depot: " north" }))).toBe("within");
    expect(judgeRule(depot, north, masks({ depot: "north" }, { depot: "south" }))).toBe("rule-incomplete");
    expect(judgeRule(lined, f, masks({ lined: true }, { lined: true }))).toBe("within");
    expect(judgeRule(lined, f, masks({ lined: false }, { lined: false }))).toBe("outside");
    expect(judgeRule(lined, f, masks({ lined: true }, { lined: false }))).toBe("rule-incomplete");
  });
});

describe("why a limit by a fact is open", () => {
  const charge = (limit: string, parts: Data = {}) => ({
    step: "charge",
    kind: "reading",
    quantity: "pressure",
    tolerance: { accept: { "at-least": limit } },
    basis,
    ...parts,
  });
  const judge = (step: Data, subject: Data, facts: Data = {}) => {
    const policy = makePolicy([step], { facts });
    const [result] = assess(policy, [{ step: "charge", reading: "190 bar" }], subject).results;
    return result?.reason ?? String(result?.outcome);
  };

  it.each<[Data, string]>([
    [{ ratedPressure: "200 bar" }, "within"],
    [{ ratedPressure: "300 bar" }, "outside"],
    [{}, "fact-missing"],
    [{ ratedPressure: "200" }, "no-unit"],
    [{ ratedPressure: "many" }, "unreadable"],
    [{ ratedPressure: "0 bar" }, "unreadable"],
    [{ ratedPressure: "-200 bar" }, "unreadable"],
    [{ cylinders: [{ id: "C", ratedPressure: "200 bar" }] }, "within"],
    [{ cylinders: [{ id: "C" }] }, "fact-missing"],
    [{ cylinders: ["C"] }, "fact-missing"],
    [{ cylinders: "C" }, "fact-missing"],
    [{ cylinders: [{ ratedPressure: "200 bar" }, { ratedPressure: "200 bar" }] }, "within"],
    [{ cylinders: [{ ratedPressure: "200 bar" }, { ratedPressure: "20 MPa" }] }, "within"],
    [{ cylinders: [{ ratedPressure: "200 bar" }, { ratedPressure: "300 bar" }] }, "facts-differ"],
    [{ cylinders: [{ ratedPressure: "200 bar" }, {}] }, "fact-missing"],
    [{ ratedPressure: "200 bar", cylinders: [{ ratedPressure: "300 bar" }] }, "facts-differ"],
    [{ ratedPressure: "200 bar", cylinders: [{ ratedPressure: "200 bar" }] }, "within"],
  ])("of the rated pressure in %j: %s", (subject, reason) => {
    expect(judge(charge("90 % of rated-pressure"), subject)).toBe(reason);
  });

  it("of a declared fact", () => {
    const facts = { working: { at: "/subject/working", quantity: "pressure" } };
    const step = charge("90 % of working");
    const reasons = [{ working: "200 bar" }, {}, { working: "200" }, { working: "0 bar" }].map((one) =>
      judge(step, one, facts),
    );
    expect(reasons).toEqual(["within", "fact-missing", "no-unit", "unreadable"]);
  });

  it("of a rule over the built-in ones", () => {
    const rated = { ">=": [{ var: "rated-pressure" }, "200 bar"] };
    const water = { ">=": [{ var: "water-capacity" }, "6 L"] };
    const fact = { at: "/subject/x", value: "text" };
    expect(judgeRule(fact, rated, { ratedPressure: "200 bar" })).toBe("within");
    expect(judgeRule(fact, rated, { ratedPressure: "199 bar" })).toBe("outside");
    expect(judgeRule(fact, rated, {})).toBe("rule-incomplete");
    expect(judgeRule(fact, water, { cylinders: [{ waterCapacity: "6.8 L" }] })).toBe("within");
    expect(judgeRule(fact, water, { waterCapacity: "5 L" })).toBe("outside");
    expect(judgeRule(fact, water, { waterCapacity: "5 bar" })).toBe("rule-incomplete");
  });
});

describe("which instrument was read", () => {
  const gauge = (division: string) => ({
    quantity: "pressure",
    division,
    rounding: "down",
    range: ["0 bar", "400 bar"],
  });
  const instruments = { dial: gauge("10 bar"), digital: gauge("1 bar"), set: { "one-of": ["dial", "digital"] } };
  const step = {
    step: "charge",
    kind: "reading",
    quantity: "pressure",
    tolerance: { accept: { "at-least": "1 bar" } },
    instrument: "set",
    basis,
  };
  const spanOf = (subject: Data, entry: Data = {}) => {
    const [result] = assess(
      makePolicy([step], { instruments }),
      [{ step: "charge", reading: "200 bar", ...entry }],
      subject,
    ).results;
    return result?.reason ?? result?.span?.to;
  };

  it("is told by the entry, else by the subject, else open", () => {
    expect(spanOf({})).toBe("210 bar");
    expect(spanOf({ instruments: { set: "digital" } })).toBe("201 bar");
    expect(spanOf({ instruments: { set: " digital " } })).toBe("201 bar");
    expect(spanOf({ instruments: { set: "dial" } }, { instrument: "digital" })).toBe("201 bar");
    expect(spanOf({ instruments: { set: "set" } })).toBe("210 bar");
    expect(spanOf({ instruments: { set: "sundial" } })).toBe("instrument-unknown");
    expect(spanOf({ instruments: { set: 3 } })).toBe("instrument-unknown");
    expect(spanOf({ instruments: "digital" })).toBe("210 bar");
    expect(spanOf({}, { instrument: "sundial" })).toBe("instrument-unknown");
  });
});
