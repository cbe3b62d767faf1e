import * as z from "zod";
import { CONSEQUENCES, PLAN_FORMAT, REQUIREMENTS } from "../terms/index.js";
import { basisModel } from "./policy-parts.js";
import { dimensionModel } from "./policy-steps.js";

const namesModel = z.array(z.string());
const consequenceModel = z.enum(CONSEQUENCES);

/** `limit` is a quantity, a count, or `N % of FACT`, exactly as the policy states it. */
const boundPlanModel = z.strictObject({
  kind: z.enum(["at-least", "at-most", "above", "below"]),
  limit: z.union([z.string(), z.int()]),
});

const scopePlanModel = z.record(z.string(), namesModel);

/** All bounds of `accept` hold; `caution` is a list of regions, each of which is the conjunction of its bounds. */
const bandPlanModel = z.strictObject({
  for: scopePlanModel.optional(),
  upTo: z.union([z.string(), z.int()]).optional(),
  accept: z.array(boundPlanModel).min(1),
  caution: z.array(z.array(boundPlanModel).min(1)),
});

const tolerancePlanModel = z.strictObject({
  name: z.string().optional(),
  quantity: dimensionModel,
  by: z.string().optional(),
  byQuantity: dimensionModel.optional(),
  bands: z.array(bandPlanModel).min(1),
  comparison: z.enum(["as-read", "guarded"]),
  confidence: z.string().optional(),
  trust: z.literal("corrected").optional(),
});

const requirementPlanModel = z.strictObject({
  name: z.enum(REQUIREMENTS),
  consequence: consequenceModel,
  tolerance: tolerancePlanModel.optional(),
  basis: basisModel.optional(),
});

const commonShape = {
  step: z.string(),
  formerly: namesModel,
  ask: z.string().optional(),
  each: z.string().optional(),
  whenFitted: z.string().optional(),
  after: namesModel,
  instrument: z.string().optional(),
  requirements: z.array(requirementPlanModel).min(1),
};

const stepPlanModel = z.discriminatedUnion("kind", [
  z.strictObject({
    ...commonShape,
    kind: z.literal("confirm"),
    defects: z.array(z.strictObject({ name: z.string(), title: z.string().optional(), consequence: consequenceModel })),
    attestable: z.boolean(),
  }),
  z.strictObject({
    ...commonShape,
    kind: z.literal("match"),
    places: z.array(z.strictObject({ place: z.string(), formerly: namesModel })).min(1),
    equals: z.string().optional(),
    differsFrom: z.string().optional(),
    ignore: z.array(z.enum(["case", "blanks", "hyphens"])),
  }),
  z.strictObject({
    ...commonShape,
    kind: z.literal("reading"),
    quantity: dimensionModel,
    use: z.enum(["last", "lowest", "highest", "all"]).optional(),
  }),
  z.strictObject({
    ...commonShape,
    kind: z.literal("hold"),
    quantity: dimensionModel,
    temperature: z.enum(["ignored", "required"]),
  }),
  z.strictObject({
    ...commonShape,
    kind: z.literal("timing"),
    fromEvent: z.string().optional(),
    toEvent: z.string().optional(),
  }),
  z.strictObject({
    ...commonShape,
    kind: z.literal("in-date"),
    within: z.string().optional(),
    notPast: z.boolean(),
  }),
]);

const factPlanModel = z
  .strictObject({
    name: z.string(),
    at: z.string().meta({ description: "JSON Pointer, from the record or from each member of `each`." }),
    each: z.string().optional(),
    take: z.enum(["only", "lowest", "highest"]),
    kind: z.enum(["text", "flag", "date", "quantity"]),
    words: namesModel.optional(),
    quantity: dimensionModel.optional(),
  })
  .meta({ title: "Planned fact" });

const intervalShape = {
  interval: z.string(),
  of: z.string(),
  for: scopePlanModel.optional(),
  every: z.string(),
  counted: z.enum(["from-last", "from-first"]),
  date: z.string(),
  forbids: z.enum(["fill", "use"]).optional(),
  requirement: requirementPlanModel,
};

/** When an adoption applies, and under which order. */
const standingShape = {
  id: z.string(),
  only: scopePlanModel.optional(),
  from: z.string(),
  until: z.string().optional(),
  order: z.string(),
};

const generationModel = z.int().min(1).optional().meta({
  description: "How many policies above it has that which states the departure; absent where it covers none.",
});

const intervalAdoptionModel = z
  .strictObject({
    ...standingShape,
    generation: generationModel,
    otherwise: z.strictObject(intervalShape).optional().meta({
      description: "The parent's interval, which is judged while the adoption does not apply.",
    }),
  })
  .meta({ title: "Planned adoption of an interval" });

