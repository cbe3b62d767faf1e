import type { DiagnosticCode, ParamsOf } from "../diagnostics/index.js";
import type { RuleExpression, RuleType } from "./rule-expression.js";

/** Takes a mistake in a rule; `pointer` is a JSON Pointer below the rule's term. */
export type ReportRule = <C extends DiagnosticCode>(code: C, pointer: string, params: ParamsOf<C>) => void;

/** The names that `var` may take where a term stands, and how to find the one that was meant. */
export interface RuleScope {
  readonly types: ReadonlyMap<string, RuleType>;
  nearest(word: string, known: readonly string[]): string | undefined;
}

export interface TypedExpression {
  readonly type: RuleType;
  readonly expression: RuleExpression;
}

/** Compiles one term; `wanted` gives the type that a literal is read as. Undefined where a mistake was reported. */
export type CompileTerm = (
  term: unknown,
  pointer: string,
  scope: RuleScope,
  wanted: RuleType | undefined,
) => TypedExpression | undefined;

/** The operands of one operator, and where each stands. */
export interface Operands {
  readonly values: readonly unknown[];
  at(index: number): string;
}

/** What an operator is compiled with; `wanted` is the type that its surroundings ask for. */
export interface OperatorContext {
  readonly scope: RuleScope;
  readonly wanted: RuleType | undefined;
  readonly report: ReportRule;
  readonly compile: CompileTerm;
}
