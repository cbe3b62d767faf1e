import type { RuleThing } from "../words/index.js";
import { inferAlike, isLiteral } from "./infer-type.js";
import { nameType } from "./name-type.js";
import { COUNT, FLAG, type RuleExpression, type RuleType, TEXT } from "./rule-expression.js";
import type { Operands, OperatorContext, RuleScope } from "./rule-scope.js";

/** Which types an operator takes, and how to say so. */
export interface AllowedTypes {
  readonly words: RuleThing;
  allows(type: RuleType): boolean;
}

/** Terms of one type. */
export interface AlikeTerms {
  readonly type: RuleType;
  readonly terms: readonly RuleExpression[];
}

/** Compiles an operand that must be of one type; there is no truthiness and no other conversion. */
export function expectType(
  operand: unknown,
  pointer: string,
  wanted: RuleType,
  { compile, scope, report }: OperatorContext,
): RuleExpression | undefined {
  const compiled = compile(operand, pointer, scope, wanted);
  if (compiled === undefined) return undefined;
  if (isAlike(compiled.type, wanted)) return compiled.expression;
  const name = nameWithoutVar(operand, scope);
  report("rule/wrong-type", pointer, { found: nameType(compiled.type), wanted: nameType(wanted), name });
  return undefined;
}

export function compileFlags(
  { values, at }: Operands,
  context: OperatorContext,
): readonly RuleExpression[] | undefined {
  return keepWhole(values.map((operand, index) => expectType(operand, at(index), FLAG, context)));
}

/**
 * Compiles operands that must agree in type and dimension. The first term whose type is sure decides, and the literals are
 * read as that type; literals alone are read as what their surroundings want (`fallback`), or else as the first of them looks.
 */
export function compileAlike(
  operands: Operands,
  context: OperatorContext,
  allowed: AllowedTypes,
  fallback?: RuleType,
): AlikeTerms | undefined {
  const { values, at } = operands;
  const inferred = inferAlike(values, context.scope);
  if (inferred === "unknown") {
    reportInner(operands, context);
    return undefined;
  }
  const type =
    inferred !== "literal" ? inferred : fallback && allowed.allows(fallback) ? fallback : typeOfLiteral(values);
  if (!allowed.allows(type)) {
    const anchor = findAnchor(values, context.scope);
    const name = nameWithoutVar(values[anchor], context.scope);
    context.report("rule/wrong-type", at(anchor), { found: nameType(type), wanted: allowed.words, name });
    return undefined;
  }
  const terms = keepWhole(values.map((operand, index) => expectType(operand, at(index), type, context)));
  return terms && { type, terms };
}

/** All terms, or nothing where one of them was refused. */
export function keepWhole<T>(terms: readonly (T | undefined)[]): readonly T[] | undefined {
  const whole = terms.filter((term) => term !== undefined);
  return whole.length < terms.length ? undefined : whole;
}

/** Reports what is wrong inside operands whose common type cannot be told; how their literals should read is open. */
function reportInner({ values, at }: Operands, { compile, scope }: OperatorContext): void {
  for (const [index, operand] of values.entries()) {
    if (!isLiteral(operand)) compile(operand, at(index), scope, undefined);
  }
}

function findAnchor(values: readonly unknown[], scope: RuleScope): number {
  const term = values.findIndex((value) => !isLiteral(value));
  return Math.max(term >= 0 ? term : values.findIndex((value) => nameWithoutVar(value, scope) !== undefined), 0);
}

/** A text that is the name of something to read here, so that `var` was probably forgotten. */
export function nameWithoutVar(operand: unknown, { types }: RuleScope): string | undefined {
  return typeof operand === "string" && types.has(operand) ? operand : undefined;
}

function typeOfLiteral([first]: readonly unknown[]): RuleType {
  return typeof first === "number" ? COUNT : typeof first === "boolean" ? FLAG : TEXT;
}

function isAlike(one: RuleType, other: RuleType): boolean {
  if (one.kind === "quantity" && other.kind === "quantity") return one.dimension === other.dimension;
  return one.kind === other.kind && one.kind !== "list";
}
