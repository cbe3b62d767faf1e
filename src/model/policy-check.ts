import * as z from "zod";
import { formerlyModel, makeConsequenceModel, makeTitleModel, nameModel, scopeModel } from "./policy-parts.js";
import { stepModel } from "./policy-steps.js";

export const checkModel = z
  .strictObject({
    title: makeTitleModel("What people call the check, `Start-of-shift check` for instance."),
    for: scopeModel.optional().meta({
      description: "Which subjects this check is for: facts and their values, `{ class: open-circuit }` for instance.",
    }),
    subject: z
      .union([
        nameModel,
        z.strictObject({
          kind: nameModel.meta({ description: "The kind of subject as records of today call it." }),
          formerly: formerlyModel,
        }),
      ])
      .optional()
      .meta({
        description: "The kind of subject that is checked: `set`, `mask`, `cylinder` and so on.",
      }),
    competence: z
      .union([nameModel, z.array(nameModel).min(1)])
      .optional()
      .meta({
        description: "Who may carry the check out; compared exactly. A name such as `wearer`, or a list of names.",
      }),
    consequence: makeConsequenceModel("It counts for steps that state none. Left out it is `withdraw`."),
    intervals: z
      .array(nameModel)
      .min(1)
      .optional()
      .meta({ description: "Names of intervals that this check judges too; one that no check names is not judged." }),
    order: z
      .union([
        z.literal("any"),
        z.strictObject({
          "listed-by": z.enum(["position", "at"]).meta({
            description:
              "What tells the order of the steps: `position` (how they are listed in the record), `at` (the instant that each carries).",
          }),
        }),
      ])
      .optional()
      .meta({
        description:
          "`any`, or `listed-by: position` (of the record's steps) or `listed-by: at` (their instants). There is no default.",
      }),
    steps: z.array(stepModel).min(1).max(10_000).optional().meta({
      description: "The steps in the order in which they are gone through.",
    }),
    without: z.array(nameModel).min(1).optional().meta({ description: "Names of the parent's steps that fall away." }),
    formerly: formerlyModel.optional(),
  })
  .meta({ title: "Check", description: "A sequence of steps that a person goes through." });
