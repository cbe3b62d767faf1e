import type { DiagnosticCode } from "../../src/diagnostics/index.js";
import { parseDate, parseQuantity } from "../../src/quantities/index.js";
import {
  compileRule,
  type RuleExpression,
  type RuleFacts,
  type RuleType,
  type RuleValue,
} from "../../src/rules/index.js";
import { findNearest } from "../../src/terms/index.js";

const PRESSURE: RuleType = { kind: "quantity", dimension: "pressure" };
const TEMPERATURE: RuleType = { kind: "quantity", dimension: "temperature" };
const FLAG: RuleType = { kind: "flag" };
const DATE: RuleType = { kind: "date" };

export const ROLES = ["operational", "training", "spare"] as const;
export const SHIFTS = ["red", "white", "blue"] as const;

/** What the rules of an invented brigade may read. */
export const TYPES: ReadonlyMap<string, RuleType> = new Map<string, RuleType>([
  ["role", { kind: "text", words: ROLES }],
  ["shift", { kind: "text", words: SHIFTS }],
  ["keeper", { kind: "text" }],
  ["trained", FLAG],
  ["stored", FLAG],
  ["commissioned", DATE],
  ["inspected", DATE],
  ["rated", PRESSURE],
  ["leak.start", PRESSURE],
  ["leak.end", PRESSURE],
  ["hold.lasting", { kind: "quantity", dimension: "duration" }],
  ["indoors", TEMPERATURE],
  ["outdoors", TEMPERATURE],
  ["crew", { kind: "quantity", dimension: "count" }],
  [
    "subject.cylinders",
    { kind: "list", fields: { id: { kind: "text" }, lined: FLAG, ratedPressure: PRESSURE, requalifiedOn: DATE } },
  ],
]);

export interface ReportedFault {
  readonly code: DiagnosticCode;
  readonly pointer: string;
  readonly params: Readonly<Record<string, unknown>>;
}

/** Compiles a term and keeps what was reported. */
export function compileSample(term: unknown): {
  readonly expression: RuleExpression | undefined;
  readonly faults: readonly ReportedFault[];
} {
  const faults: ReportedFault[] = [];
  const expression = compileRule(term, { types: TYPES, nearest: findNearest }, (code, pointer, params) => {
    faults.push({ code, pointer, params });
  });
  return { expression, faults };
}

/** Compiles a term that the test takes for valid. */
export function compileValid(term: unknown): RuleExpression {
  const { expression, faults } = compileSample(term);
  if (expression === undefined) throw new Error(`${JSON.stringify(term)}: ${JSON.stringify(faults)}`);
  return expression;
}

type FactTexts = Readonly<Record<string, string | number | boolean | undefined>>;

/** Facts written as a record writes them; those of type `list` as lists of such. */
export function makeFacts(
  texts: FactTexts,
  lists: Readonly<Record<string, readonly FactTexts[]>> = {},
  types: ReadonlyMap<string, RuleType> = TYPES,
): RuleFacts {
  return {
    read: (name) => readValue(texts[name], types.get(name)),
    members(name) {
      const type = types.get(name);
      if (type?.kind !== "list") return undefined;
      const fields = new Map(Object.entries(type.fields));
      return lists[name]?.map((member) => makeFacts(member, {}, fields));
    },
  };
}

function readValue(text: string | number | boolean | undefined, type: RuleType | undefined): RuleValue | undefined {
  if (text === undefined || type === undefined || type.kind === "list") return undefined;
  if (type.kind === "date") return parseDate(text);
  if (type.kind !== "quantity") return typeof text === "number" ? undefined : text;
  const parsed = parseQuantity(text, type.dimension);
  if (!parsed.ok) throw new Error(`the test's own value \`${text}\` is ${parsed.fault}`);
  return parsed.quantity;
}
