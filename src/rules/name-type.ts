import type { RuleThing } from "../words/index.js";
import type { RuleType } from "./rule-expression.js";

/** A type in words. */
export function nameType(type: RuleType): RuleThing {
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
export function nameValue(value: unknown): RuleThing {
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
    case "bigint":
      return "a value that JSON does not know (bigint)";
    case "function":
      return "a value that JSON does not know (function)";
    case "symbol":
      return "a value that JSON does not know (symbol)";
    default:
      return "a value that JSON does not know (undefined)";
  }
}
