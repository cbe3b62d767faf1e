import {
  addRational,
  type CalendarDate,
  compareDates,
  compareRational,
  isNegativeRational,
  negateRational,
  type Quantity,
  type Rational,
  rationalOfQuantity,
  subtractRational,
} from "../quantities/index.js";
import type { RuleExpression } from "./rule-expression.js";

/** What a fact may be; what is missing or cannot be read is undefined. */
export type RuleValue = string | boolean | CalendarDate | Quantity;

/** Quantities are exact rationals of base quanta, so that units of one dimension compare and add up exactly. */
export type Value = string | boolean | CalendarDate | Rational;

export function toValue(value: RuleValue | undefined): Value | undefined {
  return typeof value === "object" && "quanta" in value ? rationalOfQuantity(value) : value;
}

export function compareValues(one: Value | undefined, other: Value | undefined): -1 | 0 | 1 | undefined {
  if (typeof one !== "object" || typeof other !== "object") return undefined;
  if ("numerator" in one && "numerator" in other) return compareRational(one, other);
  if ("year" in one && "year" in other) return compareDates(one, other);
  return undefined;
}

/** Undefined where one is missing, or where they are of two kinds, so that neither `==` nor `!=` holds between them. */
export function isSame(one: Value | undefined, other: Value | undefined): boolean | undefined {
  if (typeof one === "object" || typeof other === "object") {
    const order = compareValues(one, other);
    return order === undefined ? undefined : order === 0;
  }
  return one === undefined || typeof one !== typeof other ? undefined : one === other;
}

/** Expressions that come to a quantity made of quantities. */
export type Arithmetic = Extract<
  RuleExpression,
  { op: "sum" | "least" | "greatest" | "difference" | "opposite" | "size" }
>;

/** Exact whatever its size; undefined only without the values it needs. */
export function calculate(op: Arithmetic["op"], values: readonly Rational[]): Rational | undefined {
  const [first, second] = values;
  if (first === undefined) return undefined;
  switch (op) {
    case "sum":
      return values.reduce(addRational);
    case "least":
      return values.reduce((one, other) => (compareRational(other, one) === -1 ? other : one));
    case "greatest":
      return values.reduce((one, other) => (compareRational(other, one) === 1 ? other : one));
    case "difference":
      return second === undefined ? undefined : subtractRational(first, second);
    case "opposite":
      return negateRational(first);
    case "size":
      return isNegativeRational(first) ? negateRational(first) : first;
  }
}
