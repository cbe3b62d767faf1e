import { expectType, keepWhole } from "./compile-operands.js";
import { nameType, nameValue } from "./name-type.js";
import { COUNT, FLAG, type ListOperator, type RuleExpression } from "./rule-expression.js";
import type { Operands, OperatorContext, TypedExpression } from "./rule-scope.js";

/** Compiles `all`, `some`, `none` or `count`: a name that holds a list, and a predicate in which `var` names a member's field. */
export function compileListOperator(
  operator: ListOperator,
  { values, at }: Operands,
  context: OperatorContext,
): TypedExpression | undefined {
  const list = context.compile(values[0], at(0), context.scope, undefined);
  // Why: without the list nobody knows which fields its members have, so the predicate is not looked at.
  if (list === undefined) return undefined;
  if (list.type.kind !== "list" || list.expression.op !== "fact") {
    context.report("rule/wrong-type", at(0), { found: nameType(list.type), wanted: "a list" });
    return undefined;
  }
  const scope = { ...context.scope, types: new Map(Object.entries(list.type.fields)) };
  const holds = expectType(values[1], at(1), FLAG, { ...context, scope });
  if (holds === undefined) return undefined;
  const type = operator === "count" ? COUNT : FLAG;
  return { type, expression: { op: operator, list: list.expression.name, holds } };
}

/** Compiles `in`: a text, a date or a quantity that is one of the literals in a list; never a part of a text. */
export function compileIn({ values, at }: Operands, context: OperatorContext): RuleExpression | undefined {
  const [item, list] = values;
  const compiled = context.compile(item, at(0), context.scope, undefined);
  if (!Array.isArray(list) || list.length === 0) {
    context.report("rule/wrong-type", at(1), { found: nameValue(list), wanted: "a list of values" });
    return undefined;
  }
  if (compiled === undefined) return undefined;
  const { type, expression } = compiled;
  if (type.kind === "flag" || type.kind === "list") {
    context.report("rule/wrong-type", at(0), { found: nameType(type), wanted: "a text, a date or a quantity" });
    return undefined;
  }
  const literals = keepWhole(
    [...list].map((value: unknown, index) => {
      const pointer = `${at(1)}/${index}`;
      if (typeof value !== "object" || value === null) return expectType(value, pointer, type, context);
      context.report("rule/wrong-type", pointer, { found: nameValue(value), wanted: "a plain value" });
      return undefined;
    }),
  );
  return literals && { op: "in", item: expression, list: literals };
}
