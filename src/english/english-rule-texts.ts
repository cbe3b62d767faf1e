import { type DiagnosticTexts, quoteWords, type RuleShapes, writeVariable } from "../words/index.js";
import { wantOneOf } from "./english-lists.js";

/** Rules in JsonLogic notation. */
export const ENGLISH_RULE_TEXTS = {
  "rule/too-large": {
    message: ({ depth, terms }) => `a rule nests at most ${depth} levels deep and holds at most ${terms} terms`,
  },
  "rule/no-term": {
    message: ({ found }) => `${found} is no term of a rule`,
    wanted: () => "an operator with its operands, a text, a whole number, true or false",
  },
  "rule/one-operator": {
    message: ({ operators }) =>
      operators.length === 0 ? "a term without an operator" : `a term has several operators: ${quoteWords(operators)}`,
    wanted: () => "exactly one operator in each `{ }`",
  },
  "rule/unknown-operator": {
    message: ({ operator, origin }) =>
      `rules have no operator \`${operator}\`${origin === undefined ? "" : `, though ${origin} has one`}`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? undefined : `write \`${nearest}\``),
  },
  "rule/operand-count": {
    message: ({ operator, count }) => `\`${operator}\` stands with ${count === 1 ? "1 operand" : `${count} operands`}`,
    wanted: ({ operator, least, most }) =>
      operator === "if"
        ? "a condition, a value and another value, or more such pairs before the last"
        : most === undefined
          ? `at least ${least}`
          : least === most
            ? `exactly ${least}`
            : `${least} or ${most}`,
  },
  "rule/no-name": {
    message: ({ found }) => `\`var\` takes one name as text; here stands ${found}`,
    mend: () => "name one fact, without a default",
  },
  "rule/unknown-name": {
    message: ({ name }) => `nothing that a rule can read here is called \`${name}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) =>
      nearest === undefined ? "declare it under `facts`, or name `step.slot`" : `write \`${nearest}\``,
  },
  "rule/unknown-word": {
    message: ({ word }) => `the fact can never be \`${word}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? undefined : `write \`${nearest}\``),
  },
  "rule/wrong-type": {
    message: ({ found, wanted }) => `this is ${found}; ${wanted} is wanted`,
    mend: ({ name }) => (name === undefined ? undefined : `write \`${writeVariable(name)}\` to read the fact`),
  },
  "rule/reads-nothing": {
    message: () => "this reads nothing of a record, so it is decided before there is one",
    mend: ({ literal, nearest }) =>
      nearest === undefined
        ? `name a fact with \`var\`, such as \`${writeVariable("role")}\``
        : `write \`${writeVariable(nearest)}\` where \`${literal ?? nearest}\` stands, if that is meant`,
  },
} satisfies Pick<DiagnosticTexts, keyof RuleShapes>;
