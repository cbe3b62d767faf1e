import * as z from "zod";
import {
  CONSEQUENCES,
  NOT_APPLICABLE_REASONS,
  OUTCOMES,
  REQUIREMENTS,
  UNDECIDED_REASONS,
  VERDICTS,
} from "../terms/index.js";
import { basisModel } from "./policy-parts.js";

const consequenceModel = z.enum(CONSEQUENCES);
const reasonModel = z.enum([...UNDECIDED_REASONS, ...NOT_APPLICABLE_REASONS]);
const positionModel = z
  .strictObject({ file: z.string(), line: z.int().positive(), column: z.int().positive() })
  .meta({ title: "Place in a policy", description: "Line and column from 1; columns count UTF-16 units." });
const spanModel = z.strictObject({ from: z.string(), to: z.string(), ends: z.enum(["[]", "[)", "(]", "()"]) }).meta({
  title: "Span",
  description:
    "Where the true value lies as far as division, rounding and stated largest error tell: `[` and `]` include an end.",
});

const resultModel = z
  .strictObject({
    step: z.string().optional().meta({ description: "Absent where the check itself asks: order, competence." }),
    part: z.string().optional().meta({ description: "The member, where a step is asked of each." }),
    interval: z.string().optional().meta({ description: "The interval, where something falls due." }),
    rule: z.string().optional().meta({ description: "The rule, where a rule asks." }),
    requirement: z.enum(REQUIREMENTS),
    outcome: z.enum(OUTCOMES),
    reason: reasonModel.optional().meta({ description: "Given where undecided or not applicable." }),
    consequence: consequenceModel.meta({ description: "What failing this requirement weighs." }),
    observed: z.string().optional(),
    span: spanModel.optional(),
    accept: z.string().optional(),
    margin: z
      .string()
      .optional()
      .meta({ description: "Distance to the nearest limit, in the reading's unit; negative outside." }),
    confidence: z
      .number()
      .min(0)
      .max(1)
      .optional()
      .meta({ description: "Probability that it conforms, cut to 4 decimals." }),
    without: z
      .enum(OUTCOMES)
      .optional()
      .meta({ description: "What the outcome would have been without the adoption." }),
    adopted: z.string().optional().meta({ description: "The adoption that applied." }),
    evidence: z.literal("attested").optional(),
    pointers: z.array(z.string()).meta({ description: "JSON Pointers into the record." }),
  })
  .meta({ title: "Result", description: "One requirement and what became of it." });

const findingModel = z
  .strictObject({
    code: z.string(),
    step: z.string().optional(),
    part: z.string().optional(),
    interval: z.string().optional(),
    rule: z.string().optional(),
    requirement: z.enum(REQUIREMENTS).optional(),
    outcome: z.enum(["caution", "outside", "undecided"]).optional().meta({ description: "Absent on a remark." }),
    reason: reasonModel.optional(),
    consequence: consequenceModel.meta({ description: "What this finding weighs." }),
    pointer: z.string(),
    where: positionModel.optional(),
    limitAt: positionModel.optional(),
    params: z.record(z.string(), z.string()),
    basis: basisModel.optional(),
    message: z.string(),
    fingerprint: z.string().meta({ description: "The same for the same defect on another day." }),
  })
  .meta({ title: "Finding", description: "What is not within, worst first; or a remark on the record." });

export const assessmentModel = z
  .strictObject({
    tenbar: z.literal(1),
    kind: z.literal("assessment"),
    recordId: z.string().nullable(),
    check: z.string().nullable(),
    subject: z.string().nullable(),
    judged: z.boolean(),
    verdict: z.enum(VERDICTS).nullable().meta({ description: "Null only while a form is half filled." }),
    policy: z.strictObject({ id: z.string(), version: z.string(), digest: z.string() }),
    engine: z.string(),
    counts: z.strictObject({
      within: z.int(),
      caution: z.int(),
      outside: z.int(),
      undecided: z.int(),
      notApplicable: z.int(),
    }),
    results: z.array(resultModel),
    findings: z.array(findingModel),
    problems: z
      .array(z.strictObject({ pointer: z.string(), message: z.string() }))
      .optional()
      .meta({
        description: "Why the record could not be judged at all.",
      }),
    recordDigest: z.string().nullable().optional(),
    deference: z.string(),
  })
  .meta({ title: "tenbar assessment", description: "What one record comes to under one policy." });

export type Assessment = z.infer<typeof assessmentModel>;
export type Result = z.infer<typeof resultModel>;
export type Finding = z.infer<typeof findingModel>;
