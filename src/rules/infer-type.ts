import { isOperator, type Operator } from "./operators.js";
import { COUNT, FLAG, type RuleType } from "./rule-expression.js";
import type { RuleScope } from "./rule-scope.js";

/**
 * What a term comes to, before anything is checked: its type, `literal` where only literals decide it, so that the terms
 * beside it say how to read them, or `unknown` where something in it is wrong and will be reported when it is compiled.
 */
export type InferredType = RuleType | "literal" | "unknown";

/** A text, a number, true or false: what stands for itself. */
export function isLiteral(term: unknown): term is string | number | boolean {
  return typeof term === "string" || typeof term === "number" || typeof term === "boolean";
}

/** The type of a term that is not compiled yet. */
function inferType(term: unknown, { types }: Pick<RuleScope, "types">): InferredType {
  if (isLiteral(term)) return "literal";
  if (typeof term !== "object" || term === null || Array.isArray(term)) return "unknown";
  const [first, ...others] = Object.entries(term);
  if (first === undefined || others.length > 0) return "unknown";
  const [operator, operand] = first;
  if (operator === "var") return (typeof operand === "string" ? types.get(operand) : undefined) ?? "unknown";
  if (!isOperator(operator)) return "unknown";
  return inferOperator(operator, Array.isArray(operand) ? operand : [operand], { types });
}

/** The first type that is sure among terms that should agree. */
export function inferAlike(terms: readonly unknown[], scope: Pick<RuleScope, "types">): InferredType {
  let isKnown = true;
  for (const term of terms) {
    const type = inferType(term, scope);
    if (typeof type === "object") return type;
    if (type === "unknown") isKnown = false;
  }
  return isKnown ? "literal" : "unknown";
}

/** The values of an `if`, without its conditions. */
export function isValueOfIf(index: number, count: number): boolean {
  return index % 2 === 1 || index === count - 1;
}

function inferOperator(
  operator: Operator,
  operands: readonly unknown[],
  scope: Pick<RuleScope, "types">,
): InferredType {
  switch (operator) {
    case "count":
      return COUNT;
    case "if":
      return inferAlike(
        operands.filter((_, index) => isValueOfIf(index, operands.length)),
        scope,
      );
    case "+":
    case "abs":
    case "min":
    case "max":
      return inferAlike(operands, scope);
    case "-": {
      const type = inferAlike(operands, scope);
      return typeof type === "object" && operands.length > 1 ? typeOfDifference(type) : type;
    }
    default:
      return FLAG;
  }
}

/** Two temperatures differ by a temperature difference; anything else by its own kind. */
export function typeOfDifference(type: RuleType): RuleType {
  const isTemperature = type.kind === "quantity" && type.dimension === "temperature";
  return isTemperature ? { kind: "quantity", dimension: "temperature-difference" } : type;
}
