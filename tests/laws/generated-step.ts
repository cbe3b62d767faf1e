import fc from "fast-check";

export type Data = Readonly<Record<string, unknown>>;

/** One step of a policy and, for a set with the cylinders C-1 and C-2, what a record says where all is well. */
export interface GeneratedStep {
  readonly step: Data;
  readonly entries: readonly Data[];
}

export const CYLINDERS = ["C-1", "C-2"] as const;
export const RATED_BAR = 300;

const basis = { kind: "common-practice" };
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const consequence = optional(fc.constantFrom("note", "advise", "refer", "withdraw"));
const weighty = optional(fc.constantFrom("refer", "withdraw"));
const whenFitted = optional(fc.constant("alarm"));
const tens = (least: number, most: number) => fc.integer({ min: least / 10, max: most / 10 }).map((ten) => ten * 10);

/** Limits that a value of so many bars, seconds or the like meets. */
function acceptAround(value: number, unit: string): fc.Arbitrary<Data> {
  const text = (number: number) => `${number} ${unit}`;
  return fc
    .tuple(tens(0, 40), tens(0, 40))
    .chain(([below, above]) =>
      fc.constantFrom<Data>(
        { "at-least": text(value - below) },
        { "at-most": text(value + above) },
        { above: text(value - below - 10) },
        { below: text(value + above + 10) },
        { between: [text(value - below), text(value + above)] },
        { nominal: text(value), "plus-minus": text(above) },
      ),
    );
}

/** Limits with, at times, a caution band next to the limit that holds everything or nothing of what is accepted. */
function toleranceAround(value: number, unit: string): fc.Arbitrary<Data> {
  return fc.tuple(acceptAround(value, unit), fc.boolean(), consequence).map(([accept, cautioned, own]) => ({
    accept,
    caution: cautioned ? { "at-least": `${value} ${unit}` } : undefined,
    consequence: own,
  }));
}

export const confirmStep = fc
  .record({ consequence, "when-fitted": whenFitted, defects: optional(fc.constant({ torn: { consequence: "note" } })) })
  .map((own) => ({
    step: { step: "harness", kind: "confirm", ...own },
    entries: [{ step: "harness", result: "satisfactory" }],
  }));

/** A step that is not asked, for the set has no lamp. */
export const unfittedStep: GeneratedStep = {
  step: { step: "lamp", kind: "confirm", "when-fitted": "lamp" },
  entries: [],
};

export const matchStep = fc
  .record({
    consequence,
    "when-fitted": whenFitted,
    places: fc.subarray(["back", "mask", "tally"], { minLength: 2 }),
    equals: optional(fc.constant("subject.marking")),
  })
  .map((own) => ({
    step: { step: "number", kind: "match", ...own },
    entries: [{ step: "number", seen: Object.fromEntries(own.places.map((place) => [place, "014"])) }],
  }));

/** A reading whose failure always weighs `refer` or more, so that a check with it can be met. */
export const chargeStep = fc
  .record({ value: tens(250, 300), each: fc.boolean(), own: weighty, apart: fc.boolean(), gauge: fc.boolean() })
  .chain(({ value, each, own, apart, gauge }) =>
    fc
      .oneof(
        acceptAround(value, "bar"),
        fc.integer({ min: 60, max: 80 }).map((share) => ({ "at-least": `${share} % of rated-pressure` })),
      )
      .map((accept) => ({
        step: {
          step: "charge",
          kind: "reading",
          quantity: "pressure",
          tolerance: { accept },
          consequence: own,
          each: each ? "subject.cylinders" : undefined,
          apart: each && apart ? { "at-most": "20 bar", consequence: "refer" } : undefined,
          instrument: gauge ? "set-gauge" : undefined,
          basis,
        },
        entries: (each ? CYLINDERS : [undefined]).map((of) => ({
          step: "charge",
          of,
          reading: `${value} bar`,
          instrument: gauge ? "dial" : undefined,
        })),
      })),
  );

/** A reading by a tolerance with cases that depend on the subject's role. */
export const whistleStep = fc.record({ value: tens(50, 80), consequence }).map(({ value, consequence: own }) => ({
  step: { step: "whistle", kind: "reading", quantity: "pressure", tolerance: "warning", consequence: own },
  entries: [{ step: "whistle", reading: `${value} bar` }],
}));

export const holdStep = fc
  .record({ from: tens(150, 300), drop: fc.integer({ min: 0, max: 9 }), held: tens(60, 90), own: consequence })
  .chain(({ from, drop, held, own }) =>
    fc
      .record({
        name: fc.constantFrom("drop", "change"),
        tolerance: toleranceAround(drop, "bar"),
        start: optional(fc.constant({ "at-least": "100 bar" })),
        lasting: optional(fc.constant({ "at-least": "60 s" })),
        "when-fitted": whenFitted,
      })
      .map(({ name, tolerance, ...rest }) => ({
        step: { step: "leak", kind: "hold", quantity: "pressure", [name]: tolerance, consequence: own, basis, ...rest },
        entries: [{ step: "leak", start: `${from} bar`, end: `${from - drop} bar`, held: `${held} s` }],
      })),
  );

export const timingStep = fc
  .record({ seconds: tens(20, 50), events: fc.boolean(), own: consequence })
  .chain(({ seconds, events, own }) =>
    toleranceAround(seconds, "s").map((tolerance) => ({
      step: {
        step: "pre-alarm",
        kind: "timing",
        tolerance,
        consequence: own,
        basis,
        ...(events ? { "from-event": "still", "to-event": "sound" } : {}),
      },
      entries: [
        events
          ? {
              step: "pre-alarm",
              events: { still: "2026-04-12T07:00:00Z", sound: `2026-04-12T07:00:${seconds}Z` },
            }
          : { step: "pre-alarm", elapsed: `${seconds} s` },
      ],
    })),
  );

export const dateStep = fc
  .record({ within: fc.constantFrom("P30D", "P1M", "P2M"), consequence })
  .map(({ within, consequence: own }) => ({
    step: { step: "monthly", kind: "in-date", within, consequence: own, basis },
    entries: [{ step: "monthly", on: "2026-04-01" }],
  }));
