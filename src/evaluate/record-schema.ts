import type { StepPlan } from "../model/index.js";
import { type Dimension, isNeverBelowNothing, UNITS, unitSymbolsOf } from "../quantities/index.js";
import type { StepField } from "../steps/index.js";
import { STEP_RESULTS } from "../terms/index.js";
import { joinFields } from "./join-fields.js";
import type { Policy } from "./policy.js";
import { type PreparedCheck, preparePolicy } from "./prepared-policy.js";
import { describeFacts, type ValueSchemas } from "./schema-facts.js";

/** A JSON Schema, draft 2020-12, as plain data. */
export type JsonSchema = { readonly [key: string]: unknown };

/**
 * The JSON Schema of the records that a check expects: stricter than judging needs to be, so that a form can be held to it.
 * A record that it accepts is judged without `unreadable`. Undefined where the policy has no such check.
 */
export function recordSchema(policy: Policy, check: string): JsonSchema | undefined {
  const found = preparePolicy(policy.plan).checks.get(check);
  if (found === undefined) return undefined;
  const { title = found.plan.check } = found.plan;
  const facts = describeFacts(policy.plan, found.plan, makeValueSchemas());
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: `Record of ${title}`,
    description: `${policy.plan.policy.title}, version ${policy.plan.policy.version}. ${policy.plan.deference}`,
    type: "object",
    required: ["tenbar", "id", "check", "at", "subject", "steps"],
    additionalProperties: false,
    properties: {
      tenbar: { const: 1 },
      id: TEXT,
      check: { const: found.plan.check },
      at: TIME,
      station: optional(TEXT),
      by: optional({
        type: "object",
        additionalProperties: false,
        properties: optionals({ id: TEXT, competence: TEXT }),
      }),
      subject: describeSubject(found),
      steps: {
        type: "array",
        maxItems: 10_000,
        items: {
          anyOf: found.steps.map(({ plan }, place) => describeEntry(plan.step, listAllFields(plan, place, found))),
        },
      },
      attested: optional({
        type: "object",
        required: ["steps", "wording", "by"],
        additionalProperties: false,
        properties: { steps: { type: "array", minItems: 1, items: TEXT }, wording: TEXT, by: TEXT },
      }),
      local: optional({ type: "object" }),
      decision: optional(TEXT),
      supersedes: optional(TEXT),
    },
    ...(facts.length === 0 ? {} : { allOf: facts }),
  };
}

function makeValueSchemas(): ValueSchemas {
  return {
    text: optional(TEXT),
    date: optional(DATE),
    flag: optional({ type: "boolean" }),
    list: optional({ type: "array" }),
    quantity: (dimension, least) => optional(describeFrom(dimension, least)),
  };
}

/** Why the parent's as well: on the days on which an adoption that covers something of the step does not apply, it stands too. */
function listAllFields(plan: StepPlan, place: number, { adoptionsAt }: PreparedCheck): readonly StepField[] {
  const coverings = adoptionsAt[place]?.coverings ?? [];
  return joinFields([plan, ...coverings.map(({ otherwise }) => otherwise.plan)]);
}

const TEXT = { type: "string", pattern: "\\S" } as const;

const LEAP = "([0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00)-02-29";
const COMMON =
  "[0-9]{4}-((0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))";
/** A day of the Gregorian calendar from the year 1 on. */
const DAY = `(?!0000)(${COMMON}|${LEAP})`;
const CLOCK = "[Tt]([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9](\\.[0-9]{1,9})?)?";
const OFFSET = "([Zz]|[+-]([01][0-9]|2[0-3]):[0-5][0-9])";
/** A day, or a month, which counts from its first. */
const DATE = { type: "string", pattern: `^(${DAY}|(?!0000)[0-9]{4}-(0[1-9]|1[0-2]))$` } as const;
/** An instant with offset, a local time, or a day; a leap second has no place on a clock of equal days. */
const TIME = { type: "string", pattern: `^${DAY}(${CLOCK}${OFFSET}?)?$` } as const;
/** Whole milliseconds with offset, so that two of them can be subtracted. */
const INSTANT = {
  type: "string",
  pattern: `^${DAY}[Tt]([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9](\\.[0-9]{1,3})?)?${OFFSET}$`,
} as const;

/** What says nothing may stand wherever evidence may be left out. */
const NOTHING: readonly JsonSchema[] = [
  { type: "null" },
  { type: "string", pattern: "^\\s*$" },
  { type: "array", maxItems: 0 },
];

function optional(schema: JsonSchema): JsonSchema {
  return { anyOf: [schema, ...NOTHING] };
}

