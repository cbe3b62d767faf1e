import * as z from "zod";
import {
  basisModel,
  boundsModel,
  consequenceModel,
  formerlyModel,
  nameModel,
  nonEmptyTextModel,
  quantityTextModel,
  scopeModel,
  toleranceModel,
} from "./policy-parts.js";
import { dimensionModel, stepModel } from "./policy-steps.js";

const dateTextModel = z
  .string()
  .regex(/^[0-9]{4}-[0-9]{2}(-[0-9]{2})?$/)
  .meta({ title: "Date", description: "Year-month-day, `2026-04-01`.", examples: ["2026-04-01"] });

const pointerModel = z
  .string()
  .regex(/^(\/([^/~]|~0|~1)+)+$/)
  .max(200)
  .meta({ title: "JSON Pointer", description: "Where the fact stands in a record.", examples: ["/subject/role"] });

const headModel = z
  .strictObject({
    id: z
      .string()
      .regex(/^[a-z0-9]+(-[a-z0-9]+)*(\/[a-z0-9]+(-[a-z0-9]+)*)*$/)
      .max(200)
      .meta({ description: "Lower-case words, hyphens and slashes.", examples: ["lowmere/open-circuit"] }),
    title: nonEmptyTextModel,
    version: z
      .string()
      .min(1)
      .max(100)
      .meta({ description: "Always in quotes.", examples: ["2026.1"] }),
    issuer: nonEmptyTextModel.optional(),
    status: z.enum(["common-practice", "local", "draft"]).meta({
      description:
        "`common-practice` for shipped defaults, `local` for a brigade's own order, `draft` for work in hand.",
    }),
    effective: z
      .strictObject({ from: dateTextModel.optional(), to: dateTextModel.optional(), review: dateTextModel.optional() })
      .optional()
      .meta({ description: "First and last day in force, and the day by which it is reviewed." }),
  })
  .meta({ title: "About the policy", description: "Who issues it, which version, and when it is in force." });

const factModel = z
  .strictObject({
    at: pointerModel,
    "one-of": z.array(z.string().min(1)).min(1).optional().meta({ description: "The values that the fact may have." }),
    quantity: dimensionModel.optional(),
    value: z.enum(["text", "flag", "date"]).optional().meta({ description: "What kind of value the fact has." }),
    each: pointerModel.optional().meta({ description: "A list in the record; `at` is then read in every member." }),
    take: z.enum(["only", "lowest", "highest"]).optional().meta({ description: "Which member's value counts." }),
  })
  .meta({
    title: "Fact",
    description:
      "What the policy may ask of a record's subject, station or local fields. One of `one-of`, `quantity` or `value`.",
    examples: [{ at: "/subject/role", "one-of": ["front-line", "spare", "training"] }],
  });

const instrumentModel = z
  .strictObject({
    quantity: dimensionModel.optional(),
    division: quantityTextModel.optional().meta({ description: "The smallest step that is read off." }),
    rounding: z
      .enum(["down", "up", "nearest"])
      .optional()
      .meta({ description: "How a reading between two divisions is taken." }),
    "max-error": quantityTextModel
      .optional()
      .meta({ description: "Largest error of the instrument itself. Not stated is unknown; 0 must be meant." }),
    errors: z.enum(["independent", "shared"]).optional().meta({
      description: "`shared` makes one gauge's error cancel in a drop.",
    }),
    range: z
      .array(quantityTextModel)
      .length(2)
      .optional()
      .meta({ description: "Lowest and highest value that it can show." }),
    "one-of": z.array(nameModel).min(1).optional().meta({
      description: "Instead of the rest: one of these instruments; the record says which one was read.",
    }),
  })
  .meta({
    title: "Instrument",
    description: "What a reading of it leaves open: division, rounding, largest error, range.",
    minProperties: 1,
    examples: [{ quantity: "pressure", division: "10 bar", rounding: "down", range: ["0 bar", "400 bar"] }],
  });

const checkModel = z
  .strictObject({
    title: nonEmptyTextModel.optional(),
    for: scopeModel.optional(),
    subject: z
      .union([nameModel, z.strictObject({ kind: nameModel, formerly: formerlyModel })])
      .optional()
      .meta({
        description: "The kind of subject that is checked: `set`, `mask`, `cylinder` and so on.",
      }),
    competence: z
      .union([nameModel, z.array(nameModel).min(1)])
      .optional()
      .meta({
        description: "Who may carry the check out; compared exactly.",
      }),
    consequence: consequenceModel.optional().meta({ description: "The consequence of steps that state none." }),
    intervals: z.array(nameModel).min(1).optional().meta({ description: "Intervals that this check judges too." }),
    order: z
      .union([z.literal("any"), z.strictObject({ "listed-by": z.enum(["position", "at"]) })])
      .optional()
      .meta({
        description:
          "`any`, or `listed-by: position` (of the record's steps) or `listed-by: at` (their instants). There is no default.",
      }),
    steps: z.array(stepModel).min(1).max(10_000).optional(),
    without: z.array(nameModel).min(1).optional().meta({ description: "The parent's steps that fall away." }),
    formerly: formerlyModel.optional(),
  })
  .meta({ title: "Check", description: "A sequence of steps that a person goes through." });

