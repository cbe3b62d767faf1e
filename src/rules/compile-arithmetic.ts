import { type AllowedTypes, compileAlike } from "./compile-operands.js";
import { typeOfDifference } from "./infer-type.js";
import type { RuleExpression } from "./rule-expression.js";
import type { Operands, OperatorContext, TypedExpression } from "./rule-scope.js";

type ArithmeticOperator = "+" | "-" | "abs" | "min" | "max";

const QUANTITY: AllowedTypes = { words: "a quantity", allows: ({ kind }) => kind === "quantity" };
/** A temperature has neither a sum nor a size: twice 20 Cel is no temperature that anyone measured. */
const ADDITIVE: AllowedTypes = {
  words: "a quantity that can be added, such as a difference of temperatures",
  allows: (type) => type.kind === "quantity" && type.dimension !== "temperature",
};

/** Compiles sums, differences, sizes and extremes of quantities of one dimension. */
export function compileArithmetic(
  operator: ArithmeticOperator,
  operands: Operands,
  context: OperatorContext,
): TypedExpression | undefined {
  const isDifference = operator === "-" && operands.values.length === 2;
  const allowed = isDifference || operator === "min" || operator === "max" ? QUANTITY : ADDITIVE;
  const alike = compileAlike(operands, context, allowed, context.wanted);
  const expression = alike && writeExpression(operator, alike.terms);
  if (alike === undefined || expression === undefined) return undefined;
  return { type: isDifference ? typeOfDifference(alike.type) : alike.type, expression };
}

function writeExpression(operator: ArithmeticOperator, terms: readonly RuleExpression[]): RuleExpression | undefined {
  const [left, right] = terms;
  switch (operator) {
    case "+":
      return { op: "sum", terms };
    case "min":
      return { op: "least", terms };
    case "max":
      return { op: "greatest", terms };
    case "abs":
      return left && { op: "size", term: left };
    case "-":
      return left && (right === undefined ? { op: "opposite", term: left } : { op: "difference", left, right });
  }
}
