import { describe, expect, it } from "vitest";
import { compilePolicy, describeCheck } from "../../src/index.js";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const between = { accept: { between: ["20 s", "30 s"] } };
const whistle = { step: "alarm", kind: "timing", tolerance: between, basis };
const evented = { ...whistle, "from-event": "still", "to-event": "sounds" };
const stopwatch = { quantity: "duration", division: "5 s", rounding: "nearest", range: ["0 s", "10 min"] };

/** Outcome, reason and what was observed, as the one result of the step tells them. */
function judge(step: Data, entry: Data, parts: Data = {}): readonly unknown[] {
  const { results } = assess(makePolicy([step], parts), [{ step: "alarm", ...entry }]);
  expect(results).toHaveLength(1);
  const [result] = results;
  return [result?.outcome, result?.reason, result?.observed];
}

describe("a timing step", () => {
  it.each<[string, Data, readonly unknown[]]>([
    ["in the band", { elapsed: "25 s" }, ["within", undefined, "25 s"]],
    ["too long", { elapsed: "35 s" }, ["outside", undefined, "35 s"]],
    ["no time at all", { elapsed: "0 s" }, ["outside", undefined, "0 s"]],
    ["a time that runs backwards", { elapsed: "-25 s" }, ["outside", undefined, "-25 s"]],
    ["a word", { elapsed: "many" }, ["undecided", "unreadable", "many"]],
    ["blanks", { elapsed: "  " }, ["undecided", "missing", undefined]],
    ["nothing", {}, ["undecided", "missing", undefined]],
    ["not done", { result: "not-done" }, ["undecided", "not-done", undefined]],
    ["done, and nothing else", { result: "satisfactory" }, ["undecided", "missing", undefined]],
    ["that it never came", { occurred: false }, ["outside", undefined, "did not occur"]],
    [
      "that it never came, beside a time",
      { occurred: false, elapsed: "a while" },
      ["outside", undefined, "did not occur"],
    ],
    ["that it came, and no time", { occurred: true }, ["undecided", "missing", undefined]],
    ["that it came, and a time", { occurred: true, elapsed: "25 s" }, ["within", undefined, "25 s"]],
    ["a word for whether it came", { occurred: "yes", elapsed: "25 s" }, ["undecided", "unreadable", "25 s"]],
    ["a word for whether it came, and no time", { occurred: "yes" }, ["undecided", "unreadable", undefined]],
    ["nothing of whether it came", { occurred: null, elapsed: "25 s" }, ["within", undefined, "25 s"]],
    [
      "events that the policy names no names for",
      { events: { still: "2026-04-12T07:00:00Z" } },
      ["undecided", "missing", undefined],
    ],
  ])("says of %s", (_, entry, said) => {
    expect(judge(whistle, entry)).toEqual(said);
  });

  const at = (still: unknown, sounds: unknown) => ({ events: { still, sounds } });
  it.each<[string, Data, readonly unknown[]]>([
    ["both with an offset", at("2026-04-12T07:00:00Z", "2026-04-12T07:00:25Z"), ["within", undefined, "25 s"]],
    ["two offsets", at("2026-04-12T07:00:00Z", "2026-04-12T08:00:25+01:00"), ["within", undefined, "25 s"]],
    ["both local", at("2026-04-12T07:00:00", "2026-04-12T07:00:25"), ["within", undefined, "25 s"]],
    ["both local, too long", at("2026-04-12T07:00:00", "2026-04-12T07:00:35"), ["outside", undefined, "35 s"]],
    [
      "only the first with an offset",
      at("2026-04-12T07:00:00Z", "2026-04-12T07:00:25"),
      ["undecided", "unreadable", undefined],
    ],
    [
      "only the second with one",
      at("2026-04-12T07:00:00", "2026-04-12T07:00:25Z"),
      ["undecided", "unreadable", undefined],
    ],
    ["the wrong way round", at("2026-04-12T07:00:25Z", "2026-04-12T07:00:00Z"), ["outside", undefined, "-25 s"]],
    ["at once", at("2026-04-12T07:00:00Z", "2026-04-12T07:00:00Z"), ["outside", undefined, "0 s"]],
    ["a day without a time", at("2026-04-12", "2026-04-12"), ["undecided", "unreadable", undefined]],
    ["a word, then a time", at("soon", "2026-04-12T07:00:25Z"), ["undecided", "unreadable", undefined]],
    ["a time, then a word", at("2026-04-12T07:00:00Z", "soon"), ["undecided", "unreadable", undefined]],
    ["a local time, then a day", at("2026-04-12T07:00:25", "2026-04-12"), ["undecided", "unreadable", undefined]],
    ["a day, then a local time", at("2026-04-12", "2026-04-12T07:00:25"), ["undecided", "unreadable", undefined]],
    [
      "finer than a millisecond",
      at("2026-04-12T07:00:00Z", "2026-04-12T07:00:25.0001Z"),
      ["undecided", "too-fine", undefined],
    ],
    ["the second alone", at(undefined, "2026-04-12T07:00:25Z"), ["undecided", "missing", undefined]],
    ["the first alone", at("2026-04-12T07:00:00Z", null), ["undecided", "missing", undefined]],
    ["no map of events", { events: "2026-04-12T07:00:25Z" }, ["undecided", "unreadable", undefined]],
    ["a list of events", { events: ["2026-04-12T07:00:25Z"] }, ["undecided", "unreadable", undefined]],
    ["no event", { events: {} }, ["undecided", "missing", undefined]],
  ])("says of events: %s", (_, entry, said) => {
    expect(judge(evented, entry)).toEqual(said);
  });

  it("takes no time that runs backwards for a short one", () => {
    const soon = { accept: { "at-most": "30 s" } };
    const early = at("2026-04-12T07:00:25Z", "2026-04-12T07:00:00Z");
    expect(judge({ ...evented, tolerance: soon }, early)).toEqual(["undecided", "conflicting", "-25 s"]);
    expect(judge({ ...whistle, tolerance: soon }, { elapsed: "-25 s" })).toEqual(["undecided", "conflicting", "-25 s"]);
    expect(judge({ ...whistle, tolerance: soon }, { elapsed: "0 s" })).toEqual(["within", undefined, "0 s"]);
  });

  it("takes the worse of a time and of events", () => {
    const good = at("2026-04-12T07:00:00Z", "2026-04-12T07:00:25Z");
    const late = at("2026-04-12T07:00:00Z", "2026-04-12T07:00:35Z");
    expect(judge(evented, { ...good, elapsed: "24 s" })).toEqual(["within", undefined, expect.any(String)]);
    expect(judge(evented, { ...late, elapsed: "24 s" })[0]).toBe("outside");
    expect(judge(evented, { ...good, elapsed: "34 s" })[0]).toBe("outside");
    expect(judge(evented, { ...good, elapsed: "soon" })[0]).toBe("undecided");
  });

  it("notes a time finer than its instrument can show, and refuses one beyond its range", () => {
    const parts = { instruments: { stopwatch } };
    const step = { ...whistle, instrument: "stopwatch" };
    const note = (elapsed: string) =>
      assess(makePolicy([step], parts), [{ step: "alarm", elapsed }]).findings.map(({ code }) => code);
    expect(note("25 s")).toEqual([]);
    expect(note("24 s")).toEqual(["step/finer-than-division"]);
    const open = { ...step, tolerance: { accept: { "at-least": "20 s" } } };
    expect(judge(open, { elapsed: "11 min" }, parts)).toEqual(["undecided", "off-range", "11 min"]);
  });

  it("needs both events or none", () => {
    for (const half of ["from-event", "to-event"] as const) {
      const text = JSON.stringify({
        tenbar: 1,
        policy: { id: "test/one", title: "One", version: "1", status: "draft" },
        deference: "Local procedure stands above this policy.",
        checks: { daily: { order: "any", steps: [{ ...whistle, [half]: "still" }] } },
      });
      const { policy, diagnostics } = compilePolicy(text);
      expect(policy).toBeUndefined();
      const absent = half === "from-event" ? "to-event" : "from-event";
      expect(diagnostics.map(({ code, params }) => [code, params])).toEqual([
        ["plan/half-stated", { present: half, absent }],
      ]);
    }
  });

  it("asks for a time, whether it came and its events", () => {
    const fieldsOf = (step: Data) => describeCheck(makePolicy([step]), "daily")?.steps[0]?.fields;
    const plain = [
      { key: "elapsed", type: "quantity", quantity: "duration", units: ["s", "min", "h"] },
      { key: "occurred", type: "flag" },
    ];
    expect(fieldsOf(whistle)).toEqual(plain);
    expect(fieldsOf(evented)).toEqual([...plain, { key: "events", type: "events", events: ["still", "sounds"] }]);
  });

  it("lends its time to rules", () => {
    const rule = { rule: "soon", require: { "<": [{ var: "alarm.elapsed" }, "28 s"] }, basis };
    const policy = makePolicy([whistle], { rules: [rule] });
    const outcomeOf = (elapsed: string) =>
      assess(policy, [{ step: "alarm", elapsed }]).results.find((one) => one.rule === "soon")?.outcome;
    expect([outcomeOf("27 s"), outcomeOf("28 s"), outcomeOf("0.45 min")]).toEqual(["within", "outside", "within"]);
  });
});

