import { type DiagnosticTexts, quoteWords, type RuleShapes, writeVariable } from "../words/index.js";
import { wantOneOf, writeNearest } from "./german-lists.js";
import { GERMAN_RULE_THINGS } from "./german-things.js";

/** Rules in JsonLogic notation. */
export const GERMAN_RULE_TEXTS = {
  "rule/too-large": {
    message: ({ depth, terms }) =>
      `eine Regel ist höchstens ${depth} Ebenen tief verschachtelt und enthält höchstens ${terms} Ausdrücke`,
  },
  "rule/no-term": {
    message: ({ found }) => `${GERMAN_RULE_THINGS[found]} ist kein gültiger Ausdruck einer Regel`,
    wanted: () => "ein Operator mit seinen Operanden, ein Text, eine ganze Zahl, wahr oder falsch",
  },
  "rule/one-operator": {
    message: ({ operators }) =>
      operators.length === 0
        ? "ein Ausdruck ohne Operator"
        : `ein Ausdruck hat mehrere Operatoren: ${quoteWords(operators)}`,
    wanted: () => "genau ein Operator in jedem `{ }`",
  },
  "rule/unknown-operator": {
    message: ({ operator, origin }) =>
      `Regeln haben keinen Operator \`${operator}\`${origin === undefined ? "" : `, auch wenn ${origin} einen hat`}`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? undefined : writeNearest(nearest, "")),
  },
  "rule/operand-count": {
    message: ({ operator, count }) => `\`${operator}\` hat ${count === 1 ? "1 Operanden" : `${count} Operanden`}`,
    wanted: ({ operator, least, most }) =>
      operator === "if"
        ? "eine Bedingung, ein Wert und ein weiterer Wert, oder mehr solche Paare vor dem letzten"
        : most === undefined
          ? `mindestens ${least}`
          : least === most
            ? `genau ${least}`
            : `${least} oder ${most}`,
  },
  "rule/no-name": {
    message: ({ found }) => `\`var\` erwartet einen Namen als Text; hier steht ${GERMAN_RULE_THINGS[found]}`,
    mend: () => "eine Angabe nennen, ohne Ersatzwert",
  },
  "rule/unknown-name": {
    message: ({ name }) => `nichts, was eine Regel hier lesen kann, heißt \`${name}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => writeNearest(nearest, "unter `facts` festlegen oder `step.slot` nennen"),
  },
  "rule/unknown-word": {
    message: ({ word }) => `die Angabe kann nie \`${word}\` sein`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? undefined : writeNearest(nearest, "")),
  },
  "rule/wrong-type": {
    message: ({ found, wanted }) =>
      `das ist ${GERMAN_RULE_THINGS[found]}; gebraucht wird ${GERMAN_RULE_THINGS[wanted]}`,
    mend: ({ name }) =>
      name === undefined ? undefined : `\`${writeVariable(name)}\` schreiben, damit die Angabe gelesen wird`,
  },
  "rule/reads-nothing": {
    message: () => "hier wird nichts aus einem Protokoll gelesen; das Ergebnis steht schon vorher fest",
    mend: ({ literal, nearest }) =>
      nearest === undefined
        ? `eine Angabe mit \`var\` nennen, etwa \`${writeVariable("role")}\``
        : `wahrscheinlich ist \`${writeVariable(nearest)}\` gemeint, wo \`${literal ?? nearest}\` steht`,
  },
} satisfies Pick<DiagnosticTexts, keyof RuleShapes>;
