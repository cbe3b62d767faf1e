import * as z from "zod";
import {
  basisModel,
  consequenceModel,
  formerlyModel,
  makeConsequenceModel,
  makeTitleModel,
  nameModel,
  nonEmptyTextModel,
  stepLimitModel,
  toleranceUseModel,
} from "./policy-parts.js";

const factReferenceModel = z
  .string()
  .regex(/^(subject\.[A-Za-z][A-Za-z0-9]*|[a-z][a-z0-9]*(-[a-z0-9]+)*)$/)
  .max(100)
  .meta({
    title: "Fact",
    description: "A fact of the record: `subject.marking`, or the name of a fact.",
    examples: ["subject.marking"],
  });

export const dimensionModel = z
  .enum([
    "pressure",
    "duration",
    "length",
    "volume",
    "flow",
    "temperature",
    "temperature-difference",
    "sound-level",
    "mass-concentration",
    "fraction",
    "count",
  ])
  .meta({
    title: "Quantity",
    description:
      "What is measured; it decides which units are understood: `pressure` above ambient (bar, mbar, kPa, MPa, Pa, psi, mmH2O), `duration` (s, min, h), `length` (mm, cm, m), `volume` (L, m3), `flow` (L/min), `temperature` (Cel, K), `temperature-difference` (K), `sound-level` (dB), `mass-concentration` (mg/m3), `fraction` (%, ppm), `count` (a whole number without a unit).",
  });

const commonShape = {
  step: nameModel.meta({ description: "The step's name; records use it. Old names stand under `formerly`." }),
  ask: nonEmptyTextModel
    .optional()
    .meta({ description: "The question as the person at the set reads it. It is the label in a form." }),
  each: factReferenceModel.optional().meta({
    description: "A list of the subject: the step is asked once for each member, `subject.cylinders` for instance.",
  }),
  "when-fitted": nameModel.optional().meta({
    description: "Asked only where the record's `fitted` says true under this name; an absent name is undecided.",
  }),
  after: z.array(nameModel).min(1).optional().meta({ description: "Names of steps that must come before this one." }),
  before: nameModel.optional().meta({
    description:
      "The parent's step in front of which this one is put. Left out, a new step goes last and a replaced one keeps its place.",
  }),
  behind: nameModel.optional().meta({
    description:
      "The parent's step straight after which this one is put. Left out, a new step goes last and a replaced one keeps its place.",
  }),
  consequence: makeConsequenceModel("Left out, that of the tolerance counts, else that of the check, else `withdraw`."),
  instrument: nameModel.optional().meta({
    description: "The instrument of this policy that is read; its division, errors and range then count.",
  }),
  basis: basisModel.optional().meta({ description: "Where the limits written in this step come from." }),
  formerly: formerlyModel.optional(),
};

const confirmModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("confirm").meta({
      description: "`confirm`: somebody looks or tries, and says that it is satisfactory, or which defect there is.",
    }),
    defects: z
      .record(
        nameModel,
        z.strictObject({
          consequence: consequenceModel,
          title: makeTitleModel("The defect as the person at the set picks it from a list."),
        }),
      )
      .optional()
      .meta({ description: "Defects by name that weigh otherwise than the step does." }),
    attestable: z.boolean().optional().meta({
      description: "`true` where one person may vouch in a record for this step together with others.",
    }),
  })
  .meta({ title: "Confirm", description: "A condition or a function is satisfactory." });

const placeModel = z.union([
  nameModel,
  z.strictObject({
    place: nameModel.meta({ description: "The name of the place, `back-plate` or `log-book` for instance." }),
    formerly: formerlyModel,
  }),
]);

const matchModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("match").meta({
      description: "`match`: a number or a text is read off in several places and must be the same everywhere.",
    }),
    places: z
      .array(placeModel)
      .min(1)
      .meta({ description: "The places where the text is read off, `[back-plate, mask, log-book]` for instance." }),
    equals: factReferenceModel
      .optional()
      .meta({ description: "The fact that the text must equal, `subject.marking` for instance." }),
    "differs-from": factReferenceModel
      .optional()
      .meta({ description: "The fact that the text must differ from, such as the number of what was taken off." }),
    ignore: z
      .array(z.enum(["case", "blanks", "hyphens"]))
      .min(1)
      .optional()
      .meta({
        description:
          "What does not count in the comparison: `case` (capital or small), `blanks`, `hyphens`. Leading zeros always count.",
      }),
  })
  .meta({ title: "Match", description: "The same text is found in every place." });

