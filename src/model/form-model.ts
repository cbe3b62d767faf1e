import * as z from "zod";
import { CONSEQUENCES, NOT_APPLICABLE_REASONS, REQUIREMENTS, STEP_KINDS, UNDECIDED_REASONS } from "../terms/index.js";
import { dimensionModel } from "./policy-steps.js";

const namesModel = z.array(z.string());
const keyModel = z.string().meta({ description: "The key of the record step that the answer goes under." });

const fieldModel = z
  .discriminatedUnion("type", [
    z.strictObject({ key: keyModel, type: z.literal("choice"), words: namesModel }).meta({ title: "Choice" }),
    z.strictObject({ key: keyModel, type: z.literal("text") }).meta({ title: "Free text" }),
    z.strictObject({ key: keyModel, type: z.literal("flag") }).meta({ title: "Yes or no" }),
    z.strictObject({ key: keyModel, type: z.literal("date") }).meta({ title: "Day or month" }),
    z
      .strictObject({ key: keyModel, type: z.literal("quantity"), quantity: dimensionModel, units: namesModel })
      .meta({ title: "Number with a unit", description: "The usual unit first." }),
    z.strictObject({ key: keyModel, type: z.literal("places"), places: namesModel }).meta({ title: "Text by place" }),
    z
      .strictObject({ key: keyModel, type: z.literal("events"), events: namesModel })
      .meta({ title: "Instant by event" }),
  ])
  .meta({ title: "Field" });

const limitModel = z
  .strictObject({
    requirement: z.enum(REQUIREMENTS),
    consequence: z.enum(CONSEQUENCES),
    accept: z.string().optional().meta({ description: "In words; absent where the subject does not tell." }),
    reason: z.enum(UNDECIDED_REASONS).optional().meta({ description: "Why the limit cannot be told." }),
  })
  .meta({ title: "Limit in words" });

const askedModel = z
  .strictObject({
    part: z.string().optional().meta({ description: "The member, where the step is asked of each." }),
    limits: z.array(limitModel),
  })
  .meta({ title: "What is asked" });

const formStepModel = z
  .strictObject({
    step: z.string(),
    kind: z.enum(STEP_KINDS),
    ask: z.string().optional().meta({ description: "The question." }),
    applies: z.enum(["yes", "no", "open"]).meta({ description: "`open` where the subject does not tell." }),
    reason: z.enum([...UNDECIDED_REASONS, ...NOT_APPLICABLE_REASONS]).optional(),
    after: namesModel,
    attestable: z.boolean(),
    instrument: z
      .strictObject({ name: z.string(), oneOf: namesModel.optional(), division: z.string().optional() })
      .optional(),
    defects: z.array(z.strictObject({ name: z.string(), title: z.string().optional() })),
    fields: z.array(fieldModel),
    asked: z.array(askedModel).meta({ description: "Once, or once for each member." }),
  })
  .meta({ title: "Step of a form" });

export const formModel = z
  .strictObject({
    tenbar: z.literal(1),
    kind: z.literal("form"),
    policy: z.strictObject({ id: z.string(), version: z.string(), digest: z.string() }),
    check: z.string(),
    title: z.string().optional(),
    subject: z.string().optional().meta({ description: "The kind of subject that is checked." }),
    competence: namesModel.meta({ description: "Who may carry it out; empty where anyone may." }),
    order: z.enum(["any", "position", "at"]),
    steps: z.array(formStepModel),
    cautions: namesModel,
    deference: z.string(),
  })
  .meta({ title: "tenbar form", description: "The steps of one check for one subject: enough to build a form from." });

export type Form = z.infer<typeof formModel>;