function optionals(properties: Readonly<Record<string, JsonSchema>>): JsonSchema {
  return Object.fromEntries(Object.entries(properties).map(([name, schema]) => [name, optional(schema)]));
}

function describeSubject({ plan, steps }: PreparedCheck): JsonSchema {
  const kinds = plan.subject === undefined ? undefined : [plan.subject.kind, ...plan.subject.formerly];
  const fittings = steps.flatMap(({ plan: { whenFitted } }) => (whenFitted === undefined ? [] : [whenFitted]));
  return {
    type: "object",
    required: ["kind", "id"],
    properties: {
      kind: kinds === undefined ? TEXT : { enum: kinds },
      id: TEXT,
      ...optionals({
        marking: TEXT,
        removed: TEXT,
        class: TEXT,
        role: TEXT,
        ratedPressure: describePositive("pressure"),
        waterCapacity: describePositive("volume"),
        instruments: { type: "object", additionalProperties: optional(TEXT) },
        cylinders: { type: "array", items: CYLINDER },
      }),
      fitted: optional({
        type: "object",
        properties: optionals(Object.fromEntries(fittings.map((name) => [name, { type: "boolean" }]))),
        additionalProperties: optional({ type: "boolean" }),
      }),
    },
  };
}

const CYLINDER = {
  type: "object",
  required: ["id"],
  properties: {
    id: TEXT,
    ...optionals({
      waterCapacity: describePositive("volume"),
      ratedPressure: describePositive("pressure"),
      manufacturedOn: DATE,
      requalifiedOn: DATE,
    }),
  },
};

function describeEntry(step: string, fields: readonly StepField[]): JsonSchema {
  return {
    type: "object",
    required: ["step"],
    additionalProperties: false,
    properties: {
      step: { const: step },
      ...optionals({
        result: { enum: STEP_RESULTS },
        defect: TEXT,
        note: TEXT,
        at: TIME,
        of: TEXT,
        instrument: TEXT,
        ...Object.fromEntries(fields.map((field) => [field.key, describeField(field)])),
      }),
    },
  };
}

function describeField(field: StepField): JsonSchema {
  switch (field.type) {
    case "choice":
      return { enum: field.words };
    case "text":
      return TEXT;
    case "flag":
      return { type: "boolean" };
    case "date":
      return DATE;
    case "quantity":
      return describeQuantity(field.quantity);
    case "places":
      return describeNames(field.places, TEXT);
    case "events":
      return describeNames(field.events, INSTANT);
  }
}

function describeNames(names: readonly string[], value: JsonSchema): JsonSchema {
  return {
    type: "object",
    additionalProperties: false,
    properties: optionals(Object.fromEntries(names.map((name) => [name, value]))),
  };
}

/** As many digits as stay below 2^53 quanta, and no finer than a quantum, so that a text that matches is always read. */
function describeQuantity(dimension: Dimension): JsonSchema {
  if (dimension === "count") return { type: "integer", minimum: -999_999_999, maximum: 999_999_999 };
  const patterns = unitSymbolsOf(dimension).map((symbol) => {
    const quanta = UNITS.find((unit) => unit.symbol === symbol && unit.dimension === dimension)?.quantaPerUnit ?? 1;
    const most = Math.max(1, 15 - countDigits(quanta));
    const places = countDigits(quanta);
    const fraction = places === 0 ? "" : `(\\.[0-9]{1,${places}})?`;
    return `-?(0|[1-9][0-9]{0,${most - 1}})${fraction} ${symbol.replace(/[/[\]]/g, "\\$&")}`;
  });
  return { type: "string", pattern: `^(${patterns.join("|")})$` };
}

/** More than 0: a share of nothing is no limit. */
function describePositive(dimension: Dimension): JsonSchema {
  return { allOf: [describeQuantity(dimension), { pattern: "^[0-9.]*[1-9][0-9.]* " }] };
}

function describeFrom(dimension: Dimension, least: Parameters<ValueSchemas["quantity"]>[1]): JsonSchema {
  if (least === undefined || (least === "nothing" && !isNeverBelowNothing(dimension)))
    return describeQuantity(dimension);
  if (dimension === "count") {
    return { allOf: [describeQuantity(dimension), { minimum: least === "nothing" ? 0 : 1 }] };
  }
  return least === "nothing"
    ? { allOf: [describeQuantity(dimension), { pattern: "^[0-9]" }] }
    : describePositive(dimension);
}

/** How many decimals of a unit are whole quanta: 8 for a bar of 1e8 quanta, 4 for a minute of 6e4. */
function countDigits(quanta: number): number {
  return String(quanta).length - 1;
}
