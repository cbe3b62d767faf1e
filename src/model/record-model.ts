import * as z from "zod";
import { STEP_RESULTS } from "../terms/index.js";

const textModel = z.string().min(1).max(1000);
const quantityModel = z.string().meta({
  title: "Quantity",
  description: "A number, one space and a unit. A number without a unit is evidence that cannot be judged.",
  examples: ["280 bar", "60 s"],
});
const dateModel = z
  .string()
  .regex(/^[0-9]{4}-[0-9]{2}(-[0-9]{2})?$/)
  .meta({ title: "Date", examples: ["2024-05-02"] });
const instantModel = z.string().meta({
  title: "Time",
  description: "An instant with offset, a local time, or a date: `2026-04-12T07:04:00+01:00`.",
  examples: ["2026-04-12T07:04:00+01:00", "2026-04-12"],
});

const traceModel = z
  .object({
    unit: z.string(),
    startedAt: instantModel.optional(),
    everySeconds: z.number().positive().optional(),
    times: z.array(instantModel).min(2).optional(),
    values: z.array(z.number()).min(2).max(100_000),
  })
  .meta({ title: "Trace", description: "Samples of one quantity over time." });

const readingModel = z
  .union([
    quantityModel,
    z.int(),
    z.object({ atMost: quantityModel }).meta({ title: "At most", description: "Known only not to exceed this." }),
    z.object({ between: z.array(quantityModel).length(2) }).meta({ title: "Between" }),
    traceModel,
  ])
  .meta({ title: "Reading", examples: ["280 bar", { atMost: "10 bar" }] });

const recordStepModel = z
  .looseObject({
    step: textModel.meta({ description: "The step's name in the policy." }),
    result: z.enum(STEP_RESULTS).nullish().meta({ description: "What was found, in one word." }),
    defect: z.string().nullish().meta({ description: "The defect's name. It stands whatever `result` says." }),
    note: z.string().nullish(),
    at: instantModel.nullish(),
    of: z.string().nullish().meta({ description: "Which member: the id of a cylinder, for instance." }),
    instrument: z.string().nullish().meta({ description: "Which instrument was read." }),
    seen: z.record(z.string(), z.string().nullish()).nullish().meta({ description: "The text found in each place." }),
    reading: readingModel.nullish(),
    occurred: z.boolean().nullish().meta({ description: "`false`: it never came." }),
    start: quantityModel.nullish(),
    end: quantityModel.nullish(),
    held: quantityModel.nullish(),
    startTemperature: quantityModel.nullish(),
    endTemperature: quantityModel.nullish(),
    trace: traceModel.nullish(),
    elapsed: quantityModel.nullish(),
    events: z.record(z.string(), instantModel.nullish()).nullish(),
    on: dateModel.nullish().meta({ description: "The date read off the book or the label." }),
  })
  .meta({ title: "Step of a record", description: "What was found at one step." });

const cylinderModel = z
  .looseObject({
    id: textModel,
    waterCapacity: quantityModel.nullish(),
    ratedPressure: quantityModel.nullish(),
    manufacturedOn: dateModel.nullish(),
    requalifiedOn: dateModel.nullish(),
  })
  .meta({ title: "Cylinder" });

/** The subject of a record: open, since a policy may ask for facts of its own. */
const subjectModel = z
  .looseObject({
    kind: textModel.meta({ examples: ["set", "mask", "cylinder"] }),
    id: textModel,
    marking: z.string().nullish().meta({ description: "The number that is marked on it." }),
    removed: z.string().nullish().meta({ description: "The number of what was taken off." }),
    class: z
      .string()
      .nullish()
      .meta({ examples: ["open-circuit"] }),
    role: z.string().nullish(),
    ratedPressure: quantityModel.nullish(),
    waterCapacity: quantityModel.nullish(),
    fitted: z.record(z.string(), z.boolean().nullish()).nullish().meta({
      description: "What is fitted, said both ways: an absent name leaves it open.",
    }),
    instruments: z.record(z.string(), z.string().nullish()).nullish(),
    cylinders: z.array(cylinderModel).nullish(),
  })
  .meta({ title: "Subject" });

export const recordModel = z
  .looseObject({
    tenbar: z.literal(1),
    id: textModel,
    check: textModel,
    at: instantModel,
    station: z.string().nullish(),
    by: z.looseObject({ id: z.string().nullish(), competence: z.string().nullish() }).nullish(),
    subject: subjectModel,
    steps: z.array(recordStepModel).max(10_000),
    attested: z
      .looseObject({ steps: z.array(z.string()), wording: z.string(), by: z.string() })
      .nullish()
      .meta({ description: "Steps that the person vouches for together, and the words used." }),
    local: z.record(z.string(), z.unknown()).nullish().meta({ description: "Fields of the station's own." }),
    decision: z.string().nullish().meta({ description: "What the log book said at the time; never judged." }),
    supersedes: z.string().nullish().meta({ description: "The id of the record that this one replaces." }),
  })
  .meta({ title: "tenbar record", description: "What one person found on one subject at one time." });

export type CheckRecord = z.infer<typeof recordModel>;
