import type { RuleType } from "./rule-expression.js";

/** A type in words. */
export function nameType(type: RuleType): string {
  switch (type.kind) {
    case "quantity":
      return `a ${type.dimension}`;
    case "flag":
      return "true or false";
    default:
      return `a ${type.kind}`;
  }
}

/** What stands in a rule, in words, whatever value it is. */
export function nameValue(value: unknown): string {
  if (value === null) return "null";
  if (value === "") return "an empty text";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  switch (typeof value) {
    case "string":
      return "a text";
    case "number":
      return "a number";
    case "boolean":
      return "true or false";
    case "object":
      return "an operator";
    default:
      return `a value that JSON does not know (${typeof value})`;
  }
}
