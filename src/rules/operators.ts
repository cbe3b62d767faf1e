/** How many operands each operator takes, both ends included; without `most` there is no upper end. */
export const OPERATORS = {
  and: { least: 1 },
  or: { least: 1 },
  "!": { least: 1, most: 1 },
  if: { least: 3 },
  "==": { least: 2, most: 2 },
  "!=": { least: 2, most: 2 },
  "<": { least: 2, most: 3 },
  "<=": { least: 2, most: 3 },
  ">": { least: 2, most: 2 },
  ">=": { least: 2, most: 2 },
  "+": { least: 2 },
  "-": { least: 1, most: 2 },
  abs: { least: 1, most: 1 },
  min: { least: 1 },
  max: { least: 1 },
  in: { least: 2, most: 2 },
  all: { least: 2, most: 2 },
  some: { least: 2, most: 2 },
  none: { least: 2, most: 2 },
  count: { least: 2, most: 2 },
} as const satisfies Readonly<Record<string, { readonly least: number; readonly most?: number }>>;

/** Every operator but `var`; `count` and `abs` are additions to JsonLogic notation. */
export type Operator = keyof typeof OPERATORS;

/** What may stand as the one key of an operator object, in the order in which messages list it. */
export const OPERATOR_NAMES: readonly string[] = ["var", ...Object.keys(OPERATORS)];

/**
 * Operators of JsonLogic that rules leave out, each with the one that says the same. Empty: nothing does, and a name that
 * merely looks alike would mislead.
 * Source: the operations of json-logic-js 2.0.5.
 */
const LEFT_OUT: ReadonlyMap<string, string> = new Map([
  ["===", "=="],
  ["!==", "!="],
  ["?:", "if"],
  ["!!", ""],
  ["%", ""],
  ["*", ""],
  ["/", ""],
  ["cat", ""],
  ["substr", ""],
  ["map", ""],
  ["filter", ""],
  ["reduce", ""],
  ["merge", ""],
  ["missing", ""],
  ["missing_some", ""],
  ["log", ""],
]);

export function isOperator(name: string): name is Operator {
  return Object.hasOwn(OPERATORS, name);
}

/** Signs and words of other notations: for so short a word the closest spelling would be the wrong one (`=<` and `==`). */
const SLIPS: ReadonlyMap<string, string> = new Map([
  ["=<", "<="],
  ["=>", ">="],
  ["=", "=="],
  ["<>", "!="],
  ["&&", "and"],
  ["||", "or"],
  ["not", "!"],
  ["xor", "!="],
]);

/** Whether JsonLogic has an operator that rules leave out on purpose. */
export function isLeftOut(name: string): boolean {
  return LEFT_OUT.has(name);
}

/** The operator that was probably meant; undefined where none is. */
export function findMeantOperator(
  name: string,
  findNearest: (word: string, known: readonly string[]) => string | undefined,
): string | undefined {
  const known = SLIPS.get(name) ?? LEFT_OUT.get(name);
  if (known !== undefined) return known === "" ? undefined : known;
  return /\p{L}/u.test(name) ? findNearest(name, OPERATOR_NAMES) : undefined;
}
