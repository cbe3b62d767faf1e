import type { RuleExpression } from "./rule-expression.js";

/** The names that a rule reads, each once, in the order of the writing: facts, slots and lists, not the fields of members. */
export function listRuleNames(expression: RuleExpression): readonly string[] {
  return [...new Set(collectNames(expression))];
}

function collectNames(expression: RuleExpression): readonly string[] {
  switch (expression.op) {
    case "fact":
      return [expression.name];
    case "text":
    case "date":
    case "flag":
    case "quantity":
      return [];
    case "not":
    case "opposite":
    case "size":
      return collectNames(expression.term);
    case "if":
      return [expression.when, expression.value, expression.otherwise].flatMap(collectNames);
    case "equal":
    case "unequal":
    case "difference":
      return [expression.left, expression.right].flatMap(collectNames);
    case "in":
      return collectNames(expression.item);
    case "all":
    case "some":
    case "none":
    case "count":
      return [expression.list];
    default:
      return expression.terms.flatMap(collectNames);
  }
}