const intervalModel = z
  .strictObject({
    title: nonEmptyTextModel.optional(),
    of: nameModel.meta({ description: "The kind of thing that falls due: `set`, `cylinder`, `mask`." }),
    for: scopeModel.optional(),
    every: z
      .string()
      .regex(/^P[0-9A-Z]+$/)
      .meta({ description: "ISO 8601 span.", examples: ["P5Y", "P1M"] }),
    counted: z.enum(["from-last", "from-first"]),
    date: z
      .string()
      .regex(/^[A-Za-z][A-Za-z0-9]*$/)
      .meta({ description: "The record field that holds the date.", examples: ["requalifiedOn"] }),
    forbids: z
      .enum(["fill", "use"])
      .optional()
      .meta({ description: "What may not be done once it is overdue; printed, never judged." }),
    consequence: consequenceModel.optional(),
    basis: basisModel,
  })
  .meta({ title: "Interval", description: "Something that falls due." });

/** JsonLogic notation; its grammar is read by the rules, not by this schema. */
const ruleTermModel: z.ZodType = z.json().meta({ title: "Rule term", description: "JsonLogic notation." });

const ruleModel = z
  .strictObject({
    rule: nameModel,
    title: nonEmptyTextModel.optional(),
    checks: z.array(nameModel).min(1).optional(),
    for: scopeModel.optional(),
    when: ruleTermModel.optional(),
    require: ruleTermModel,
    consequence: consequenceModel.optional(),
    basis: basisModel,
  })
  .meta({ title: "Rule", description: "What the step kinds cannot say." });

const adoptionModel = z
  .strictObject({
    id: nameModel,
    step: z
      .string()
      .regex(/^[a-z0-9-]+\/[a-z0-9-]+$/)
      .optional()
      .meta({ description: "`check/step`." }),
    requirement: nameModel.optional(),
    tolerance: nameModel.optional(),
    interval: nameModel.optional(),
    accept: boundsModel.optional(),
    instead: z
      .string()
      .regex(/^[a-z0-9-]+\/[a-z0-9-]+$/)
      .optional(),
    omit: z.literal(true).optional(),
    only: scopeModel.optional(),
    from: dateTextModel,
    until: dateTextModel.optional(),
    review: dateTextModel.optional(),
    order: nonEmptyTextModel,
    by: nonEmptyTextModel,
    reason: nonEmptyTextModel,
  })
  .meta({ title: "Adoption", description: "An open departure, under an order, with its dates." });

export const policyModel = z
  .strictObject({
    tenbar: z.literal(1).meta({ description: "The version of the policy language." }),
    policy: headModel,
    extends: z
      .string()
      .min(1)
      .max(300)
      .optional()
      .meta({
        description: "A shipped policy pinned to its major version, or another file.",
        examples: ["common-practice/open-circuit@1", "./brigade.yaml"],
      }),
    deference: nonEmptyTextModel.optional().meta({
      description: "The sentence that every assessment carries: what stands above this policy.",
    }),
    cautions: z.array(nonEmptyTextModel).min(1).optional().meta({
      description: "What a reader must know before using the policy; printed with it.",
    }),
    undecided: z.literal("as-outside").optional().meta({
      description: "Make every gap weigh what a failure weighs.",
    }),
    for: scopeModel.optional(),
    facts: z.record(nameModel, factModel).optional(),
    instruments: z.record(nameModel, instrumentModel).optional(),
    tolerances: z.record(nameModel, toleranceModel).optional(),
    checks: z.record(nameModel, checkModel).optional(),
    without: z.array(nameModel).min(1).optional().meta({ description: "The parent's checks that fall away." }),
    intervals: z.record(nameModel, intervalModel).optional(),
    rules: z.array(ruleModel).optional(),
    adopted: z.array(adoptionModel).optional(),
  })
  .meta({
    title: "tenbar policy",
    description: "A brigade's tolerances and check sequences for breathing apparatus.",
  });
export type PolicyDocument = z.infer<typeof policyModel>;
export type PolicyStep = z.infer<typeof stepModel>;
export type PolicyTolerance = z.infer<typeof toleranceModel>;
export type PolicyBounds = z.infer<typeof boundsModel>;
