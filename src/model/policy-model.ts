import * as z from "zod";
import { checkModel } from "./policy-check.js";
import { adoptionModel, intervalModel, ruleModel } from "./policy-duties.js";
import { factModel, instrumentModel } from "./policy-evidence.js";
import {
  type boundsModel,
  dateTextModel,
  nameModel,
  nonEmptyTextModel,
  scopeModel,
  toleranceModel,
} from "./policy-parts.js";
import type { stepModel } from "./policy-steps.js";

const headModel = z
  .strictObject({
    id: z
      .string()
      .regex(/^[a-z0-9]+(-[a-z0-9]+)*(\/[a-z0-9]+(-[a-z0-9]+)*)*$/)
      .max(200)
      .meta({
        description:
          "Lower-case words, hyphens and slashes. The policy's own name, which stays while its figures change.",
        examples: ["lowmere/open-circuit"],
      }),
    title: nonEmptyTextModel.meta({
      description: "A name for people to read. What the policy as a whole is called, as in the heading of an order.",
    }),
    version: z
      .string()
      .min(1)
      .max(100)
      .meta({
        description: "Always in quotes. Which edition of the policy this is; a new one for every change of a figure.",
        examples: ["2026.1"],
      }),
    issuer: nonEmptyTextModel.optional().meta({
      description: "Who issues the policy. The brigade or service whose order it is.",
    }),
    status: z.enum(["common-practice", "local", "draft"]).meta({
      description:
        "What standing the policy has: `common-practice` for shipped defaults, `local` for a brigade's own order, `draft` for work in hand.",
    }),
    effective: z
      .strictObject({
        from: dateTextModel.optional().meta({ description: "The first day on which the policy is in force." }),
        to: dateTextModel.optional().meta({
          description:
            "The last day on which it is in force. A record of another day is judged all the same, with a note.",
        }),
        review: dateTextModel.optional().meta({
          description: "The day by which the policy is to be looked over again; a warning is given once it has passed.",
        }),
      })
      .optional()
      .meta({ description: "First and last day in force, and the day by which it is reviewed." }),
  })
  .meta({ title: "About the policy", description: "Who issues it, which version, and when it is in force." });

export const policyModel = z
  .strictObject({
    tenbar: z.literal(1).meta({ description: "The version of the policy language, which is `1`." }),
    policy: headModel,
    extends: z
      .string()
      .min(1)
      .max(300)
      .optional()
      .meta({
        description:
          "A shipped policy pinned to its major version, or another file. What this policy does not name stays as it is there.",
        examples: ["common-practice/open-circuit@1", "./brigade.yaml"],
      }),
    deference: nonEmptyTextModel.optional().meta({
      description: "The sentence that every assessment carries: what stands above this policy.",
    }),
    cautions: z.array(nonEmptyTextModel).min(1).optional().meta({
      description: "What a reader must know before using the policy; printed with it.",
    }),
    undecided: z.literal("as-outside").optional().meta({
      description:
        "`as-outside` makes every gap weigh what a failure weighs. Left out, what cannot be told weighs `refer` at most.",
    }),
    for: scopeModel.optional().meta({
      description:
        "Which subjects the policy is for: facts and their values. A record of another subject is not judged.",
    }),
    facts: z.record(nameModel, factModel).optional().meta({
      description:
        "Facts of your own by name, which limits, scopes and rules may depend on: the role of a set, the shift.",
    }),
    instruments: z.record(nameModel, instrumentModel).optional().meta({
      description: "Gauges, stopwatches and other instruments by name: what a reading of each can mean.",
    }),
    tolerances: z.record(nameModel, toleranceModel).optional().meta({
      description:
        "Limits by name, each with its basis; steps refer to them. One named as in the parent replaces it whole.",
    }),
    checks: z.record(nameModel, checkModel).optional().meta({
      description:
        "Check sequences by name, `daily` or `monthly` for instance; records say which one was gone through.",
    }),
    without: z.array(nameModel).min(1).optional().meta({ description: "Names of the parent's checks that fall away." }),
    intervals: z.record(nameModel, intervalModel).optional().meta({
      description: "What falls due, by name: requalification, monthly test. A check names those that it judges.",
    }),
    rules: z.array(ruleModel).optional().meta({
      description: "Conditions that the step kinds cannot say, in JsonLogic notation.",
    }),
    adopted: z.array(adoptionModel).optional().meta({
      description: "Departures from the limits of this policy or its parent, each under an order and with its dates.",
    }),
  })
  .meta({
    title: "tenbar policy",
    description: "A brigade's tolerances and check sequences for breathing apparatus.",
  });
export type PolicyDocument = z.infer<typeof policyModel>;
export type PolicyStep = z.infer<typeof stepModel>;
export type PolicyTolerance = z.infer<typeof toleranceModel>;
export type PolicyBounds = z.infer<typeof boundsModel>;
