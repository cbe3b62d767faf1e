import type { Dimension } from "../quantities/index.js";

/** What a name of a rule holds. */
export type RuleType =
  | { readonly kind: "text"; readonly words?: readonly string[] }
  | { readonly kind: "flag" }
  | { readonly kind: "date" }
  | { readonly kind: "quantity"; readonly dimension: Dimension }
  | { readonly kind: "list"; readonly fields: Readonly<Record<string, RuleType>> };

export const FLAG: RuleType = { kind: "flag" };
export const TEXT: RuleType = { kind: "text" };
export const COUNT = { kind: "quantity", dimension: "count" } as const satisfies RuleType;

export type ComparisonSign = "<" | "<=" | ">" | ">=";
export type ListOperator = "all" | "some" | "none" | "count";

/**
 * A rule as plain data, typed and closed: what JsonLogic notation leaves open has been settled.
 *
 * Shape: JSON objects told apart by `op`. `fact` reads a name, the literals carry the author's own text (a count its whole
 * number), `terms` holds at least one expression and `compare` two or three, `list` is the name of a list and `holds` is asked
 * of each of its members. At most as deep as the term that it was compiled from.
 */
export type RuleExpression =
  | { readonly op: "fact"; readonly name: string }
  | { readonly op: "text"; readonly value: string }
  | { readonly op: "flag"; readonly value: boolean }
  | { readonly op: "date"; readonly value: string }
  | { readonly op: "quantity"; readonly value: string | number; readonly dimension: Dimension }
  | { readonly op: "and" | "or"; readonly terms: readonly RuleExpression[] }
  | { readonly op: "not"; readonly term: RuleExpression }
  | {
      readonly op: "if";
      readonly when: RuleExpression;
      readonly value: RuleExpression;
      readonly otherwise: RuleExpression;
    }
  | { readonly op: "equal" | "unequal"; readonly left: RuleExpression; readonly right: RuleExpression }
  | { readonly op: "compare"; readonly sign: ComparisonSign; readonly terms: readonly RuleExpression[] }
  | { readonly op: "sum" | "least" | "greatest"; readonly terms: readonly RuleExpression[] }
  | { readonly op: "difference"; readonly left: RuleExpression; readonly right: RuleExpression }
  | { readonly op: "opposite" | "size"; readonly term: RuleExpression }
  | { readonly op: "in"; readonly item: RuleExpression; readonly list: readonly RuleExpression[] }
  | { readonly op: ListOperator; readonly list: string; readonly holds: RuleExpression };
