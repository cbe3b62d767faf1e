import { defineCode } from "./define-code.js";
import { quoteWords, wantOneOf } from "./word-list.js";

/** Codes of rules in JsonLogic notation. */
export const RULE_CODES = {
  "rule/too-large": defineCode<{ depth: number; terms: number }>({
    severity: "error",
    message: ({ depth, terms }) => `a rule nests at most ${depth} levels deep and holds at most ${terms} terms`,
  }),
  "rule/no-term": defineCode({
    severity: "error",
    message: ({ found }) => `${found ?? "this"} is no term of a rule`,
    wanted: () => "an operator with its operands, a text, a whole number, true or false",
  }),
  "rule/one-operator": defineCode<{ operators: readonly string[] }>({
    severity: "error",
    message: ({ operators }) =>
      operators.length === 0 ? "a term without an operator" : `a term has several operators: ${quoteWords(operators)}`,
    wanted: () => "exactly one operator in each `{ }`",
  }),
  "rule/unknown-operator": defineCode<{
    operator: string;
    known: readonly string[];
    /** The notation that has the operator, where rules leave it out on purpose. */
    origin: string | undefined;
  }>({
    severity: "error",
    message: ({ operator, origin }) =>
      `rules have no operator \`${operator}\`${origin === undefined ? "" : `, though ${origin} has one`}`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? undefined : `write \`${nearest}\``),
  }),
  "rule/operand-count": defineCode<{ operator: string; count: number; least: number; most: number | undefined }>({
    severity: "error",
    message: ({ operator, count }) => `\`${operator}\` stands with ${count === 1 ? "1 operand" : `${count} operands`}`,
    wanted: ({ operator, least, most }) =>
      operator === "if"
        ? "a condition, a value and another value, or more such pairs before the last"
        : most === undefined
          ? `at least ${least}`
          : least === most
            ? `exactly ${least}`
            : `${least} or ${most}`,
  }),
  "rule/no-name": defineCode({
    severity: "error",
    message: ({ found }) => `\`var\` takes one name as text; here stands ${found ?? "something else"}`,
    mend: () => "name one fact, without a default",
  }),
  "rule/unknown-name": defineCode<{ name: string; known: readonly string[] }>({
    severity: "error",
    message: ({ name }) => `nothing that a rule can read here is called \`${name}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) =>
      nearest === undefined ? "declare it under `facts`, or name `step.slot`" : `write \`${nearest}\``,
  }),
  "rule/unknown-word": defineCode<{ word: string; known: readonly string[] }>({
    severity: "error",
    message: ({ word }) => `the fact can never be \`${word}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? undefined : `write \`${nearest}\``),
  }),
  "rule/wrong-type": defineCode<{ wanted: string }>({
    severity: "error",
    message: ({ found, wanted }) => `this is ${found ?? "something else"}; ${wanted} is wanted`,
  }),
};
