import { makeRational, parseDate, parseQuantity, type Rational, rationalOfQuantity } from "../quantities/index.js";
import type { ComparisonSign, ListOperator, RuleExpression } from "./rule-expression.js";
import {
  type Arithmetic,
  calculate,
  compareValues,
  isSame,
  type RuleValue,
  toValue,
  type Value,
} from "./rule-value.js";

/** Where a rule reads its names. */
export interface RuleFacts {
  read(name: string): RuleValue | undefined;
  /** The members of a list; undefined where it is missing or empty. */
  members(name: string): readonly RuleFacts[] | undefined;
}

/** True, false, or undefined where something that is missing leaves it open. */
export type RuleJudge = (facts: RuleFacts) => boolean | undefined;

type Reader = (facts: RuleFacts) => Value | undefined;

/** Makes a judge of a compiled rule: closures, no code made from text. */
export function prepareRule(expression: RuleExpression): RuleJudge {
  return asJudge(prepareReader(expression));
}

function asJudge(read: Reader): RuleJudge {
  return (facts) => {
    const value = read(facts);
    return typeof value === "boolean" ? value : undefined;
  };
}

function prepareReader(expression: RuleExpression): Reader {
  switch (expression.op) {
    case "fact": {
      const { name } = expression;
      return (facts) => toValue(facts.read(name));
    }
    case "text":
    case "flag": {
      const { value } = expression;
      return () => value;
    }
    case "date": {
      const date = parseDate(expression.value);
      return () => date;
    }
    case "quantity": {
      const parsed = parseQuantity(expression.value, expression.dimension);
      const value = parsed.ok ? rationalOfQuantity(parsed.quantity) : undefined;
      return () => value;
    }
    case "and":
      return joinFlags(expression.terms, false);
    case "or":
      return joinFlags(expression.terms, true);
    case "not": {
      const judge = prepareRule(expression.term);
      return (facts) => invert(judge(facts));
    }
    case "if":
      return prepareIf(expression.when, expression.value, expression.otherwise);
    case "in":
      return prepareIn(expression.item, expression.list);
    case "equal":
    case "unequal": {
      const same = prepareEqual(expression.left, expression.right);
      return expression.op === "equal" ? same : (facts) => invert(same(facts));
    }
    case "compare":
      return prepareComparison(expression.sign, expression.terms);
    case "all":
    case "some":
    case "none":
    case "count":
      return prepareList(expression.op, expression.list, prepareRule(expression.holds));
    default:
      return prepareArithmetic(expression);
  }
}

function invert(value: boolean | undefined): boolean | undefined {
  return value === undefined ? undefined : !value;
}

/** `and` is false as soon as one term is, `or` true as soon as one is, whatever is missing beside it. */
function joinFlags(terms: readonly RuleExpression[], decisive: boolean): Reader {
  const judges = terms.map(prepareRule);
  return (facts) => {
    let open = false;
    for (const judge of judges) {
      const value = judge(facts);
      if (value === decisive) return decisive;
      if (value === undefined) open = true;
    }
    return open ? undefined : !decisive;
  };
}

/** An open condition decides nothing, unless both branches come to the same. */
function prepareIf(when: RuleExpression, then: RuleExpression, otherwise: RuleExpression): Reader {
  const condition = prepareRule(when);
  const yes = prepareReader(then);
  const no = prepareReader(otherwise);
  return (facts) => {
    const state = condition(facts);
    if (state !== undefined) return state ? yes(facts) : no(facts);
    const one = yes(facts);
    const other = no(facts);
    return isSame(one, other) === true ? one : undefined;
  };
}

function prepareEqual(left: RuleExpression, right: RuleExpression): RuleJudge {
  const one = prepareReader(left);
  const other = prepareReader(right);
  return (facts) => isSame(one(facts), other(facts));
}

function prepareIn(item: RuleExpression, list: readonly RuleExpression[]): Reader {
  const read = prepareReader(item);
  const values = list.map(prepareReader);
  return (facts) => {
    const value = read(facts);
    const states = values.map((literal) => isSame(value, literal(facts)));
    return states.includes(true) ? true : states.includes(undefined) ? undefined : false;
  };
}

function prepareComparison(sign: ComparisonSign, terms: readonly RuleExpression[]): Reader {
  const readers = terms.map(prepareReader);
  const holds = (order: -1 | 0 | 1) =>
    sign === "<" ? order === -1 : sign === "<=" ? order !== 1 : sign === ">" ? order === 1 : order !== -1;
  return (facts) => {
    const values = readers.map((read) => read(facts));
    let open = false;
    for (let index = 1; index < values.length; index += 1) {
      const order = compareValues(values[index - 1], values[index]);
      if (order === undefined) open = true;
      else if (!holds(order)) return false;
    }
    return open ? undefined : true;
  };
}

/** A list that is missing leaves everything open; a member that is open leaves open what the others do not settle. */
function prepareList(operator: ListOperator, list: string, holds: RuleJudge): Reader {
  return (facts) => {
    const states = facts.members(list)?.map(holds);
    if (states === undefined || states.length === 0) return undefined;
    const isOpen = states.includes(undefined);
    switch (operator) {
      case "all":
        return states.includes(false) ? false : isOpen ? undefined : true;
      case "some":
        return states.includes(true) ? true : isOpen ? undefined : false;
      case "none":
        return states.includes(true) ? false : isOpen ? undefined : true;
      case "count":
        return isOpen ? undefined : makeRational(BigInt(states.filter((state) => state === true).length));
    }
  };
}

function prepareArithmetic(expression: Arithmetic): Reader {
  const terms =
    "terms" in expression
      ? expression.terms
      : "term" in expression
        ? [expression.term]
        : [expression.left, expression.right];
  const readers = terms.map(prepareReader);
  const { op } = expression;
  return (facts) => {
    const values: Rational[] = [];
    for (const read of readers) {
      const value = read(facts);
      if (typeof value !== "object" || !("numerator" in value)) return undefined;
      values.push(value);
    }
    return calculate(op, values);
  };
}
