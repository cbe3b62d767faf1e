import { ENGLISH_ASSESSMENTS, type RuleWords } from "../words/index.js";
import type { RuleExpression } from "./rule-expression.js";

/** How tightly words hold together: what holds less tightly than its surroundings need stands in brackets. */
const WHOLE = 0;
const JOINED = 1;
const RELATION = 2;
const SUM = 3;
const SINGLE = 4;

type Comparison = Extract<RuleExpression, { op: "compare" }>;

/** A rule in words: "role is not training, or shift is white". A part that could be read in two ways stands in brackets. */
export function describeRule(expression: RuleExpression, words: RuleWords = ENGLISH_ASSESSMENTS.rules): string {
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
      return joinParts(expression.terms, words.and, RELATION, words);
    case "or":
      return joinParts(expression.terms, words.or, RELATION, words);
    case "not":
      return words.not(describePart(expression.term, SINGLE, words));
    case "if": {
      const { when, value, otherwise } = expression;
      const [chosen, condition, other] = [value, when, otherwise].map((term) => describePart(term, RELATION, words));
      return words.choose(chosen ?? "", condition ?? "", other ?? "");
    }
    case "equal":
      return words.equal(describePart(expression.left, SUM, words), describePart(expression.right, SUM, words));
    case "unequal":
      return words.unequal(describePart(expression.left, SUM, words), describePart(expression.right, SUM, words));
    case "compare":
      return describeComparison(expression, words);
    case "sum":
      return joinParts(expression.terms, " + ", SINGLE, words);
    case "difference":
      return `${describePart(expression.left, SINGLE, words)} - ${describePart(expression.right, SINGLE, words)}`;
    case "least":
      return words.least(joinParts(expression.terms, ", ", SUM, words));
    case "greatest":
      return words.greatest(joinParts(expression.terms, ", ", SUM, words));
    case "opposite":
      return `-${describePart(expression.term, SINGLE, words)}`;
    case "size":
      return words.size(describePart(expression.term, SINGLE, words));
    case "in":
      return words.oneOf(describePart(expression.item, SUM, words), joinParts(expression.list, ", ", SUM, words));
    default:
      return words.lists[expression.op](expression.list, describeRule(expression.holds, words));
  }
}

function joinParts(terms: readonly RuleExpression[], between: string, needed: number, words: RuleWords): string {
  const [only, ...others] = terms;
  const isAlone = only !== undefined && others.length === 0;
  return isAlone ? describeRule(only, words) : terms.map((term) => describePart(term, needed, words)).join(between);
}

/** `a < b < c` becomes "a is below b, and b is below c". */
function describeComparison({ sign, terms }: Comparison, words: RuleWords): string {
  const [ofQuantities, ofDates] = words.signs[sign];
  const said = terms.some(({ op }) => op === "date") ? ofDates : ofQuantities;
  const parts = terms.map((term) => describePart(term, SUM, words));
  return parts
    .slice(1)
    .map((right, index) => words.compare(parts[index] ?? "", said, right))
    .join(words.and);
}

function describePart(expression: RuleExpression, needed: number, words: RuleWords): string {
  const said = describeRule(expression, words);
  return findTightness(expression) < needed ? `(${said})` : said;
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
