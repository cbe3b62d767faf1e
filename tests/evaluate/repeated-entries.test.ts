import { describe, expect, it } from "vitest";
import { assess, makePolicy, summarise } from "./sample.js";

const basis = { kind: "common-practice" };
const policy = makePolicy([
  { step: "look", kind: "confirm", consequence: "advise", defects: { dusty: { consequence: "note" } } },
  { step: "torch", kind: "confirm", "when-fitted": "torch", consequence: "refer" },
  { step: "gauge", kind: "reading", quantity: "pressure", tolerance: { accept: { "at-most": "10 bar" } }, basis },
  {
    step: "charge",
    kind: "reading",
    each: "subject.cylinders",
    quantity: "pressure",
    tolerance: { accept: { "at-least": "270 bar" } },
    apart: { "at-most": "20 bar", consequence: "refer" },
    basis,
  },
]);

type Entry = Readonly<Record<string, unknown>>;

const look = { step: "look", result: "satisfactory" };
const torch = { step: "torch", result: "satisfactory" };
const gauge = { step: "gauge", reading: "5 bar" };
const charges = [
  { step: "charge", of: "C-1", reading: "280 bar" },
  { step: "charge", of: "C-2", reading: "290 bar" },
];
const subject = { fitted: { torch: true }, cylinders: [{ id: "C-1" }, { id: "C-2" }] };

const judge = (steps: readonly Entry[], parts: Entry = {}) => assess(policy, steps, { ...subject, ...parts });

/** What a result says of the gauge, and where it stands. */
function readGauge(steps: readonly Entry[]) {
  const { results, findings } = judge(steps);
  const result = results.find(({ step }) => step === "gauge");
  const finding = findings.find(({ step }) => step === "gauge");
  return { ...result, finding: finding && { ...finding, pointer: "" }, pointers: [...(result?.pointers ?? [])].sort() };
}

function permute(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  if (entries.length < 2) return [entries];
  return entries.flatMap((first, index) =>
    permute(entries.filter((_, place) => place !== index)).map((rest) => [first, ...rest]),
  );
}

describe("a step that is recorded more than once", () => {
  it.each([
    ["equally bad", ["20 bar", "25 bar"], "outside"],
    ["bad and worse known", ["20 bar", "5 bar"], "outside"],
    ["good and unreadable", ["5 bar", "five"], "undecided"],
    ["good and different", ["4 bar", "5 bar"], "undecided"],
    ["three times", ["20 bar", "25 bar", "30 bar"], "outside"],
  ])("says the same in whatever order: %s", (_, readings, outcome) => {
    const entries = readings.map((reading) => ({ step: "gauge", reading }));
    const [first, ...others] = permute(entries).map((some) => readGauge([look, torch, ...charges, ...some]));
    expect(first).toMatchObject({ outcome });
    for (const other of others) expect(other).toEqual(first);
    expect(first?.pointers).toEqual(entries.map((_one, index) => `/steps/${4 + index}`));
  });

  it("names the entry that decides, then the others in their order", () => {
    const readings = ["30 bar", "25 bar", "20 bar", "5 bar"].map((reading) => ({ step: "gauge", reading }));
    const { results } = judge([...readings, look, torch, ...charges]);
    const [decides, ...rest] = results.find(({ step }) => step === "gauge")?.pointers ?? [];
    expect(rest).toEqual(["/steps/0", "/steps/1", "/steps/2", "/steps/3"].filter((one) => one !== decides));
  });

  it("is one thing said twice where only the note and the time differ", () => {
    const twice = [
      { ...gauge, at: "2026-04-12T07:04:00+01:00" },
      { ...gauge, note: "again" },
    ];
    const assessment = judge([look, torch, ...charges, ...twice]);
    expect(assessment.verdict).toBe("meets");
    expect(summarise(assessment)["gauge level"]).toBe("within");
  });

  it("weighs what the worst of its entries weighs, however mild the one that stands", () => {
    const defects = [
      { step: "look", defect: "dusty" },
      { step: "look", result: "not-done" },
    ];
    for (const entries of permute(defects)) {
      const { verdict } = judge([...entries, torch, gauge, ...charges]);
      expect(verdict).toBe("refer");
    }
  });
});

describe("a step that is recorded once", () => {
  it("weighs refer where it is recorded as not done, however little it weighs", () => {
    expect(judge([look, torch, gauge, ...charges]).verdict).toBe("meets");
    const assessment = judge([{ step: "look", result: "not-done" }, torch, gauge, ...charges]);
    expect(assessment.verdict).toBe("refer");
    expect(summarise(assessment)).toMatchObject({ "look condition": "undecided: not-done" });
  });

  it.each([
    ["yes", "undecided: unreadable"],
    [[], "undecided: fitting-not-recorded"],
    [{}, "undecided: fitting-not-recorded"],
    [null, "undecided: fitting-not-recorded"],
    [{ torch: "yes" }, "undecided: unreadable"],
    [{ torch: null }, "undecided: fitting-not-recorded"],
  ])("is open where what is fitted is recorded as %j", (fitted, outcome) => {
    const assessment = judge([look, torch, gauge, ...charges], { fitted });
    expect(assessment.verdict).toBe("refer");
    expect(summarise(assessment)["torch condition"]).toBe(outcome);
  });

  it.each([
    [" C-1 ", "within", "within"],
    ["C-1", "within", "within"],
    ["", "undecided: missing", "within"],
    [" ", "undecided: missing", "within"],
    [undefined, "undecided: missing", "within"],
    [7, "undecided: unreadable", "within"],
    ["C-9", "undecided: conflicting", "within"],
    ["c-1", "undecided: conflicting", "within"],
  ])("is of the member that %j names", (of, first, second) => {
    const [, other] = charges;
    const summary = summarise(judge([look, torch, gauge, { step: "charge", of, reading: "280 bar" }, other ?? {}]));
    expect(summary["charge level C-1"]).toBe(first);
    if (first === "within") expect(summary["charge level C-2"]).toBe(second);
    else expect(summary["charge level C-2"]).not.toBe("within");
  });

  it("tells how far members lie apart once all are read", () => {
    expect(summarise(judge([look, torch, gauge, ...charges]))["charge apart"]).toBe("within");
    const far = [charges[0] ?? {}, { step: "charge", of: "C-2", reading: "320 bar" }];
    expect(summarise(judge([look, torch, gauge, ...far]))["charge apart"]).toBe("outside");
    expect(summarise(judge([look, torch, gauge, charges[0] ?? {}]))["charge apart"]).toMatch(/^undecided/);
  });
});
