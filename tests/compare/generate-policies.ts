import fc from "fast-check";

const consequence = fc.constantFrom("note", "advise", "refer", "withdraw");
const bars = fc.integer({ min: 0, max: 40 }).map((tens) => `${tens * 10} bar`);
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const accept = fc.oneof(
  bars.map((limit) => ({ "at-most": limit })),
  bars.map((limit) => ({ below: limit })),
  bars.map((limit) => ({ "at-least": limit })),
  bars.map((limit) => ({ above: limit })),
  fc.integer({ min: 50, max: 95 }).map((share) => ({ "at-least": `${share} % of rated-pressure` })),
  fc
    .tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 10, max: 20 }))
    .map(([low, high]) => ({ between: [`${low * 10} bar`, `${high * 10} bar`] })),
);

const basis = { kind: "common-practice" };
const whenFitted = optional(fc.constant("alarm"));

const confirmStep = fc.record({
  step: fc.constant("harness"),
  kind: fc.constant("confirm"),
  consequence: optional(consequence),
  "when-fitted": whenFitted,
  defects: optional(fc.record({ torn: consequence.map((one) => ({ consequence: one })) })),
  attestable: optional(fc.boolean()),
});
const readingStep = fc.record({
  step: fc.constant("charge"),
  kind: fc.constant("reading"),
  quantity: fc.constant("pressure"),
  tolerance: fc.record({ accept }),
  consequence: optional(consequence),
  "when-fitted": whenFitted,
  instrument: optional(fc.constant("gauge")),
  basis: fc.constant(basis),
});
const holdStep = fc.record({
  step: fc.constant("leak"),
  kind: fc.constant("hold"),
  quantity: fc.constant("pressure"),
  start: optional(bars.map((limit) => ({ "at-least": limit }))),
  lasting: optional(fc.integer({ min: 1, max: 9 }).map((tens) => ({ "at-least": `${tens * 10} s` }))),
  drop: fc.record({ accept: bars.map((limit) => ({ "at-most": limit })) }),
  consequence: optional(consequence),
  after: optional(fc.constant(["charge"])),
  basis: fc.constant(basis),
});
const matchStep = fc.record({
  step: fc.constant("number"),
  kind: fc.constant("match"),
  places: fc.subarray(["back", "mask", "tally"], { minLength: 2 }),
  equals: optional(fc.constant("subject.marking")),
  ignore: optional(fc.subarray(["case", "blanks"], { minLength: 1 })),
  consequence: optional(consequence),
});
const dateStep = fc.record({
  step: fc.constant("monthly"),
  kind: fc.constant("in-date"),
  within: fc.constantFrom("P30D", "P10D", "P1M", "P2M"),
  consequence: optional(consequence),
  basis: fc.constant(basis),
});

const order = fc.constantFrom<unknown>("any", { "listed-by": "position" }, { "listed-by": "at" });

/** Drops what was left out, so that the data holds no undefined. */
function tidy(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

const steps = fc
  .tuple(readingStep, fc.array(fc.oneof(confirmStep, holdStep, matchStep, dateStep), { maxLength: 3 }))
  .map(([first, others]) =>
    [first, ...others].filter((step, index, all) => all.findIndex((one) => one.step === step.step) === index),
  );

const check = fc.record({
  order,
  competence: optional(fc.subarray(["wearer", "technician"], { minLength: 1 })),
  consequence: optional(consequence),
  steps,
});

export const policyData = fc
  .record({ check, undecided: optional(fc.constant("as-outside")), division: fc.constantFrom("10 bar", "1 bar") })
  .map(({ check: daily, undecided, division }) =>
    tidy({
      tenbar: 1,
      policy: { id: "generated/one", title: "Generated", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      undecided,
      instruments: { gauge: { quantity: "pressure", division, rounding: "down", range: ["0 bar", "400 bar"] } },
      checks: { daily },
    }),
  );

const pressure = fc.oneof(
  bars,
  bars,
  bars,
  fc.constantFrom<unknown>(null, "290", "many", "55 bar", "900 bar", "4200 psi", { atMost: "10 bar" }),
);
const duration = fc.oneof(
  fc.integer({ min: 0, max: 9 }).map((tens) => `${tens * 10} s`),
  fc.constantFrom<unknown>(null, "1 min"),
);
const marking = fc.constantFrom<unknown>("014", "014", "014", "14", "0 14", "", null);
const common = {
  result: fc.option(fc.constantFrom("satisfactory", "satisfactory", "defect", "not-done", "fine"), {
    nil: undefined,
    freq: 3,
  }),
  defect: fc.option(fc.constantFrom("torn", "other"), { nil: undefined, freq: 2 }),
  at: fc.option(
    fc.integer({ min: 0, max: 5 }).map((minute) => `2026-04-12T07:0${minute}:00Z`),
    { nil: undefined },
  ),
};

const entry = fc.oneof(
  fc.record({
    step: fc.constant("harness"),
    ...common,
    result: fc.constantFrom<unknown>("satisfactory", "satisfactory", "defect", null),
  }),
  fc.record({ step: fc.constant("charge"), reading: pressure, ...common }),
  fc.record({ step: fc.constant("leak"), start: pressure, end: pressure, held: duration, ...common }),
  fc.record({
    step: fc.constant("number"),
    seen: fc.record({ back: marking, mask: marking, tally: marking }),
    ...common,
  }),
  fc.record({
    step: fc.constant("monthly"),
    on: fc.constantFrom<unknown>("2026-04-01", "2026-03-01", "2026-03-20", "2026-05-01", null),
    ...common,
  }),
  fc.record({ step: fc.constant("stranger"), ...common }),
);

const ALL = ["charge", "harness", "leak", "number", "monthly"];

/** Mostly good entries of every step in listed order, with some generated ones among them. */
export const recordData = fc
  .record({
    entries: fc.array(entry, { maxLength: 5 }),
    good: fc.subarray(ALL, { minLength: 2 }),
    fitted: fc.constantFrom<unknown>({ alarm: true }, { alarm: false }, {}, undefined),
    competence: fc.constantFrom<unknown>("wearer", "technician", undefined),
    attested: fc.boolean(),
  })
  .map(({ entries, good, fitted, competence, attested }) =>
    tidy({
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12T07:04:00Z",
      by: { competence },
      subject: { kind: "set", id: "S-014", marking: "014", fitted, cylinders: [{ id: "C", ratedPressure: "300 bar" }] },
      steps: [...good.filter((step) => !entries.some((one) => one.step === step)).map(makeGood), ...entries],
      ...(attested ? { attested: { steps: ["harness"], wording: "all sound", by: "W-231" } } : {}),
    }),
  );

function makeGood(step: string) {
  switch (step) {
    case "charge":
      return { step, reading: "290 bar", at: "2026-04-12T07:00:00Z" };
    case "leak":
      return { step, start: "290 bar", end: "290 bar", held: "90 s", at: "2026-04-12T07:02:00Z" };
    case "number":
      return { step, seen: { back: "014", mask: "014", tally: "014" }, at: "2026-04-12T07:03:00Z" };
    case "monthly":
      return { step, on: "2026-04-10", at: "2026-04-12T07:04:00Z" };
    default:
      return { step, result: "satisfactory", at: "2026-04-12T07:01:00Z" };
  }
}