const intervalPlanModel = z
  .strictObject({ ...intervalShape, adoptions: z.array(intervalAdoptionModel) })
  .meta({ title: "Planned interval" });

const rulePlanModel = z
  .strictObject({
    rule: z.string(),
    title: z.string().optional(),
    for: scopePlanModel.optional(),
    when: z.unknown().optional().meta({ description: "A compiled rule term." }),
    require: z.unknown().meta({ description: "A compiled rule term." }),
    requirement: requirementPlanModel,
  })
  .meta({ title: "Planned rule" });

const adoptionPlanModel = z
  .strictObject({
    ...standingShape,
    step: z.string(),
    requirements: namesModel.optional().meta({ description: "Of the step; all of them where absent." }),
    accept: z.array(boundPlanModel).min(1).optional(),
    instead: z.string().optional(),
    generation: generationModel,
    otherwise: stepPlanModel.optional().meta({
      description: "The parent's step, which is judged while the adoption does not apply.",
    }),
  })
  .meta({ title: "Planned adoption", description: "A departure of one step of one check, while it is in force." });

const instrumentPlanModel = z.strictObject({
  name: z.string(),
  quantity: dimensionModel.optional(),
  division: z.string().optional(),
  rounding: z.enum(["down", "up", "nearest"]),
  maxError: z.string().optional(),
  errors: z.enum(["independent", "shared"]),
  range: z.array(z.string()).length(2).optional(),
  oneOf: namesModel.optional(),
});

const checkPlanModel = z.strictObject({
  check: z.string(),
  title: z.string().optional(),
  formerly: namesModel,
  for: scopePlanModel.optional(),
  subject: z.strictObject({ kind: z.string(), formerly: namesModel }).optional(),
  competence: namesModel.optional(),
  order: z.enum(["any", "position", "at"]),
  steps: z.array(stepPlanModel).min(1),
  intervals: z.array(intervalPlanModel),
  rules: z.array(rulePlanModel),
  adoptions: z.array(adoptionPlanModel),
});

const spotModel = z.tuple([z.int(), z.int(), z.int()]).meta({ description: "File number, line, column." });

export const planModel = z
  .strictObject({
    tenbar: z.literal(1),
    kind: z.literal("plan"),
    format: z.literal(PLAN_FORMAT),
    digest: z
      .string()
      .meta({ description: "SHA-256 over the RFC 8785 form of this plan without `digest` and `positions`." }),
    policy: z.strictObject({
      id: z.string(),
      title: z.string(),
      version: z.string(),
      issuer: z.string().optional(),
      status: z.enum(["common-practice", "local", "draft"]),
      effective: z
        .strictObject({ from: z.string().optional(), to: z.string().optional(), review: z.string().optional() })
        .optional(),
    }),
    deference: z.string(),
    cautions: namesModel,
    gaps: z.enum(["as-outside", "at-most-refer"]).meta({ description: "What an undecided requirement weighs." }),
    for: scopePlanModel.optional(),
    facts: z.array(factPlanModel),
    instruments: z.array(instrumentPlanModel),
    checks: z.array(checkPlanModel).min(1),
    positions: z.strictObject({
      files: z.array(z.string()),
      at: z.record(z.string(), z.strictObject({ where: spotModel, limitAt: spotModel.optional() })),
    }),
  })
  .meta({ title: "tenbar plan", description: "A compiled policy as plain data: what judging needs and nothing else." });

export type Plan = z.infer<typeof planModel>;
export type AdoptionPlan = z.infer<typeof adoptionPlanModel>;
export type AdoptionStanding = Pick<AdoptionPlan, "id" | "only" | "from" | "until" | "order">;

/** An adoption of what a policy states looser than its parent: what it names, when it applies, and where it is written. */
export interface Covering extends AdoptionStanding {
  readonly step?: string;
  readonly requirement?: string;
  readonly tolerance?: string;
  readonly interval?: string;
  readonly pointer: string;
}

export type FactPlan = z.infer<typeof factPlanModel>;
export type IntervalPlan = z.infer<typeof intervalPlanModel>;
export type RulePlan = z.infer<typeof rulePlanModel>;
export type CheckPlan = z.infer<typeof checkPlanModel>;
export type StepPlan = z.infer<typeof stepPlanModel>;
export type StepPlanOf<K extends StepPlan["kind"]> = Extract<StepPlan, { kind: K }>;
export type RequirementPlan = z.infer<typeof requirementPlanModel>;
export type TolerancePlan = z.infer<typeof tolerancePlanModel>;
export type BandPlan = z.infer<typeof bandPlanModel>;
export type BoundPlan = z.infer<typeof boundPlanModel>;
export type InstrumentPlan = z.infer<typeof instrumentPlanModel>;
export type ScopePlan = z.infer<typeof scopePlanModel>;
