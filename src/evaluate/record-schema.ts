import { type Dimension, UNITS, unitSymbolsOf } from "../quantities/index.js";
import { listFields, type StepField } from "../steps/index.js";
import type { Policy } from "./policy.js";
import { type PreparedCheck, preparePolicy } from "./prepared-policy.js";

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
      at: INSTANT,
      station: TEXT,
      by: { type: "object", additionalProperties: false, properties: { id: TEXT, competence: TEXT } },
      subject: describeSubject(found),
      steps: {
        type: "array",
        maxItems: 10_000,
        items: { anyOf: found.steps.map(({ plan }) => describeEntry(plan.step, listFields(plan))) },
      },
      attested: {
        type: "object",
        required: ["steps", "wording", "by"],
        additionalProperties: false,
        properties: { steps: { type: "array", minItems: 1, items: TEXT }, wording: TEXT, by: TEXT },
      },
      local: { type: "object" },
      decision: { type: ["string", "null"] },
      supersedes: { type: ["string", "null"] },
    },
  };
}

const TEXT = { type: "string", pattern: "\\S" } as const;
/** A real day, which `format` checks, or a month. */
const DATE = {
  type: "string",
  anyOf: [{ format: "date", pattern: "^(?!0000)[0-9]{4}-" }, { pattern: "^(?!0000)[0-9]{4}-(0[1-9]|1[0-2])$" }],
} as const;
/** An instant with offset; a leap second has no place on a clock of equal days. */
const INSTANT = {
  type: "string",
  format: "date-time",
  pattern:
    "^(?!0000)[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-5][0-9](\\.[0-9]{1,3})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$",
} as const;

function describeSubject({ plan, steps }: PreparedCheck): JsonSchema {
  const kinds = plan.subject === undefined ? undefined : [plan.subject.kind, ...plan.subject.formerly];
  const fittings = steps.flatMap(({ plan: { whenFitted } }) => (whenFitted === undefined ? [] : [whenFitted]));
  return {
    type: "object",
    required: ["kind", "id"],
    properties: {
      kind: kinds === undefined ? TEXT : { enum: kinds },
      id: TEXT,
      marking: TEXT,
      class: TEXT,
      ratedPressure: describeQuantity("pressure"),
      waterCapacity: describeQuantity("volume"),
      fitted: {
        type: "object",
        properties: Object.fromEntries(fittings.map((name) => [name, { type: "boolean" }])),
        additionalProperties: { type: "boolean" },
      },
      instruments: { type: "object", additionalProperties: TEXT },
      cylinders: { type: "array", items: CYLINDER },
    },
  };
}

const CYLINDER = {
  type: "object",
  required: ["id"],
  properties: {
    id: TEXT,
    waterCapacity: describeQuantity("volume"),
    ratedPressure: describeQuantity("pressure"),
    manufacturedOn: DATE,
    requalifiedOn: DATE,
  },
} as const;

function describeEntry(step: string, fields: readonly StepField[]): JsonSchema {
  return {
    type: "object",
    required: ["step"],
    additionalProperties: false,
    properties: {
      step: { const: step },
      result: { enum: ["satisfactory", "defect", "not-done"] },
      defect: TEXT,
      note: { type: "string" },
      at: INSTANT,
      of: TEXT,
      instrument: TEXT,
      ...Object.fromEntries(fields.map((field) => [field.key, describeField(field)])),
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
    properties: Object.fromEntries(names.map((name) => [name, value])),
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
    return `-?(0|[1-9][0-9]{0,${most - 1}})${fraction} ${symbol.replace(/[/[\]%]/g, "\\$&")}`;
  });
  return { type: "string", pattern: `^(${patterns.join("|")})$` };
}

/** How many decimals of a unit are whole quanta: 8 for a bar of 1e8 quanta, 4 for a minute of 6e4. */
function countDigits(quanta: number): number {
  return String(quanta).length - 1;
}
