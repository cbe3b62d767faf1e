import * as z from "zod";
import {
  basisModel,
  consequenceModel,
  formerlyModel,
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
  .meta({ title: "Quantity", description: "What is measured; it decides which units are understood." });

const commonShape = {
  step: nameModel.meta({ description: "The step's name; records use it." }),
  ask: nonEmptyTextModel.optional().meta({ description: "The question as the person at the set reads it." }),
  each: factReferenceModel.optional().meta({
    description: "A list of the subject: the step is asked once for each member, `subject.cylinders` for instance.",
  }),
  "when-fitted": nameModel.optional().meta({
    description: "Asked only where the record's `fitted` says true under this name; an absent name is undecided.",
  }),
  after: z.array(nameModel).min(1).optional().meta({ description: "Steps that must come before this one." }),
  before: nameModel.optional().meta({ description: "Where a step that replaces or joins a parent's steps is put." }),
  behind: nameModel.optional().meta({ description: "Where a step that replaces or joins a parent's steps is put." }),
  consequence: consequenceModel.optional(),
  instrument: nameModel.optional().meta({ description: "The instrument of this policy that is read." }),
  basis: basisModel.optional().meta({ description: "Where the limits written in this step come from." }),
  formerly: formerlyModel.optional(),
};

const confirmModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("confirm"),
    defects: z
      .record(nameModel, z.strictObject({ consequence: consequenceModel, title: nonEmptyTextModel.optional() }))
      .optional()
      .meta({ description: "Defects that weigh otherwise than the step does." }),
    attestable: z.boolean().optional().meta({ description: "A record may attest this step together with others." }),
  })
  .meta({ title: "Confirm", description: "A condition or a function is satisfactory." });

const placeModel = z.union([nameModel, z.strictObject({ place: nameModel, formerly: formerlyModel })]);

const matchModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("match"),
    places: z.array(placeModel).min(1).meta({ description: "Where the text is read off." }),
    equals: factReferenceModel.optional().meta({ description: "The fact that the text must equal." }),
    "differs-from": factReferenceModel.optional().meta({ description: "The fact that the text must differ from." }),
    ignore: z
      .array(z.enum(["case", "blanks", "hyphens"]))
      .min(1)
      .optional()
      .meta({ description: "What does not count in the comparison. Leading zeros always count." }),
  })
  .meta({ title: "Match", description: "The same text is found in every place." });

const readingModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("reading"),
    quantity: dimensionModel,
    tolerance: toleranceUseModel,
    apart: stepLimitModel
      .optional()
      .meta({ description: "How far the members' readings may lie apart; needs `each`." }),
    use: z
      .enum(["last", "lowest", "highest", "all"])
      .optional()
      .meta({ description: "Which sample of a trace counts." }),
  })
  .meta({ title: "Reading", description: "A quantity against a tolerance." });

const holdModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("hold"),
    quantity: dimensionModel,
    start: stepLimitModel.optional().meta({ description: "What the hold must start from to prove anything." }),
    lasting: stepLimitModel.optional().meta({ description: "How long the hold must last." }),
    drop: toleranceUseModel.optional().meta({ description: "How far the value may fall over the hold." }),
    rise: toleranceUseModel.optional().meta({ description: "How far the value may rise over the hold." }),
    change: toleranceUseModel.optional().meta({ description: "How far the value may move over the hold, either way." }),
    temperature: z.enum(["ignored", "required"]).optional().meta({
      description: "`required` refers the end of the hold to the start's temperature.",
    }),
  })
  .meta({ title: "Hold", description: "A start high enough, a hold long enough, and the change across it." });

const timingModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("timing"),
    "from-event": nameModel.optional().meta({ description: "The event that starts the time." }),
    "to-event": nameModel.optional().meta({ description: "The event that ends the time." }),
    tolerance: toleranceUseModel,
  })
  .meta({ title: "Timing", description: "The time between two events against a tolerance." });

const inDateModel = z
  .strictObject({
    ...commonShape,
    kind: z.literal("in-date"),
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
      .meta({ description: "The date is a printed expiry that must not have passed." }),
  })
  .meta({ title: "In date", description: "A date read off a book or a label against the record's date." });

export const stepModel = z
  .discriminatedUnion("kind", [confirmModel, matchModel, readingModel, holdModel, timingModel, inDateModel])
  .meta({
    title: "Step",
    description: "One step of a check. `kind` says what is judged.",
    examples: [{ step: "harness", kind: "confirm", ask: "Straps, buckles and back plate are sound" }],
  });