describe("a hold step", () => {
  const hold = {
    step: "leak",
    kind: "hold",
    quantity: "pressure",
    lasting: { "at-least": "60 s" },
    drop: { accept: { "at-most": "10 bar" } },
    basis,
  };

  it("lends what it reads to rules", () => {
    const rule = (rule: string, require: unknown) => ({ rule, require, basis });
    const rules = [
      rule("full", { ">=": [{ var: "leak.start" }, "250 bar"] }),
      rule("still-full", { ">=": [{ var: "leak.end" }, "250 bar"] }),
      rule("two-minutes", { ">=": [{ var: "leak.held" }, "2 min"] }),
    ];
    const policy = makePolicy([hold], { rules });
    const judgeRules = (start: string, end: string, held: string) =>
      assess(policy, [{ step: "leak", start, end, held }])
        .results.filter((one) => one.rule !== undefined)
        .map(({ outcome }) => outcome);
    expect(judgeRules("260 bar", "255 bar", "120 s")).toEqual(["within", "within", "within"]);
    expect(judgeRules("240 bar", "240 bar", "60 s")).toEqual(["outside", "outside", "outside"]);
    expect(judgeRules("252 bar", "248 bar", "2 min")).toEqual(["within", "outside", "within"]);
  });

  it("asks for three readings", () => {
    const bars = { type: "quantity", quantity: "pressure", units: expect.arrayContaining(["bar"]) };
    expect(describeCheck(makePolicy([hold]), "daily")?.steps[0]?.fields).toEqual([
      { key: "start", ...bars },
      { key: "end", ...bars },
      { key: "held", type: "quantity", quantity: "duration", units: ["s", "min", "h"] },
    ]);
  });

  it("takes no time that runs backwards for a short one", () => {
    const lastingOf = (lasting: Data, held: string) => {
      const entry = { step: "leak", start: "260 bar", end: "260 bar", held };
      const { results } = assess(makePolicy([{ ...hold, lasting }]), [entry]);
      const found = results.find((one) => one.requirement === "lasting");
      return [found?.outcome, found?.reason];
    };
    expect(lastingOf({ "at-least": "60 s" }, "0 s")).toEqual(["outside", undefined]);
    expect(lastingOf({ "at-least": "60 s" }, "-60 s")).toEqual(["outside", undefined]);
    expect(lastingOf({ "at-most": "60 s" }, "0 s")).toEqual(["within", undefined]);
    expect(lastingOf({ "at-most": "60 s" }, "-60 s")).toEqual(["undecided", "conflicting"]);
  });

  it("tells a change only where both readings can be compared", () => {
    const told = (start: unknown, end: unknown) =>
      assess(makePolicy([hold]), [{ step: "leak", start, end, held: "60 s" }]).results.find(
        (one) => one.requirement === "drop",
      );
    expect(told("260 bar", "255 bar")).toMatchObject({ outcome: "within", observed: "5 bar" });
    expect(told("260 bar", "3700 psi")).toMatchObject({ outcome: "undecided", reason: "mixed-units" });
    expect(told("260 bar", "3700 psi")?.observed).toBeUndefined();
    expect(told("260 bar", "most")?.observed).toBeUndefined();
    expect(told("most", "260 bar")?.observed).toBeUndefined();
  });
});
