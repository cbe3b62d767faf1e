import { describe, expect, it } from "vitest";
import { evaluate, type Policy } from "../../src/index.js";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const gauge = (division: string, rounding: string) => ({
  quantity: "pressure",
  division,
  rounding,
  range: ["0 bar", "400 bar"],
});
const instruments = {
  down: gauge("10 bar", "down"),
  near: gauge("10 bar", "nearest"),
  up: gauge("10 bar", "up"),
  fine: gauge("1 bar", "nearest"),
  plain: { quantity: "pressure" },
  "down-or-near": { "one-of": ["down", "near"] },
  "near-or-fine": { "one-of": ["near", "fine"] },
  "fine-or-near": { "one-of": ["fine", "near"] },
  "down-or-up": { "one-of": ["down", "up"] },
  "up-or-down": { "one-of": ["up", "down"] },
  "up-or-near": { "one-of": ["up", "near"] },
  "down-or-plain": { "one-of": ["down", "plain"] },
};

/** The same gauges with an error of their own, so that how sure an outcome is can be told. */
const erring = Object.fromEntries(
  Object.entries(instruments).map(([name, one]) => [name, "division" in one ? { ...one, "max-error": "4 bar" } : one]),
);

const makeReading = (instrument: string, gauges: Data = instruments) =>
  makePolicy(
    [
      {
        step: "one",
        kind: "reading",
        quantity: "pressure",
        tolerance: { accept: { "at-least": "100 bar" } },
        instrument,
        basis,
      },
    ],
    { instruments: gauges },
  );
const makeHold = (kind: string, instrument: string, gauges: Data = instruments) =>
  makePolicy(
    [
      {
        step: "one",
        kind: "hold",
        quantity: "pressure",
        [kind]: { accept: { "at-most": "10 bar" } },
        instrument,
        basis,
      },
    ],
    { instruments: gauges },
  );

/** A span as mathematics writes it, in bar. */
const show = (span: { from: string; to: string; ends: string } | undefined) =>
  span && `${span.ends[0]}${span.from}, ${span.to}${span.ends[1]}`.replaceAll(" bar", "");

// A gauge rounded down to a division shows what lies from the reading up to the next division; the span of two instruments of which
// either may have been read holds both.
describe("what a reading leaves open", () => {
  it.each([
    ["down", "[200, 210)"],
    ["near", "[195, 205]"],
    ["up", "(190, 200]"],
    ["fine", "[199.5, 200.5]"],
    ["down-or-near", "[195, 210)"],
    ["near-or-fine", "[195, 205]"],
    ["fine-or-near", "[195, 205]"],
    ["down-or-up", "(190, 210)"],
    ["up-or-down", "(190, 210)"],
    ["up-or-near", "(190, 205]"],
    ["plain", undefined],
    ["down-or-plain", undefined],
  ])("by the instrument %s is %s", (instrument, span) => {
    const [result] = assess(makeReading(instrument), [{ step: "one", reading: "200 bar" }]).results;
    expect(show(result?.span)).toBe(span);
    expect([result?.outcome, result?.margin]).toEqual(["within", "100 bar"]);
  });
});

