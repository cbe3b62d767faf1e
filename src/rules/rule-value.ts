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
import { areWrittenAlike } from "../terms/index.js";
import type { RuleExpression } from "./rule-expression.js";

/** What a fact may be; what is missing or cannot be read is undefined. */
export type RuleValue = string | RenamedText | boolean | CalendarDate | Quantity;

/** A text that the record states by a former name; either name is it. */
interface RenamedText {
  readonly text: string;
  readonly formerly: string;
}

/** Quantities are exact rationals of base quanta, so that units of one dimension compare and add up exactly. */
export type Value = string | RenamedText | boolean | CalendarDate | Rational;

export function toValue(value: RuleValue | undefined): Value | undefined {
  return typeof value === "object" && "quanta" in value ? rationalOfQuantity(value) : value;
}

export function compareValues(one: Value | undefined, other: Value | undefined): -1 | 0 | 1 | undefined {
  if (typeof one !== "object" || typeof other !== "object") return undefined;
  if ("numerator" in one && "numerator" in other) return compareRational(one, other);
  if ("year" in one && "year" in other) return compareDates(one, other);
  return undefined;
}

/**
 * Undefined where one is missing, where they are of two kinds, and where they are one word but for capitals, blanks and marks, so that
 * neither `==` nor `!=` holds between them.
 */
export function isSame(one: Value | undefined, other: Value | undefined): boolean | undefined {
  if (typeof one === "string" && typeof other === "string") {
    return one === other || (areWrittenAlike(one, other) ? undefined : false);
  }
  const texts = listTexts(one);
  const others = listTexts(other);
  if (texts !== undefined && others !== undefined) return isSameText(texts, others);
  if (typeof one === "object" || typeof other === "object") {
    const order = compareValues(one, other);
    return order === undefined ? undefined : order === 0;
  }
  return one === undefined || typeof one !== typeof other ? undefined : one === other;
}

function isSameText(texts: readonly string[], others: readonly string[]): boolean | undefined {
  if (texts.some((text) => others.includes(text))) return true;
  return texts.some((text) => others.some((other) => areWrittenAlike(text, other))) ? undefined : false;
}

function listTexts(value: Value | undefined): readonly string[] | undefined {
  if (typeof value === "string") return [value];
  return typeof value === "object" && "formerly" in value ? [value.text, value.formerly] : undefined;
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
