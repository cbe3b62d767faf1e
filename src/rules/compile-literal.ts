import { mendQuantity, parseDate, parseQuantity, unitSymbolsOf } from "../quantities/index.js";
import { writeVariable } from "../words/index.js";
import { COUNT, FLAG, type RuleType, TEXT } from "./rule-expression.js";
import type { ReportRule, RuleScope, TypedExpression } from "./rule-scope.js";

type Literal = string | number | boolean;

/** Reads a literal as the type that is wanted of it: `10 bar` is a text beside texts and a pressure beside pressures. */
export function compileLiteral(
  literal: Literal,
  pointer: string,
  scope: RuleScope,
  wanted: RuleType | undefined,
  report: ReportRule,
): TypedExpression | undefined {
  if (wanted?.kind === "quantity") return compileQuantity(literal, pointer, wanted, scope, report);
  if (wanted?.kind === "date" && typeof literal === "string") {
    if (parseDate(literal) !== undefined) return { type: wanted, expression: { op: "date", value: literal } };
    report("plan/bad-date", pointer, { found: literal });
    return undefined;
  }
  if (typeof literal === "boolean") return { type: FLAG, expression: { op: "flag", value: literal } };
  if (typeof literal === "number") return compileQuantity(literal, pointer, COUNT, scope, report);
  if (wanted?.kind === "text" && wanted.words?.includes(literal) === false) {
    const { words } = wanted;
    report("rule/unknown-word", pointer, { word: literal, known: words, nearest: scope.nearest(literal, words) });
    return undefined;
  }
  return { type: TEXT, expression: { op: "text", value: literal } };
}

function compileQuantity(
  literal: Literal,
  pointer: string,
  wanted: Extract<RuleType, { kind: "quantity" }>,
  scope: RuleScope,
  report: ReportRule,
): TypedExpression | undefined {
  const { dimension } = wanted;
  const parsed = parseQuantity(literal, dimension);
  if (parsed.ok && typeof literal !== "boolean") {
    return { type: wanted, expression: { op: "quantity", value: literal, dimension } };
  }
  report("plan/bad-quantity", pointer, {
    found: String(literal),
    fault: parsed.ok ? "unreadable" : parsed.fault,
    dimension,
    units: unitSymbolsOf(dimension),
    mend: parsed.ok ? undefined : (mendQuantity(literal, dimension) ?? writeForgotten(literal, scope)),
  });
  return undefined;
}

function writeForgotten(literal: Literal, { types }: RuleScope): string | undefined {
  return typeof literal === "string" && types.has(literal) ? writeVariable(literal) : undefined;
}
