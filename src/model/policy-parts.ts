import * as z from "zod";
import { CONSEQUENCES } from "../terms/index.js";

/** Names inside a policy: lower-case words joined by hyphens. */
const NAME_PATTERN = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

export const nameModel = z
  .string()
  .regex(NAME_PATTERN)
  .max(100)
  .meta({
    title: "Name",
    description: "Lower-case words joined by hyphens, such as `leak-drop`.",
    examples: ["leak-drop", "set-number"],
  });

export const nonEmptyTextModel = z.string().min(1).max(4000);

/** A title; `what` says in a sentence of its own what it is the title of. */
export function makeTitleModel(what: string): z.ZodOptional<z.ZodString> {
  return nonEmptyTextModel.optional().meta({ description: `A name for people to read. ${what}` });
}

export const dateTextModel = z
  .string()
  .regex(/^[0-9]{4}-[0-9]{2}(-[0-9]{2})?$/)
  .meta({ title: "Date", description: "Year-month-day, `2026-04-01`.", examples: ["2026-04-01"] });

const CONSEQUENCE_HELP =
  "What follows where the requirement fails: `note` (written down), `advise` (the wearer is told), `refer` (a competent person decides), `withdraw` (taken out of use).";

export const consequenceModel = z.enum(CONSEQUENCES).meta({
  title: "Consequence",
  description: CONSEQUENCE_HELP,
  examples: ["withdraw", "refer"],
});

/** A consequence that may be left out; `otherwise` says in a sentence what counts then. */
export function makeConsequenceModel(otherwise: string): z.ZodOptional<typeof consequenceModel> {
  return consequenceModel.optional().meta({ description: `${CONSEQUENCE_HELP} ${otherwise}` });
}

export const quantityTextModel = z
  .string()
  .min(1)
  .max(64)
  .meta({
    title: "Quantity",
    description:
      "A number, one space and a unit: `280 bar`, `-10 mbar`, `90 %`, `30 s`. Decimals take a point: `5.5 mbar`.",
    examples: ["10 bar", "30 s", "90 %", "1.5 m"],
  });

const limitModel = z.union([z.string().min(1).max(120), z.int()]).meta({
  title: "Limit",
  description:
    "A quantity such as `10 bar`, or a share of a fact such as `90 % of rated-pressure`. A count is a plain whole number.",
  examples: ["10 bar", "90 % of rated-pressure", 2],
});

const boundsShape = {
  "at-least": limitModel
    .optional()
    .meta({ description: "The value is this limit or more, as in `at-least: 270 bar`." }),
  "at-most": limitModel.optional().meta({ description: "The value is this limit or less, as in `at-most: 10 bar`." }),
  above: limitModel.optional().meta({ description: "The value is more than this limit; the limit itself is outside." }),
  below: limitModel.optional().meta({ description: "The value is less than this limit; the limit itself is outside." }),
  between: z
    .array(limitModel)
    .length(2)
    .optional()
    .meta({
      description: "The value lies from the first limit to the second, both included.",
      examples: [["50 bar", "60 bar"]],
    }),
  nominal: limitModel.optional().meta({ description: "The middle of a band; needs `plus-minus` beside it." }),
  "plus-minus": limitModel
    .optional()
    .meta({ description: "How far the value may lie from `nominal`, either way, ends included." }),
};

export const boundsModel = z.strictObject(boundsShape).meta({
  title: "Limits",
  description: "At least one bound. Two bounds under `accept` both hold; two under `caution` mean either.",
  minProperties: 1,
  examples: [{ "at-most": "10 bar" }, { between: ["50 bar", "60 bar"] }],
});

/** A limit written in a step itself, with a consequence of its own. */
export const stepLimitModel = z
  .strictObject({
    ...boundsShape,
    consequence: makeConsequenceModel("Left out, it follows from the step."),
  })
  .meta({
    title: "Limit of a step",
    description: "At least one bound, and the consequence of missing it. It takes the `basis` of its step.",
    minProperties: 1,
    examples: [{ "at-least": "60 s" }, { "at-most": "20 bar", consequence: "refer" }],
  });

const noteShape = {
  note: nonEmptyTextModel.optional().meta({
    description: "What a reader of the figure should know. It is printed with every finding that rests on the figure.",
  }),
};