describe("a change of two readings", () => {
  const judge = (kind: string, instrument: string, start: string, end: string) => {
    const { results, findings } = assess(makeHold(kind, instrument), [{ step: "one", start, end }]);
    const [result] = results;
    const notes = findings.filter(({ consequence }) => consequence === "note").map(({ code }) => code);
    return [result?.reason ?? result?.outcome, result?.observed, show(result?.span), result?.margin, ...notes];
  };

  it.each<[string, string, string, string, readonly unknown[]]>([
    ["drop", "down", "200 bar", "190 bar", ["within", "10 bar", "(0, 20)", "0 bar"]],
    ["drop", "down", "200 bar", "200 bar", ["within", "0 bar", "(-10, 10)", "10 bar"]],
    ["drop", "down", "210 bar", "190 bar", ["outside", "20 bar", "(10, 30)", "-10 bar"]],
    ["drop", "near", "200 bar", "190 bar", ["within", "10 bar", "[0, 20]", "0 bar"]],
    ["drop", "down-or-near", "200 bar", "190 bar", ["within", "10 bar", "[0, 20]", "0 bar"]],
    ["drop", "near-or-fine", "200 bar", "190 bar", ["within", "10 bar", "[0, 20]", "0 bar"]],
    ["drop", "plain", "200 bar", "190 bar", ["within", "10 bar", undefined, "0 bar"]],
    ["drop", "down-or-plain", "200 bar", "190 bar", ["within", "10 bar", undefined, "0 bar"]],
    ["rise", "down", "190 bar", "200 bar", ["within", "10 bar", "(0, 20)", "0 bar"]],
    ["rise", "down", "190 bar", "210 bar", ["outside", "20 bar", "(10, 30)", "-10 bar"]],
    ["change", "down", "190 bar", "200 bar", ["within", "10 bar", undefined, "0 bar"]],
    ["change", "down", "200 bar", "190 bar", ["within", "10 bar", undefined, "0 bar"]],
    ["change", "down", "190 bar", "210 bar", ["outside", "20 bar", undefined, "-10 bar"]],
  ])("%s by the instrument %s from %s to %s", (kind, instrument, start, end, said) => {
    expect(judge(kind, instrument, start, end)).toEqual(said);
  });

  it.each<[string, string, string, string, readonly unknown[]]>([
    ["drop", "down", "190 bar", "200 bar", ["within", "0 bar", "(-20, 0)", "10 bar", "hold/counted-as-no-change"]],
    ["rise", "near", "200 bar", "190 bar", ["within", "0 bar", "[-20, 0]", "10 bar", "hold/counted-as-no-change"]],
    ["drop", "fine", "190 bar", "191 bar", ["within", "0 bar", "[-2, 0]", "10 bar", "hold/counted-as-no-change"]],
    ["drop", "fine", "190 bar", "192 bar", ["moved-the-wrong-way", "-2 bar", "[-3, -1]", undefined]],
    ["drop", "near-or-fine", "190 bar", "200 bar", ["moved-the-wrong-way", "-10 bar", "[-20, 0]", undefined]],
    ["drop", "plain", "190 bar", "191 bar", ["moved-the-wrong-way", "-1 bar", undefined, undefined]],
    ["drop", "down-or-plain", "190 bar", "200 bar", ["moved-the-wrong-way", "-10 bar", undefined, undefined]],
  ])(
    "the other way counts as none up to one division: %s by %s from %s to %s",
    (kind, instrument, start, end, said) => {
      expect(judge(kind, instrument, start, end)).toEqual(said);
    },
  );

  it("has a note for each reading finer than the instrument can show, and both notes where both are due", () => {
    const finer = "step/finer-than-division";
    const notes = (start: string, end: string) => judge("drop", "down", start, end).slice(4);
    expect(notes("200 bar", "200 bar")).toEqual([]);
    expect(notes("205 bar", "200 bar")).toEqual([finer]);
    expect(notes("205 bar", "205 bar")).toEqual([finer]);
    expect(notes("210 bar", "205 bar")).toEqual([finer]);
    expect(new Set(notes("195 bar", "200 bar"))).toEqual(new Set([finer, "hold/counted-as-no-change"]));
    expect(notes("200 bar", "210 bar")).toEqual(["hold/counted-as-no-change"]);
  });

  it("is open where a reading is missing, not done, or cannot be read", () => {
    const reasonOf = (entry: Data) => assess(makeHold("drop", "down"), [{ step: "one", ...entry }]).results[0]?.reason;
    expect(reasonOf({})).toBe("missing");
    expect(reasonOf({ result: "not-done" })).toBe("not-done");
    expect(reasonOf({ start: "200 bar" })).toBe("missing");
    expect(reasonOf({ end: "200 bar", result: "not-done" })).toBe("not-done");
    expect(reasonOf({ start: "full", end: "200 bar", result: "not-done" })).toBe("unreadable");
    expect(reasonOf({ start: "200 bar", end: "2900 psi" })).toBe("mixed-units");
    expect(reasonOf({ start: "500 bar", end: "495 bar" })).toBe("off-range");
  });
});

