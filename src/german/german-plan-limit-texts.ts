import type { DiagnosticTexts, PlanLimitShapes, QuantityFaultName, QuantityName } from "../words/index.js";
import { wantOneOf } from "./german-lists.js";
import { GERMAN_QUANTITIES } from "./german-things.js";

const QUANTITY_FAULTS: Readonly<Record<QuantityFaultName, string>> = {
  missing: "enthält keine Angabe",
  unreadable: "ist keine Zahl mit einem Leerzeichen und einer Einheit",
  "no-unit": "hat keine Einheit",
  "unknown-unit": "hat eine Einheit, die nicht bekannt ist",
  "wrong-dimension": "misst etwas anderes",
  "too-fine": "hat mehr Nachkommastellen, als für seine Einheit vorgesehen sind",
};

/** Limits, tolerances and instruments. */
export const GERMAN_PLAN_LIMIT_TEXTS = {
  "plan/bad-quantity": {
    message: ({ found, fault, dimension, mend }) =>
      `\`${found}\` ${found === mend ? "ist ein Text" : QUANTITY_FAULTS[fault]}; gebraucht wird: ${GERMAN_QUANTITIES[dimension]}`,
    wanted: ({ dimension, units }) =>
      dimension === "count"
        ? "eine ganze Zahl"
        : `eine Zahl, ein Leerzeichen und ${wantOneOf(units) ?? "eine Einheit"}`,
    mend: ({ found, mend }) =>
      mend === undefined ? undefined : `\`${mend}\` ${found === mend ? "ohne Anführungszeichen " : ""}schreiben`,
  },
  "plan/wrong-dimension": {
    message: ({ found, dimension }) =>
      `hier wird etwas anderes gemessen: ${GERMAN_QUANTITIES[found]}; gebraucht wird: ${GERMAN_QUANTITIES[dimension]}`,
  },
  "plan/no-limit": {
    message: () => "hier steht kein Grenzwert",
    wanted: () =>
      "mindestens eines von `at-least`, `at-most`, `above`, `below`, `between` oder `nominal` mit `plus-minus`",
  },
  "plan/no-accept": {
    message: () => "in der Toleranz fehlt, was zulässig ist",
    wanted: () => "`accept` mit mindestens einem Grenzwert",
  },
  "plan/no-basis": {
    message: () => "für den Grenzwert ist keine Grundlage angegeben",
    mend: () => "im Schritt `basis` ergänzen, etwa `basis: { kind: common-practice }`",
  },
  "plan/empty-band": {
    message: () => "kein Wert kann diese Grenzwerte einhalten",
    mend: () => "prüfen, ob Grenzen vertauscht sind",
  },
  "plan/cases-overlap": {
    message: () => "zwei Fälle können für dasselbe Protokoll gelten",
    mend: () => "jeden Fall andere Werte derselben Angabe nennen lassen",
  },
  "plan/rows-not-rising": {
    message: ({ found }) => `die Zeile bis \`${found ?? ""}\` liegt nicht über der Zeile vor ihr`,
    mend: () => "die Zeilen vom kleinsten `up-to` zum größten aufführen",
  },
  "plan/share-in-row": {
    message: () => "bei `up-to` steht eine Größe, kein Anteil an einer Angabe",
  },
  "plan/empty-caution": {
    message: () => "kein zulässiger Wert liegt im grenznahen Bereich",
    mend: () => "`caution` ist der zulässige Teil nahe an einer Grenze; seine Grenze in `accept` hineinrücken",
  },
  "plan/swapped-bounds": {
    message: ({ low, high }) => `der Bereich reicht von \`${low}\` hinab zu \`${high}\``,
    mend: ({ low, high }) => `\`[${high}, ${low}]\` schreiben`,
  },
  "plan/half-stated": {
    message: ({ present, absent }) => `\`${present}\` steht ohne \`${absent}\``,
    mend: ({ absent }) => `\`${absent}\` ergänzen`,
  },
  "plan/share-in-nominal": {
    message: () => "bei `nominal` und `plus-minus` stehen Größen, kein Anteil an einer Angabe",
    mend: () => "den Bereich als `between` mit zwei Anteilen angeben",
  },
  "plan/mixed-units": {
    message: ({ nominal, plusMinus }) => `\`${nominal}\` und \`${plusMinus}\` lassen sich nicht genau zusammenrechnen`,
    mend: () => "beide in derselben Einheit angeben",
  },
  "plan/instrument-quantity": {
    message: ({ instrument, shows, reads }) =>
      `\`${instrument}\` zeigt an: ${nameShown(shows)}; der Schritt liest ab: ${nameShown(reads)}`,
  },
  "plan/instrument-without-quantity": {
    message: ({ instrument }) => `bei \`${instrument}\` fehlt, was es misst`,
    mend: () => "`quantity` ergänzen",
  },
  "plan/not-positive": {
    message: ({ key, text }) => `\`${key}\` kann nicht \`${text}\` sein`,
    wanted: ({ key }) => (key === "division" ? "ein Skalenteil über 0" : "eine größte Abweichung von 0 oder mehr"),
  },
} satisfies Pick<DiagnosticTexts, keyof PlanLimitShapes>;

function nameShown(quantity: QuantityName | "nothing"): string {
  return quantity === "nothing" ? "nichts" : GERMAN_QUANTITIES[quantity];
}