export const basisModel = z
  .discriminatedUnion("kind", [
    z
      .strictObject({
        kind: z.literal("common-practice").meta({
          description: "`common-practice`: customary in the trade, without a published source.",
        }),
        ...noteShape,
      })
      .meta({
        title: "Common practice",
        description: "Where the figure comes from: it is customary in the trade, and no published source is named.",
      }),
    z
      .strictObject({
        kind: z.literal("published").meta({
          description:
            "`published`: a standard, a regulation or another public document states it; `source` names which.",
        }),
        source: nonEmptyTextModel.meta({
          description: "The document. Its number or title, as it is cited.",
          examples: ["EN 137", "29 CFR 1910.134(h)(3)(iii)"],
        }),
        edition: nonEmptyTextModel
          .optional()
          .meta({ description: 'Edition or year. Put it in quotes where it is a number: `"2006"`.' }),
        clause: nonEmptyTextModel
          .optional()
          .meta({ description: "Clause, section or table. Where in the document the figure stands." }),
        seen: z.enum(["quoted", "memory"]).optional().meta({
          description:
            "How the text was seen where it was not read itself: `quoted` by another page, or written down from `memory`.",
        }),
        ...noteShape,
      })
      .meta({ title: "Published", description: "Where the figure comes from: a published document states it." }),
    z
      .strictObject({
        kind: z.literal("manufacturer").meta({
          description: "`manufacturer`: the instructions of the manufacturer state it.",
        }),
        document: nonEmptyTextModel.optional().meta({
          description: "The manufacturer's document. Its title or number, and its issue.",
        }),
        ...noteShape,
      })
      .meta({
        title: "Manufacturer",
        description: "Where the figure comes from: the manufacturer's instructions state it.",
      }),
    z
      .strictObject({
        kind: z.literal("local").meta({ description: "`local`: an order of the brigade itself states it." }),
        order: nonEmptyTextModel.meta({
          description: "The local order. Its number or title, as your people know it.",
          examples: ["LO 14"],
        }),
        ...noteShape,
      })
      .meta({ title: "Local order", description: "Where the figure comes from: the brigade's own order states it." }),
  ])
  .meta({
    title: "Basis",
    description:
      "Where a figure comes from: common practice, a published document, the manufacturer, or a local order. Findings carry it.",
    examples: [{ kind: "common-practice" }, { kind: "published", source: "EN 137", seen: "quoted" }],
  });

const scopeValueModel = z.union([z.string().min(1), z.array(z.string().min(1)).min(1)]);

export const scopeModel = z.record(nameModel, scopeValueModel).meta({
  title: "Scope",
  description:
    "Facts and the values they may have, all of which must hold. A missing fact never gives the laxer case; it leaves the matter undecided.",
  minProperties: 1,
  examples: [{ kind: "set", class: "open-circuit" }, { role: ["front-line", "training"] }],
});

export const formerlyModel = z.array(z.string().min(1).max(200)).min(1).meta({
  title: "Former names",
  description: "Names under which old records know the same thing, so that they are still judged.",
});

const toleranceShape = {
  accept: boundsModel.optional().meta({
    description: "Limits inside which the value is accepted. Two bounds together must both hold.",
  }),
  caution: boundsModel.optional().meta({
    description: "The part of the accepted range that is close to a limit; it counts as within and is reported.",
  }),
  cases: z
    .array(
      z
        .strictObject({
          for: scopeModel.meta({
            description: "The facts for which these limits hold, `{ role: spare }` for instance.",
          }),
          accept: boundsModel.meta({ description: "Limits inside which the value is accepted in this case." }),
          caution: boundsModel.optional().meta({
            description: "The part of this case's accepted range that is close to a limit; accepted, and reported.",
          }),
        })
        .meta({ title: "Case", description: "Limits that hold where the facts under `for` do." }),
    )
    .min(1)
    .optional()
    .meta({ description: "Limits that depend on declared facts. No two cases may hold at once." }),
  "accept-by": z
    .strictObject({
      fact: nameModel.meta({
        description: "The fact whose quantity picks the row, such as `rated-pressure` or `water-capacity`.",
      }),
      rows: z
        .array(
          z.strictObject({
            "up-to": limitModel.meta({ description: "The row counts up to and including this quantity: `200 bar`." }),
            accept: boundsModel.meta({ description: "Limits inside which the value is accepted in this row." }),
            caution: boundsModel.optional().meta({
              description: "The part of this row's accepted range that is close to a limit; accepted, and reported.",
            }),
          }),
        )
        .min(1)
        .meta({
          description: "Rows from the lowest `up-to` to the highest; the first that the fact does not exceed counts.",
        }),
    })
    .optional()
    .meta({
      description:
        "Limits that depend on a quantity, row by row up to and including `up-to`; beyond the last row there is no limit to judge by, and the step is undecided.",
    }),
  comparison: z.enum(["as-read", "guarded"]).optional().meta({
    description:
      "`as-read` compares the reading as recorded (the default); `guarded` asks for a stated confidence, which this version does not judge and refuses by name.",
  }),
  confidence: quantityTextModel.optional().meta({
    description:
      "The confidence that `guarded` asks for, a share above 50 % such as `95 %`; refused by name in this version.",
  }),
  trust: z.literal("corrected").optional().meta({
    description:
      "`corrected` takes a drop that is corrected for temperature as deciding where the drop as read is outside; refused by name in this version.",
  }),
  consequence: makeConsequenceModel(
    "A step's own goes before it. Left out, that of the check counts, else `withdraw`.",
  ),
};

export const toleranceModel = z
  .strictObject({
    title: makeTitleModel("What the limits are of, as a finding calls them."),
    ...toleranceShape,
    basis: basisModel,
  })
  .meta({
    title: "Tolerance",
    description: "Named limits that steps refer to. One of `accept`, `cases` or `accept-by`, and a `basis`.",
    examples: [{ accept: { "at-most": "10 bar" }, consequence: "withdraw", basis: { kind: "common-practice" } }],
  });

/** A tolerance by name, or one written in the step, which takes the step's basis. */
export const toleranceUseModel = z.union([nameModel, z.strictObject(toleranceShape)]).meta({
  title: "Tolerance",
  description: "The name of a tolerance of this policy, or limits written here, which take the `basis` of the step.",
  examples: ["leak-drop", { accept: { "at-most": "10 bar" } }],
});
