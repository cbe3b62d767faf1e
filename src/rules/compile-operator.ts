import { compileArithmetic } from "./compile-arithmetic.js";
import { compileIn, compileListOperator } from "./compile-list-operator.js";
import { type AllowedTypes, compileAlike, compileFlags } from "./compile-operands.js";
import { isValueOfIf } from "./infer-type.js";
import { OPERATORS, type Operator } from "./operators.js";
import { FLAG, type RuleExpression } from "./rule-expression.js";
import type { Operands, OperatorContext, TypedExpression } from "./rule-scope.js";

const SINGLE: AllowedTypes = {
  words: "a text, true or false, a date or a quantity",
  allows: ({ kind }) => kind !== "list",
};
const SIZED: AllowedTypes = {
  words: "a quantity or a date",
  allows: ({ kind }) => kind === "quantity" || kind === "date",
};

/** Compiles one operator with its operands; `pointer` is that of the value that holds them. */
export function compileOperator(
  operator: Operator,
  operands: Operands,
  pointer: string,
  context: OperatorContext,
): TypedExpression | undefined {
  const limits: { readonly least: number; readonly most?: number } = OPERATORS[operator];
  const { least, most } = limits;
  const count = operands.values.length;
  const isUnpaired = operator === "if" && count % 2 === 0;
  if (count >= least && count <= (most ?? count) && !isUnpaired) return compileBody(operator, operands, context);
  context.report("rule/operand-count", pointer, { operator, count, least, most });
  return undefined;
}

function compileBody(operator: Operator, operands: Operands, context: OperatorContext): TypedExpression | undefined {
  switch (operator) {
    case "and":
    case "or":
    case "!":
      return asFlag(compileLogic(operator, operands, context));
    case "if":
      return compileIf(operands, context);
    case "==":
    case "!=":
      return asFlag(compileEquality(operator, operands, context));
    case "<":
    case "<=":
    case ">":
    case ">=": {
      const alike = compileAlike(operands, context, SIZED);
      return asFlag(alike && { op: "compare", sign: operator, terms: alike.terms });
    }
    case "in":
      return asFlag(compileIn(operands, context));
    case "all":
    case "some":
    case "none":
    case "count":
      return compileListOperator(operator, operands, context);
    default:
      return compileArithmetic(operator, operands, context);
  }
}

function asFlag(expression: RuleExpression | undefined): TypedExpression | undefined {
  return expression && { type: FLAG, expression };
}

function compileLogic(
  operator: "and" | "or" | "!",
  operands: Operands,
  context: OperatorContext,
): RuleExpression | undefined {
  const terms = compileFlags(operands, context);
  if (terms === undefined) return undefined;
  if (operator !== "!") return { op: operator, terms };
  const [term] = terms;
  return term && { op: "not", term };
}

function compileEquality(
  operator: "==" | "!=",
  operands: Operands,
  context: OperatorContext,
): RuleExpression | undefined {
  const [left, right] = compileAlike(operands, context, SINGLE)?.terms ?? [];
  return left && right && { op: operator === "==" ? "equal" : "unequal", left, right };
}

/** Pairs of a condition and a value, then the last value; a chain becomes one `if` inside the other. */
function compileIf({ values, at }: Operands, context: OperatorContext): TypedExpression | undefined {
  const places = values.map((_, index) => index);
  const pick = (indices: readonly number[]): Operands => ({
    values: indices.map((index) => values[index]),
    at: (position) => at(indices[position] ?? 0),
  });
  const conditions = compileFlags(pick(places.filter((index) => !isValueOfIf(index, values.length))), context);
  const branches = compileAlike(
    pick(places.filter((index) => isValueOfIf(index, values.length))),
    context,
    SINGLE,
    context.wanted,
  );
  const last = branches?.terms.at(-1);
  if (conditions === undefined || branches === undefined || last === undefined) return undefined;
  const expression = conditions.reduceRight<RuleExpression>(
    (otherwise, when, index) => ({ op: "if", when, value: branches.terms[index] ?? last, otherwise }),
    last,
  );
  return { type: branches.type, expression };
}
