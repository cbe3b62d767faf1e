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

export const consequenceModel = z.enum(CONSEQUENCES).meta({
  title: "Consequence",
  description:
    "What follows where the requirement fails: `note` (written down), `advise` (the wearer is told), `refer` (a competent person decides), `withdraw` (taken out of use).",
  examples: ["withdraw", "refer"],
});

export const quantityTextModel = z
  .string()
  .min(1)
  .max(64)
  .meta({
    title: "Quantity",
    description: "A number, one space and a unit: `280 bar`, `-10 mbar`, `90 %`, `30 s`. Decimals take a point.",
    examples: ["10 bar", "30 s", "90 %", "1.5 m"],
  });

const limitModel = z.union([z.string().min(1).max(120), z.int()]).meta({
  title: "Limit",
  description:
    "A quantity such as `10 bar`, or a share of a fact such as `90 % of rated-pressure`. A count is a plain whole number.",
  examples: ["10 bar", "90 % of rated-pressure", 2],
});

const boundsShape = {
  "at-least": limitModel.optional().meta({ description: "The value is this limit or more." }),
  "at-most": limitModel.optional().meta({ description: "The value is this limit or less." }),
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
export const stepLimitModel = z.strictObject({ ...boundsShape, consequence: consequenceModel.optional() }).meta({
  title: "Limit of a step",
  description: "At least one bound, and the consequence of missing it. It takes the `basis` of its step.",
  minProperties: 1,
  examples: [{ "at-least": "60 s" }, { "at-most": "20 bar", consequence: "refer" }],
});

const noteShape = {
  note: nonEmptyTextModel.optional().meta({ description: "What a reader of the figure should know." }),
};

export const basisModel = z
  .discriminatedUnion("kind", [
    z
      .strictObject({ kind: z.literal("common-practice"), ...noteShape })
      .meta({ title: "Common practice", description: "Customary in the trade; no published source is named." }),
    z
      .strictObject({
        kind: z.literal("published"),
        source: nonEmptyTextModel.meta({
          description: "The document.",
          examples: ["EN 137", "29 CFR 1910.134(h)(3)(iii)"],
        }),
        edition: nonEmptyTextModel.optional().meta({ description: "Edition or year." }),
        clause: nonEmptyTextModel.optional().meta({ description: "Clause, section or table." }),
        seen: z.enum(["quoted", "memory"]).optional().meta({
          description: "Where the text itself was not read: `quoted` by another page, or from `memory`.",
        }),
        ...noteShape,
      })
      .meta({ title: "Published", description: "A published document states the figure." }),
    z
      .strictObject({
        kind: z.literal("manufacturer"),
        document: nonEmptyTextModel.optional().meta({ description: "The manufacturer's document." }),
        ...noteShape,
      })
      .meta({ title: "Manufacturer", description: "The manufacturer's instructions state the figure." }),
    z
      .strictObject({
        kind: z.literal("local"),
        order: nonEmptyTextModel.meta({ description: "The local order.", examples: ["LO 14"] }),
        ...noteShape,
      })
      .meta({ title: "Local order", description: "The brigade's own order states the figure." }),
  ])
  .meta({
    title: "Basis",
    description: "Where a figure comes from. Findings carry it.",
    examples: [{ kind: "common-practice" }, { kind: "published", source: "EN 137", seen: "quoted" }],
  });

const scopeValueModel = z.union([z.string().min(1), z.array(z.string().min(1)).min(1)]);

export const scopeModel = z.record(nameModel, scopeValueModel).meta({
  title: "Scope",
  description: "Facts and the values they may have, all of which must hold. A missing fact never gives the laxer case.",
  minProperties: 1,
  examples: [{ kind: "set", class: "open-circuit" }, { role: ["front-line", "training"] }],
});

export const formerlyModel = z.array(z.string().min(1).max(200)).min(1).meta({
  title: "Former names",
  description: "Names under which old records know the same thing.",
});

const toleranceShape = {
  accept: boundsModel.optional().meta({ description: "Limits inside which the value is accepted." }),
  caution: boundsModel.optional().meta({
    description: "The part of the accepted range that is close to a limit; it counts as within and is reported.",
  }),
  cases: z
    .array(
      z.strictObject({ for: scopeModel, accept: boundsModel, caution: boundsModel.optional() }).meta({
        title: "Case",
        description: "Limits for one scope.",
      }),
    )
    .min(1)
    .optional()
    .meta({ description: "Limits that depend on declared facts. No two cases may hold at once." }),
  "accept-by": z
    .strictObject({
      fact: nameModel,
      rows: z
        .array(z.strictObject({ "up-to": limitModel, accept: boundsModel, caution: boundsModel.optional() }))
        .min(1),
    })
    .optional()
    .meta({ description: "Limits that depend on a quantity, row by row up to and including `up-to`." }),
  comparison: z.enum(["as-read", "guarded"]).optional().meta({
    description: "`as-read` compares the reading as recorded (the default); `guarded` asks for a stated confidence.",
  }),
  confidence: quantityTextModel.optional().meta({ description: "The confidence that `guarded` asks for, above 50 %." }),
  trust: z.literal("corrected").optional().meta({
    description: "Take a temperature-corrected drop as deciding where the drop as read is outside.",
  }),
  consequence: consequenceModel.optional(),
};

export const toleranceModel = z
  .strictObject({ title: nonEmptyTextModel.optional(), ...toleranceShape, basis: basisModel })
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
