import type { ComparisonSign, RuleExpression } from "./rule-expression.js";

const SIGNS: Readonly<Record<ComparisonSign, readonly [string, string]>> = {
  "<": ["below", "before"],
  "<=": ["at most", "not after"],
  ">": ["above", "after"],
  ">=": ["at least", "not before"],
};
const LISTS = {
  all: "for every member of",
  some: "for at least one member of",
  none: "for no member of",
  count: "the number of members of",
} as const;

/** How tightly words hold together: what holds less tightly than its surroundings need stands in brackets. */
const WHOLE = 0;
const JOINED = 1;
const RELATION = 2;
const SUM = 3;
const SINGLE = 4;

type Comparison = Extract<RuleExpression, { op: "compare" }>;

/** A rule in words: "role is not training, or shift is white". A part that could be read in two ways stands in brackets. */
export function describeRule(expression: RuleExpression): string {
  switch (expression.op) {
    case "fact":
      return expression.name;
    case "text":
      return /^[\p{L}\d][\p{L}\d_-]*$/u.test(expression.value) ? expression.value : `\`${expression.value}\``;
    case "date":
    case "flag":
    case "quantity":
      return String(expression.value);
    case "and":
      return joinParts(expression.terms, ", and ", RELATION);
    case "or":
      return joinParts(expression.terms, ", or ", RELATION);
    case "not":
      return `not ${describePart(expression.term, SINGLE)}`;
    case "if": {
      const { when, value, otherwise } = expression;
      return `${describePart(value, RELATION)} if ${describePart(when, RELATION)}, else ${describePart(otherwise, RELATION)}`;
    }
    case "equal":
      return `${describePart(expression.left, SUM)} is ${describePart(expression.right, SUM)}`;
    case "unequal":
      return `${describePart(expression.left, SUM)} is not ${describePart(expression.right, SUM)}`;
    case "compare":
      return describeComparison(expression);
    case "sum":
      return joinParts(expression.terms, " + ", SINGLE);
    case "difference":
      return `${describePart(expression.left, SINGLE)} - ${describePart(expression.right, SINGLE)}`;
    case "least":
      return `the least of (${joinParts(expression.terms, ", ", SUM)})`;
    case "greatest":
      return `the greatest of (${joinParts(expression.terms, ", ", SUM)})`;
    case "opposite":
      return `-${describePart(expression.term, SINGLE)}`;
    case "size":
      return `the size of ${describePart(expression.term, SINGLE)}`;
    case "in":
      return `${describePart(expression.item, SUM)} is one of (${joinParts(expression.list, ", ", SUM)})`;
    default:
      return `${LISTS[expression.op]} ${expression.list} (${describeRule(expression.holds)})`;
  }
}

function joinParts(terms: readonly RuleExpression[], between: string, needed: number): string {
  const [only, ...others] = terms;
  const isAlone = only !== undefined && others.length === 0;
  return isAlone ? describeRule(only) : terms.map((term) => describePart(term, needed)).join(between);
}

/** `a < b < c` becomes "a is below b, and b is below c". */
function describeComparison({ sign, terms }: Comparison): string {
  const [ofQuantities, ofDates] = SIGNS[sign];
  const words = terms.some(({ op }) => op === "date") ? ofDates : ofQuantities;
  const parts = terms.map((term) => describePart(term, SUM));
  return parts
    .slice(1)
    .map((right, index) => `${parts[index]} is ${words} ${right}`)
    .join(", and ");
}

function describePart(expression: RuleExpression, needed: number): string {
  const words = describeRule(expression);
  return findTightness(expression) < needed ? `(${words})` : words;
}

function findTightness(expression: RuleExpression): number {
  switch (expression.op) {
    case "if":
      return WHOLE;
    case "and":
    case "or":
      return expression.terms.length === 1 ? tightnessOfOnly(expression.terms) : JOINED;
    case "compare":
      return expression.terms.length > 2 ? JOINED : RELATION;
    case "not":
    case "equal":
    case "unequal":
    case "in":
    case "all":
    case "some":
    case "none":
      return RELATION;
    case "sum":
    case "difference":
      return SUM;
    default:
      return SINGLE;
  }
}

function tightnessOfOnly([only]: readonly RuleExpression[]): number {
  return only === undefined ? SINGLE : findTightness(only);
}