const readingModel = z
  .strictObject({
    ...commonShape,
    kind: z
      .literal("reading")
      .meta({ description: "`reading`: one figure with its unit is read off an instrument and held against limits." }),
    quantity: dimensionModel,
    tolerance: toleranceUseModel.meta({
      description: "What is accepted of the reading: the name of a tolerance of this policy, or limits written here.",
    }),
    apart: stepLimitModel
      .optional()
      .meta({ description: "How far the members' readings may lie apart, highest less lowest; needs `each`." }),
    use: z.enum(["last", "lowest", "highest", "all"]).optional().meta({
      description:
        "Which sample of a trace counts: the `last`, the `lowest`, the `highest`, or `all`. Refused by name in this version, which judges no traces.",
    }),
  })
  .meta({ title: "Reading", description: "A quantity against a tolerance." });

const holdModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("hold").meta({
      description:
        "`hold`: a value is read at the start and at the end of a wait, and the change is held against limits.",
    }),
    quantity: dimensionModel,
    start: stepLimitModel
      .optional()
      .meta({ description: "What the hold must start from to prove anything: `{ at-least: 100 bar }`." }),
    lasting: stepLimitModel.optional().meta({ description: "How long the hold must last: `{ at-least: 60 s }`." }),
    drop: toleranceUseModel.optional().meta({
      description:
        "How far the value may fall over the hold: the name of a tolerance, or limits such as `{ accept: { at-most: 10 bar } }`.",
    }),
    rise: toleranceUseModel.optional().meta({
      description:
        "How far the value may rise over the hold, a suction that is lost for instance: the name of a tolerance, or limits.",
    }),
    change: toleranceUseModel.optional().meta({
      description: "How far the value may move over the hold, up or down: the name of a tolerance, or limits.",
    }),
    temperature: z.enum(["ignored", "required"]).optional().meta({
      description:
        "`ignored` compares start and end as they are read; `required` would refer the end to the temperature of the start, and is refused by name in this version.",
    }),
  })
  .meta({ title: "Hold", description: "A start high enough, a hold long enough, and the change across it." });

const timingModel = z
  .strictObject({
    ...commonShape,
    kind: z
      .literal("timing")
      .meta({ description: "`timing`: the time from one event to another is held against limits." }),
    "from-event": nameModel
      .optional()
      .meta({ description: "The event that starts the time; a record gives its instant under this name." }),
    "to-event": nameModel
      .optional()
      .meta({ description: "The event that ends the time; both events are named, or neither." }),
    tolerance: toleranceUseModel.meta({
      description: "What is accepted of the time: the name of a tolerance of this policy, or limits written here.",
    }),
  })
  .meta({ title: "Timing", description: "The time between two events against a tolerance." });

const inDateModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("in-date").meta({
      description:
        "`in-date`: a date is read off a book or a label, and must not lie too far back, or must not be past.",
    }),
    within: z
      .string()
      .regex(/^P[0-9A-Z]+$/)
      .optional()
      .meta({
        title: "Calendar span",
        description: "ISO 8601 span that the date may lie back: `P30D`, `P1M`, `P5Y`. Never converted to days.",
        examples: ["P30D", "P6M"],
      }),
    "not-past": z
      .literal(true)
      .optional()
      .meta({ description: "`true` where the date is a printed expiry, good up to and including that day." }),
  })
  .meta({ title: "In date", description: "A date read off a book or a label against the record's date." });

export const stepModel = z
  .discriminatedUnion("kind", [confirmModel, matchModel, readingModel, holdModel, timingModel, inDateModel])
  .meta({
    title: "Step",
    description: "One step of a check. `kind` says what is judged.",
    examples: [{ step: "harness", kind: "confirm", ask: "Straps, buckles and back plate are sound" }],
  });
