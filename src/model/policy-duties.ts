import * as z from "zod";
import {
  basisModel,
  boundsModel,
  dateTextModel,
  makeConsequenceModel,
  makeTitleModel,
  nameModel,
  nonEmptyTextModel,
  scopeModel,
} from "./policy-parts.js";

export const intervalModel = z
  .strictObject({
    title: makeTitleModel("What falls due, `Requalification of the cylinder` for instance."),
    of: nameModel.meta({ description: "The kind of thing that falls due: `set`, `cylinder`, `mask`." }),
    for: scopeModel.optional().meta({
      description: "Which things this interval is for: facts and their values. Left out, all of the kind.",
    }),
    every: z
      .string()
      .regex(/^P[0-9A-Z]+$/)
      .meta({
        description: "ISO 8601 span. `P5Y` is five years, `P6M` six months, `P30D` thirty days.",
        examples: ["P5Y", "P1M"],
      }),
    counted: z.enum(["from-last", "from-first"]).meta({
      description:
        "What the date is: `from-last` of the last doing, `from-first` of the first day, as for a cylinder's life.",
    }),
    date: z
      .string()
      .regex(/^[A-Za-z][A-Za-z0-9]*$/)
      .meta({
        description: "The record field that holds the date. A key of the thing itself, year-month-day or year-month.",
        examples: ["requalifiedOn"],
      }),
    forbids: z
      .enum(["fill", "use"])
      .optional()
      .meta({ description: "What may not be done once it is overdue, `fill` or `use`; printed, never judged." }),
    consequence: makeConsequenceModel("Left out it is `withdraw`."),
    basis: basisModel,
  })
  .meta({ title: "Interval", description: "Something that falls due, counted from a date in the record." });

/** JsonLogic notation; its grammar is read by the rules, not by this schema. */
const ruleTermModel: z.ZodType = z
  .union([
    z.string(),
    z.number(),
    z.boolean(),
    z.null(),
    z.array(z.lazy(() => ruleTermModel)),
    z.record(
      z.string(),
      z.lazy(() => ruleTermModel),
    ),
  ])
  .meta({ title: "Rule term", description: "A term in JsonLogic notation: one operator and its operands." });

export const ruleModel = z
  .strictObject({
    rule: nameModel.meta({ description: "The rule's name; findings carry it." }),
    title: makeTitleModel("What the rule asks for, in a sentence."),
    checks: z.array(nameModel).min(1).optional().meta({
      description: "Names of the checks in which the rule is judged. Left out, in all of them.",
    }),
    for: scopeModel.optional().meta({
      description: "Which subjects this rule is for: facts and their values. Left out, all of them.",
    }),
    when: ruleTermModel.optional().meta({
      description: 'Where this is false, the rule does not apply: `{ "==": [{ var: role }, spare] }`.',
    }),
    require: ruleTermModel.meta({
      description: "What must be true. A fact or a step that is missing leaves the rule undecided, never met.",
    }),
    consequence: makeConsequenceModel("Left out it is `withdraw`."),
    basis: basisModel,
  })
  .meta({ title: "Rule", description: "What the step kinds cannot say, as a condition on facts and on steps." });

const stepPathPattern = /^[a-z0-9-]+\/[a-z0-9-]+$/;

export const adoptionModel = z
  .strictObject({
    id: nameModel.meta({ description: "The adoption's name; each result that it touches carries it." }),
    step: z
      .string()
      .regex(stepPathPattern)
      .optional()
      .meta({ description: "`check/step`. The step that is departed from, `daily/leak` for instance." }),
    requirement: nameModel.optional().meta({
      description: "Which requirement of the step, where it has several: `drop`, `lasting`, `level` and so on.",
    }),
    tolerance: nameModel.optional().meta({ description: "Instead of a step: the tolerance that is departed from." }),
    interval: nameModel.optional().meta({ description: "Instead of a step: the interval that is departed from." }),
    accept: boundsModel.optional().meta({ description: "Limits that count while the adoption applies." }),
    instead: z
      .string()
      .regex(stepPathPattern)
      .optional()
      .meta({ description: "`check/step`. The step that is asked in its place while the adoption applies." }),
    omit: z.literal(true).optional().meta({
      description: "`true` leaves the step or the interval out while the adoption applies.",
    }),
    only: scopeModel.optional().meta({
      description: "Where the adoption applies: facts and their values, `{ station: Lowmere 4 }` for instance.",
    }),
    from: dateTextModel.meta({ description: "The first day on which the departure applies." }),
    until: dateTextModel.optional().meta({ description: "Its last day; it lapses by itself the day after." }),
    review: dateTextModel.optional().meta({
      description: "Where the departure lasts: the day by which it is to be looked over again, in place of `until`.",
    }),
    order: nonEmptyTextModel.meta({
      description: "The order that lets it stand. Its number or title, in quotes where it is a number.",
    }),
    by: nonEmptyTextModel.meta({ description: "Who decided it. A post rather than a person's name." }),
    reason: nonEmptyTextModel.meta({
      description: "Why it was decided. For whoever reads the policy later.",
    }),
  })
  .meta({ title: "Adoption", description: "An open departure, under an order, with its dates." });
