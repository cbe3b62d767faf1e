import fc from "fast-check";

const basis = { kind: "common-practice" };
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const mostly = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 5 });
const consequence = optional(fc.constantFrom("note", "advise", "refer", "refer", "withdraw", "withdraw", "withdraw"));
const whenFitted = fc.constantFrom(undefined, undefined, "alarm");
const each = optional(fc.constant("subject.cylinders"));
const formerly = fc.constantFrom(undefined, undefined, ["old-name"]);

type Bounds = Readonly<Record<string, unknown>>;

/** A low limit, a high one, or both. */
function accept(lows: readonly Bounds[], highs: readonly Bounds[]): fc.Arbitrary<Bounds> {
  const low = fc.constantFrom(...lows);
  const high = fc.constantFrom(...highs);
  return fc.oneof(
    low,
    high,
    fc.tuple(low, high).map(([one, other]) => ({ ...one, ...other })),
  );
}

const CHARGE = {
  lows: [{ "at-least": "270 bar" }, { above: "90 % of rated-pressure" }, { "at-least": "80 % of rated-pressure" }],
  highs: [{ "at-most": "300 bar" }, { below: "290 bar" }, { "at-most": "100 % of rated-pressure" }],
  cautions: [{ below: "285 bar" }, { below: "95 % of rated-pressure" }, { above: "280 bar" }],
} as const;

export const chargeStep = fc
  .record({
    accept: fc.oneof(accept(CHARGE.lows, CHARGE.highs), fc.constant({ nominal: "280 bar", "plus-minus": "20 bar" })),
    caution: optional(fc.constantFrom(...CHARGE.cautions)),
    toleranceWeight: consequence,
    each,
    apart: optional(fc.constantFrom<Bounds>({ "at-most": "20 bar", consequence: "refer" }, { below: "10 bar" })),
    consequence,
    instrument: fc.constantFrom(undefined, "set-gauge", "dial"),
    "when-fitted": whenFitted,
    formerly,
  })
  .map(({ accept: limits, caution, toleranceWeight, apart, ...rest }) => ({
    step: "charge",
    kind: "reading",
    quantity: "pressure",
    tolerance: { accept: limits, caution, consequence: toleranceWeight },
    apart: rest.each === undefined ? undefined : apart,
    basis,
    ...rest,
  }));

export const harnessStep = fc
  .record({
    consequence,
    "when-fitted": whenFitted,
    attestable: optional(fc.boolean()),
    each,
    defects: mostly(
      fc
        .record({ torn: consequence, soiled: consequence })
        .map((weights) =>
          Object.fromEntries(
            Object.entries(weights).flatMap(([name, weight]) =>
              weight === undefined ? [] : [[name, { consequence: weight }]],
            ),
          ),
        ),
    ),
  })
  .map((own) => ({ step: "harness", kind: "confirm", ...own }));

export const numberStep = fc
  .record({
    consequence,
    "when-fitted": whenFitted,
    places: fc.constantFrom<readonly unknown[]>(
      ["back", "mask"],
      ["back", "mask", "tally"],
      ["back", { place: "mask", formerly: ["face"] }],
    ),
    equals: optional(fc.constant("subject.marking")),
    "differs-from": optional(fc.constant("subject.removed")),
    ignore: optional(fc.subarray(["case", "blanks", "hyphens"], { minLength: 1 })),
  })
  .map((own) => ({ step: "number", kind: "match", ...own }));

export const whistleStep = fc
  .record({ consequence, instrument: fc.constantFrom(undefined, "dial") })
  .map((own) => ({ step: "whistle", kind: "reading", quantity: "pressure", tolerance: "warning", ...own }));

export const mediumStep = fc
  .record({ consequence, each })
  .map((own) => ({ step: "medium", kind: "reading", quantity: "pressure", tolerance: "medium", ...own }));

export const leakStep = fc
  .record({
    name: fc.constantFrom("drop", "change", "rise"),
    accept: fc.constantFrom<Bounds>({ "at-most": "10 bar" }, { below: "10 bar" }, { between: ["0 bar", "5 bar"] }),
    caution: optional(fc.constantFrom({ above: "4 bar" }, { above: "1 % of rated-pressure" })),
    start: optional(fc.constantFrom({ "at-least": "200 bar" }, { above: "80 % of rated-pressure" })),
    lasting: optional(fc.constantFrom({ "at-least": "60 s" }, { above: "50 s" })),
    consequence,
    instrument: fc.constantFrom(undefined, "set-gauge", "dial"),
    "when-fitted": whenFitted,
  })
  .map(({ name, accept: limits, caution, ...rest }) => ({
    step: "leak",
    kind: "hold",
    quantity: "pressure",
    [name]: { accept: limits, caution },
    basis,
    ...rest,
  }));

export const alarmStep = fc
  .record({
    accept: accept([{ "at-least": "20 s" }, { above: "20 s" }], [{ "at-most": "40 s" }, { below: "40 s" }]),
    caution: optional(fc.constant({ above: "35 s" })),
    events: fc.boolean(),
    consequence,
    instrument: fc.constantFrom(undefined, "watch"),
  })
  .map(({ accept: limits, caution, events, ...rest }) => ({
    step: "pre-alarm",
    kind: "timing",
    tolerance: { accept: limits, caution },
    basis,
    ...(events ? { "from-event": "still", "to-event": "sound" } : {}),
    ...rest,
  }));

export const monthlyStep = fc
  .record({ within: fc.constantFrom("P1M", "P30D", "P4W"), consequence })
  .map((own) => ({ step: "monthly", kind: "in-date", basis, ...own }));

export const labelStep = fc
  .record({ consequence, "when-fitted": whenFitted })
  .map((own) => ({ step: "label", kind: "in-date", "not-past": true, basis, ...own }));

const everyKind = fc.tuple(
  mostly(chargeStep),
  mostly(harnessStep),
  mostly(numberStep),
  optional(whistleStep),
  optional(mediumStep),
  mostly(leakStep),
  optional(alarmStep),
  optional(monthlyStep),
  optional(labelStep),
);

/** Why: only in a check of few steps may nothing that matters have been judged. */
const few = fc.oneof(
  fc.tuple(harnessStep),
  fc.tuple(harnessStep),
  fc.tuple(harnessStep, numberStep),
  fc.tuple(chargeStep, harnessStep),
  fc.tuple(leakStep),
);

/** Steps of every kind, some of them left out, and never none; at times one or two. */
export const allSteps = fc
  .oneof({ weight: 4, arbitrary: everyKind }, { weight: 1, arbitrary: few })
  .map((steps): StepParts => {
    const all: readonly (StepParts[number] | undefined)[] = steps;
    const given = all.filter((step) => step !== undefined);
    return given.length === 0 ? [{ step: "harness", kind: "confirm" }] : given;
  });

export type StepParts = readonly { readonly step: string; readonly kind: string }[];
