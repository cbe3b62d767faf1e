import { isLiteral } from "./infer-type.js";
import type { ListOperator } from "./rule-expression.js";
import type { RuleScope } from "./rule-scope.js";

/** A part of a rule that comes to the same in every record. */
export interface ConstantTerm {
  /** A JSON Pointer below the rule's term. */
  readonly pointer: string;
  /** The text that stands in it, and the name that was probably meant to be read by `var`. */
  readonly literal: string | undefined;
  readonly name: string | undefined;
}

const COMPARISONS: ReadonlySet<string> = new Set(["==", "!=", "<", "<=", ">", ">=", "in"]);
const LIST_OPERATORS: ReadonlySet<string> = new Set<ListOperator>(["all", "some", "none", "count"]);

/** The comparisons of a compiled rule that read no name, or the whole rule where nothing in it does. */
export function findConstants(term: unknown, scope: RuleScope): readonly ConstantTerm[] {
  const found = findComparisons(term, "", scope);
  return found.length > 0 || readsName(term) ? found : [describeConstant(term, "", scope)];
}

function findComparisons(term: unknown, pointer: string, scope: RuleScope): readonly ConstantTerm[] {
  if (Array.isArray(term)) return term.flatMap((one, index) => findComparisons(one, `${pointer}/${index}`, scope));
  if (typeof term !== "object" || term === null) return [];
  return Object.entries(term).flatMap(([operator, operands]) => {
    const at = `${pointer}/${operator}`;
    if (COMPARISONS.has(operator) && !readsName(operands)) return [describeConstant(operands, at, scope)];
    if (!LIST_OPERATORS.has(operator) || !Array.isArray(operands)) return findComparisons(operands, at, scope);
    return findComparisons(operands[1], `${at}/1`, scopeOfMembers(operands[0], scope));
  });
}

/** In a list operator `var` names the fields of a member. */
function scopeOfMembers(list: unknown, scope: RuleScope): RuleScope {
  const [name] = typeof list === "object" && list !== null ? Object.values(list) : [];
  const type = typeof name === "string" ? scope.types.get(name) : undefined;
  return type?.kind === "list" ? { ...scope, types: new Map(Object.entries(type.fields)) } : scope;
}

function readsName(term: unknown): boolean {
  if (typeof term !== "object" || term === null) return false;
  if (Array.isArray(term)) return term.some(readsName);
  return Object.entries(term).some(([operator, operands]) => operator === "var" || readsName(operands));
}

function describeConstant(term: unknown, pointer: string, scope: RuleScope): ConstantTerm {
  const texts = listTexts(term);
  const known = [...scope.types.keys()];
  const exact = texts.find((text) => scope.types.has(text));
  const literal = exact ?? texts.find((text) => scope.nearest(text, known) !== undefined);
  const name = exact ?? (literal === undefined ? undefined : scope.nearest(literal, known));
  return { pointer, literal, name };
}

function listTexts(term: unknown): readonly string[] {
  if (isLiteral(term)) return typeof term === "string" ? [term] : [];
  return typeof term === "object" && term !== null ? Object.values(term).flatMap(listTexts) : [];
}
