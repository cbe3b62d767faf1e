import type { DiagnosticTexts, PlanShapes } from "../words/index.js";
import { wantOneOf, writeNearest } from "./german-lists.js";
import { nameThing } from "./german-things.js";

const KINDS = { text: "ein Text", flag: "eine Ja-Nein-Angabe" } as const;

/** What a policy means: names, dates, adoptions. */
export const GERMAN_PLAN_TEXTS = {
  "plan/unknown-name": {
    message: ({ thing, name }) => `nicht bekannt: ${nameThing(thing)} \`${name}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ thing, nearest }) =>
      writeNearest(nearest, `${nameThing(thing)} festlegen oder einen anderen Namen nennen`),
  },
  "plan/not-yet": {
    message: ({ option, of }) =>
      `${nameOption(option, of)} gehört zur Richtliniensprache, wird von dieser Version aber nicht beurteilt`,
    mend: ({ option, of }) => `${nameOption(option, of)} weglassen; nichts davon würde beurteilt`,
  },
  "plan/bad-date": {
    message: ({ found }) => `\`${found}\` ist kein gültiges Datum`,
    wanted: () => "ein Datum als Jahr-Monat-Tag, etwa `2026-04-01`",
  },
  "plan/dates-swapped": {
    message: ({ from, to, key }) => `\`from\` (${from}) liegt nach \`${key}\` (${to})`,
    mend: () => "die beiden Daten vertauschen",
  },
  "plan/review-passed": {
    message: ({ review, asOf }) => `am ${asOf} ist die Frist zur Überprüfung (${review}) bereits abgelaufen`,
    mend: () => "die Richtlinie überprüfen und einen neuen Tag festlegen",
  },
  "plan/no-checks": { message: () => "die Richtlinie hat keine Prüfungen" },
  "plan/no-deference": {
    message: () => "die Richtlinie sagt nicht, was über ihr steht",
    mend: () => "`deference` ergänzen, einen Satz, den jede Beurteilung trägt",
  },
  "plan/shadowed-name": {
    message: ({ thing, name }) => `fest vorgegeben und nicht neu festzulegen: ${nameThing(thing)} \`${name}\``,
    mend: () => "einen anderen Namen geben",
  },
  "plan/take-without-size": {
    message: ({ take, kind }) => `\`take: ${take}\` braucht Werte, die eine Größe haben; die Angabe ist ${KINDS[kind]}`,
    mend: () => "`take: only` schreiben",
  },
  "plan/adoption-without-end": {
    message: ({ adoption, given }) =>
      given.length === 0
        ? `die Ausnahme \`${adoption}\` sagt nicht, wann sie endet oder überprüft wird`
        : `die Ausnahme \`${adoption}\` nennt sowohl \`until\` als auch \`review\``,
    mend: () => "`until`, ihren letzten Tag, angeben; bei einer dauerhaften Ausnahme `review`",
  },
  "plan/adoptions-meet": {
    message: ({ adoption, other, requirement }) =>
      `\`${adoption}\` und \`${other}\` können beide Grenzwerte für \`${requirement}\` setzen; wo beide gelten, zählt das schlechtere Ergebnis`,
    mend: () => "die eine enden lassen, bevor die andere beginnt, oder Geltungsbereiche ohne Überschneidung angeben",
  },
  "plan/words-alike": {
    message: ({ fact, word, other }) =>
      `\`${word}\` und \`${other}\` sind ein Wort für \`${fact}\` in zwei Schreibweisen; steht eines im Protokoll, bleibt offen, was nach dem anderen fragt`,
    mend: () => "das Wort überall so schreiben, wie es in Protokollen steht",
  },
  "plan/covering-cannot-lapse": {
    message: ({ adoption, key }) =>
      `\`${key}\` bewirkt nichts: was \`${adoption}\` deckt, hat in der Vorlage nichts, was stattdessen gelten könnte`,
    mend: () =>
      "stehen lassen, was die Vorlage sagt, und die Abweichung als `accept`, `instead` oder `omit` angeben; bei einer dauerhaften Ausnahme `review` angeben, mit einem `from` nicht nach dem Tag, von dem an die Richtlinie gilt (`effective`)",
  },
  "plan/adoption-of-interval": {
    message: ({ key }) => `eine Frist hat keine Grenzwerte oder Schritte, für die \`${key}\` stehen könnte`,
    mend: ({ key }) =>
      `\`${key}\` weglassen; \`omit: true\` schreiben oder die Frist hier mit einem anderen \`every\` angeben, das die Ausnahme dann deckt`,
  },
  "plan/which-requirement": {
    message: () =>
      "der Schritt hat mehrere Anforderungen mit Grenzwerten oder keine; es ist nicht klar, für welche `accept` gilt",
    wanted: ({ known }) => wantOneOf(known),
    mend: () => "`requirement` ergänzen",
  },
  "plan/unused": {
    message: ({ thing, name }) => `nirgends verwendet: ${nameThing(thing)} \`${name}\``,
    mend: ({ nearest }) =>
      nearest === undefined
        ? "herausnehmen oder in einem Schritt nennen"
        : `\`${nearest}\` aus der Vorlage gilt unverändert weiter; \`${nearest}\` schreiben, um das zu ändern, oder den eigenen Namen in einem Schritt nennen`,
  },
} satisfies Pick<DiagnosticTexts, keyof PlanShapes>;

function nameOption(option: string, of: "unnamed-interval" | undefined): string {
  return of === undefined ? `\`${option}\`` : `\`${option}\` einer Frist (\`interval\`), die keine Prüfung nennt,`;
}