// Errors within those stated, and values between two divisions, are taken to be as likely as each other: rectangular distributions, as in
// JCGM 106:2012 (from memory).
describe("how sure an outcome is", () => {
  const sure = (kind: string, entry: Data, instrument = "near") => {
    const policy = kind === "reading" ? makeReading(instrument, erring) : makeHold(kind, instrument, erring);
    return assess(policy, [{ step: "one", ...entry }]).results[0]?.confidence;
  };

  it("is a half at the limit, and all or nothing far from it", () => {
    expect(["100 bar", "200 bar", "50 bar"].map((reading) => sure("reading", { reading }))).toEqual([0.5, 1, 0]);
    expect(sure("drop", { start: "200 bar", end: "190 bar" })).toBe(0.5);
    expect(sure("drop", { start: "200 bar", end: "230 bar" })).toBeUndefined();
    expect(sure("drop", { start: "200 bar", end: "170 bar" })).toBe(0);
    expect(sure("change", { start: "200 bar", end: "170 bar" })).toBe(0);
    expect(sure("change", { start: "170 bar", end: "200 bar" })).toBe(0);
  });

  it("counts a change either way", () => {
    const up = sure("change", { start: "190 bar", end: "200 bar" });
    const down = sure("change", { start: "200 bar", end: "190 bar" });
    expect(up).toBe(down);
    // A drop of 10 bar is as likely below 10 bar as above; no more than 10 bar either way leaves out what rose by more.
    expect(down).toBeLessThanOrEqual(0.5);
    expect(down).toBeGreaterThan(0.49);
    expect(sure("change", { start: "200 bar", end: "200 bar" })).toBeGreaterThan(
      sure("change", { start: "200 bar", end: "190 bar" }) ?? 1,
    );
  });

  it("is the least that any instrument gives which may have been read", () => {
    const reading = "100 bar";
    const [down, up] = [sure("reading", { reading }, "down"), sure("reading", { reading }, "up")];
    expect(down).toBeGreaterThan(up ?? 1);
    for (const instrument of ["down-or-up", "up-or-down"]) expect(sure("reading", { reading }, instrument)).toBe(up);
    expect(sure("reading", { reading }, "down-or-plain")).toBeUndefined();
    expect(sure("reading", { reading: "105 bar" }, "down")).toBeUndefined();
  });
});

// What was said once is kept; it must be kept for that very thing.
describe("words that are kept", () => {
  const readings = ["100 bar", "10 MPa", "1450 psi", "200 bar", "205 bar", "500 bar", "99 bar", "0 bar", "200 psi"];
  const record = (entry: Data) => ({
    tenbar: 1,
    id: "r",
    check: "daily",
    at: "2026-04-12",
    subject: { kind: "set", id: "S-014" },
    steps: [{ step: "one", ...entry }],
  });
  const compare = (make: () => Policy, entries: readonly Data[]) => {
    const shared = make();
    for (const entry of [...entries, ...[...entries].reverse()]) {
      expect(evaluate(shared, record(entry))).toEqual(evaluate(make(), record(entry)));
    }
  };

  it("are those of the reading, its unit, its outcome and its instrument", () => {
    const entries = readings.flatMap((reading) => [
      { reading },
      { reading, instrument: "near" },
      { reading, occurred: "yes" },
      { reading: { atMost: reading } },
    ]);
    compare(() => makeReading("down-or-near", erring), entries);
    compare(() => makeReading("near"), entries);
  });

  it("are those of both readings of a change", () => {
    const some = ["100 bar", "10 MPa", "1450 psi", "205 bar", "500 bar"];
    const pairs = some.flatMap((start) => some.map((end) => ({ start, end })));
    compare(() => makeHold("drop", "down-or-near", erring), pairs);
    compare(() => makeHold("change", "near", erring), pairs);
  });
});

describe("the worse of two entries", () => {
  const harness = makePolicy([
    {
      step: "one",
      kind: "confirm",
      defects: { bent: { consequence: "refer" }, torn: { consequence: "refer" }, cut: { consequence: "withdraw" } },
    },
  ]);
  const findWorst = (policy: Policy, ...entries: readonly Data[]) => {
    const [result] = assess(
      policy,
      entries.map((entry) => ({ step: "one", ...entry })),
    ).results;
    return [result?.outcome, result?.reason, result?.observed];
  };
  const both = (policy: Policy, one: Data, other: Data, worst: readonly unknown[]) => {
    expect(findWorst(policy, one, other)).toEqual(worst);
    expect(findWorst(policy, other, one)).toEqual(worst);
  };

  it("is the one that weighs more, in either order", () => {
    both(harness, { result: "defect", defect: "torn" }, { result: "defect", defect: "cut" }, [
      "outside",
      undefined,
      "cut",
    ]);
    both(harness, { result: "defect", defect: "bent" }, { result: "defect", defect: "cut" }, [
      "outside",
      undefined,
      "cut",
    ]);
    both(harness, { result: "satisfactory" }, { result: "defect", defect: "torn" }, ["outside", undefined, "torn"]);
  });

  it("is never better than open where they differ", () => {
    const reading = makeReading("down");
    both(reading, { reading: "200 bar" }, { reading: "210 bar" }, ["undecided", "conflicting", expect.any(String)]);
    both(reading, { reading: "200 bar" }, { reading: "90 bar" }, ["outside", undefined, "90 bar"]);
    both(reading, { reading: "200 bar" }, { reading: "200 bar", note: "again" }, ["within", undefined, "200 bar"]);
  });
});
