import type { QuantityName } from "./quantity-name.js";

/** What a policy names. Invariant: programs read these words in params, so they stay as they are. */
export type PlainThing =
  | "adoption"
  | "check"
  | "check of the parent"
  | "fact"
  | "instrument"
  | "interval"
  | "place"
  | "quantity fact"
  | "rule"
  | "step"
  | "step of the parent"
  | "step of the same check"
  | "step of this check"
  | "step to stand beside"
  | "text fact"
  | "tolerance";

/** Something of a thing that the policy's author named. */
export type Thing = PlainThing | `requirement of \`${string}\`` | `value of \`${string}\``;

/** What stands in a rule, or is wanted there. */
export type RuleThing =
  | `a ${QuantityName}`
  | "a date"
  | "a list"
  | "a list of values"
  | "a number"
  | "a plain value"
  | "a quantity"
  | "a quantity or a date"
  | "a quantity that can be added, such as a difference of temperatures"
  | "a text"
  | "a text, a date or a quantity"
  | "a text, true or false, a date or a quantity"
  | "a value that JSON does not know (bigint)"
  | "a value that JSON does not know (function)"
  | "a value that JSON does not know (symbol)"
  | "a value that JSON does not know (undefined)"
  | "an empty list"
  | "an empty text"
  | "an operator"
  | "null"
  | "true or false";
