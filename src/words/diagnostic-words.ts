import type { LimitWords } from "./assessment-words.js";
import type { DiagnosticShapes } from "./diagnostic-shapes.js";
import type { PartOfPolicy } from "./part-of-policy.js";
import type { SchemaText } from "./schema-texts.js";

/** A stable word for one kind of mistake, `room/kebab-words`. */
export type DiagnosticCode = keyof DiagnosticShapes;

/** What must be given to report a code. */
export type ParamsOf<C extends DiagnosticCode> = ParamsByCode[C];

type ParamsByCode = { readonly [C in DiagnosticCode]: DiagnosticShapes[C]["params"] };

/**
 * What one code says. Each text is lower case without a final stop, with the author's own words in backticks.
 * `wanted` says what would have been accepted, `mend` what to do; either may have nothing to say for some params.
 */
export interface DiagnosticText<P> {
  message(params: P): string;
  wanted?(params: P): string | undefined;
  mend?(params: P): string | undefined;
}

/** Every code with exactly the texts that it has. */
export type DiagnosticTexts = {
  readonly [C in DiagnosticCode]: { message(params: ParamsByCode[C]): string } & {
    [Part in DiagnosticShapes[C]["parts"]]: (params: ParamsByCode[C]) => string | undefined;
  };
};

/** The same, to be read by code. */
export type TextsByCode = { readonly [C in DiagnosticCode]: DiagnosticText<ParamsByCode[C]> };

/** Everything that is said about the text of a policy. */
export interface DiagnosticWords {
  readonly diagnostics: DiagnosticTexts;
  readonly policyText: PolicyTextWords;
  /** What differs from a parent, in words that start a sentence. */
  partOfPolicy(part: PartOfPolicy): string;
  readonly limits: LimitWords;
  readonly parents: ParentWords;
  /** What stands at another place that belongs to the same mistake. */
  readonly related: Readonly<Record<"first" | "otherOne" | "otherCase" | "parents", string>>;
}

/** Why a parent cannot be had. */
export interface ParentWords {
  readonly notFromOwnFolder: string;
  readonly leavesOwnFolder: string;
  readonly notGiven: string;
}

/** What a YAML value is, as its author may call it. */
export type ValueType = "text" | "number" | "flag" | "nothing" | "list" | "map";

/** Words for what stands in a policy text and for what is wanted there. */
export interface PolicyTextWords {
  /** Of a value that was found. */
  readonly found: Readonly<Record<ValueType | "tab", string>>;
  /** Of the values that a type of the schema takes. */
  readonly types: Readonly<
    Record<"string" | "number" | "integer" | "boolean" | "null" | "array" | "object" | "any", string>
  >;
  /** Titles and first sentences of the schema; `as-written` where they are said as the schema has them. */
  readonly schema: Readonly<Record<SchemaText, string>> | "as-written";
  suchAs(sentence: string, example: string): string;
  oneOf(words: readonly string[]): string;
  readonly keyAndValue: string;
  readonly quantityWithPoint: string;
  membersWithPoints(count: number): string;
  readonly thePolicy: string;
  /** `number` from 1. */
  member(number: number, list: string): string;
  readonly hints: HintWords;
}

/** What to do about a value of the wrong type or form. */
export interface HintWords {
  readonly beginning: string;
  writeThis(text: string): string;
  unitBehind(example: string): string;
  withoutQuotes(value: string): string;
  asList(value: string): string;
  readonly hyphens: string;
  writtenLike(example: string): string;
}
