import * as z from "zod";
import { nameModel, quantityTextModel } from "./policy-parts.js";
import { dimensionModel } from "./policy-steps.js";

const pointerModel = z
  .string()
  .regex(/^(\/([^/~]|~0|~1)+)+$/)
  .max(200)
  .meta({ title: "JSON Pointer", description: "Where the fact stands in a record.", examples: ["/subject/role"] });

export const factModel = z
  .strictObject({
    at: pointerModel.meta({
      description: "Where the fact stands in a record: its keys from the outside in, with a slash before each.",
    }),
    "one-of": z.array(z.string().min(1)).min(1).optional().meta({
      description:
        "The values that the fact may have, `[front-line, spare]` for instance; any other word leaves it undecided.",
    }),
    quantity: dimensionModel.optional(),
    value: z.enum(["text", "flag", "date"]).optional().meta({
      description: "What kind of value the fact has: `text` (any), `flag` (true or false), `date` (year-month-day).",
    }),
    each: pointerModel.optional().meta({ description: "A list in the record; `at` is then read in every member." }),
    take: z.enum(["only", "lowest", "highest"]).optional().meta({
      description:
        "Which member's value counts: `only` (they must agree), `lowest`, `highest`. It stands beside `each`.",
    }),
  })
  .meta({
    title: "Fact",
    description:
      "What the policy may ask of a record's subject, station or local fields. One of `one-of`, `quantity` or `value`.",
    examples: [{ at: "/subject/role", "one-of": ["front-line", "spare", "training"] }],
  });

export const instrumentModel = z
  .strictObject({
    quantity: dimensionModel.optional(),
    division: quantityTextModel
      .optional()
      .meta({ description: "The smallest step that is read off, `10 bar` on a dial for instance." }),
    rounding: z.enum(["down", "up", "nearest"]).optional().meta({
      description:
        "How a reading between two divisions is taken: `down` to the lower, `up` to the higher, or to the `nearest`, which counts where it is left out.",
    }),
    "max-error": quantityTextModel.optional().meta({
      description:
        "Largest error of the instrument itself, either way: `4 bar`. Not stated is unknown; 0 must be meant.",
    }),
    errors: z.enum(["independent", "shared"]).optional().meta({
      description:
        "Whether two readings of it err alike: `shared` makes one gauge's error cancel in a drop, `independent` does not and counts where it is left out.",
    }),
    range: z.array(quantityTextModel).length(2).optional().meta({
      description: "Lowest and highest value that it can show, `[0 bar, 400 bar]`. A reading beyond it is undecided.",
    }),
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
