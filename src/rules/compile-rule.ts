import { compileLiteral } from "./compile-literal.js";
import { nameWithoutVar } from "./compile-operands.js";
import { compileOperator } from "./compile-operator.js";
import { isLiteral } from "./infer-type.js";
import { nameType, nameValue } from "./name-type.js";
import { findMeantOperator, isLeftOut, isOperator, OPERATOR_NAMES } from "./operators.js";
import { FLAG, type RuleExpression, type RuleType } from "./rule-expression.js";
import type { CompileTerm, ReportRule, RuleScope, TypedExpression } from "./rule-scope.js";

/** Levels of JSON, lists included; about half as many operators inside each other. */
const MOST_DEPTH = 64;
const MOST_TERMS = 10_000;

/**
 * Compiles a rule in JsonLogic notation into a typed expression that is true, false or open. Every mistake is reported;
 * undefined comes back where there was at least one.
 *
 * Closed: only the operators of the list, exactly one key in an operator's object, names without defaults or computed paths,
 * flags where truth is asked for, operands that agree in type and dimension. Adds `rule/*`, and `plan/bad-quantity` and
 * `plan/bad-date` for literals.
 */
export function compileRule(term: unknown, scope: RuleScope, report: ReportRule): RuleExpression | undefined {
  if (countTerms(term, MOST_DEPTH) > MOST_TERMS) {
    report("rule/too-large", "", { depth: MOST_DEPTH, terms: MOST_TERMS });
    return undefined;
  }
  let faults = 0;
  const reportCounted: ReportRule = (code, pointer, params) => {
    faults += 1;
    report(code, pointer, params);
  };
  const compile: CompileTerm = (value, pointer, names, wanted) =>
    compileTerm(value, pointer, names, wanted, reportCounted, compile);
  const compiled = compile(term, "", scope, FLAG);
  if (compiled !== undefined && compiled.type.kind !== "flag") {
    const name = nameWithoutVar(term, scope);
    reportCounted("rule/wrong-type", "", { found: nameType(compiled.type), wanted: nameType(FLAG), name });
  }
  // Invariant: a rule is never dropped in silence, nor kept with a mistake in it.
  if (compiled === undefined && faults === 0) throw new Error("a rule was refused without a reason");
  return faults > 0 ? undefined : compiled?.expression;
}

function compileTerm(
  term: unknown,
  pointer: string,
  scope: RuleScope,
  wanted: RuleType | undefined,
  report: ReportRule,
  compile: CompileTerm,
): TypedExpression | undefined {
  if (isLiteral(term)) return compileLiteral(term, pointer, scope, wanted, report);
  if (typeof term !== "object" || term === null || Array.isArray(term)) {
    report("rule/no-term", pointer, { found: nameValue(term) });
    return undefined;
  }
  const entries = Object.entries(term);
  const [first] = entries;
  if (first === undefined || entries.length > 1) {
    report("rule/one-operator", pointer, { operators: entries.map(([key]) => key) });
    return undefined;
  }
  const [operator, operand] = first;
  const at = `${pointer}/${operator.replaceAll("~", "~0").replaceAll("/", "~1")}`;
  if (operator === "var") return compileName(operand, at, scope, report);
  if (!isOperator(operator)) {
    reportOperator(operator, at, scope, report);
    return undefined;
  }
  const isList = Array.isArray(operand);
  const operands = {
    values: isList ? [...operand] : [operand],
    at: (index: number) => (isList ? `${at}/${index}` : at),
  };
  return compileOperator(operator, operands, at, { scope, wanted, report, compile });
}

function reportOperator(operator: string, pointer: string, scope: RuleScope, report: ReportRule): void {
  report("rule/unknown-operator", pointer, {
    operator,
    known: OPERATOR_NAMES,
    origin: isLeftOut(operator) ? "JsonLogic" : undefined,
    nearest: findMeantOperator(operator, (word, known) => scope.nearest(word, known)),
  });
}

/** A name as text: no default, no list, no computed path. */
function compileName(
  name: unknown,
  pointer: string,
  scope: RuleScope,
  report: ReportRule,
): TypedExpression | undefined {
  if (typeof name !== "string" || name === "") {
    report("rule/no-name", pointer, { found: nameValue(name) });
    return undefined;
  }
  const type = scope.types.get(name);
  if (type === undefined) {
    const known = [...scope.types.keys()];
    report("rule/unknown-name", pointer, { name, known, nearest: scope.nearest(name, known) });
    return undefined;
  }
  return { type, expression: { op: "fact", name } };
}

/** How many terms a value holds; more than any limit where it nests deeper than `depth`. */
function countTerms(value: unknown, depth: number): number {
  if (typeof value !== "object" || value === null) return 1;
  if (depth === 0) return MOST_TERMS + 1;
  let count = 1;
  for (const member of Array.isArray(value) ? value : Object.values(value)) {
    count += countTerms(member, depth - 1);
    if (count > MOST_TERMS) break;
  }
  return count;
}
