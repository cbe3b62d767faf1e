import { type DiagnosticTexts, type ParamsOf, quoteWords, type ResolveShapes } from "../words/index.js";
import { wantOneOf } from "./german-lists.js";
import { nameThing } from "./german-things.js";

/** What a policy inherits. */
export const GERMAN_RESOLVE_TEXTS = {
  "resolve/bad-parent": {
    message: ({ parent, why }) => `\`${parent}\` kann keine Vorlage sein: ${why}`,
    wanted: () =>
      "eine mitgelieferte Richtlinie wie `common-practice/open-circuit@1` oder eine Datei wie `./brigade.yaml`",
  },
  "resolve/no-parent": {
    message: ({ parent, why }) => `die Vorlage \`${parent}\` ist nicht verfügbar: ${why}`,
    mend: ({ nearest }) => (nearest === undefined ? undefined : `\`${nearest}\` schreiben`),
  },
  "resolve/circle": {
    message: ({ policies }) => `Richtlinien bauen im Kreis oder zu oft aufeinander auf: ${quoteWords(policies)}`,
    mend: () => "ein `extends` herausnehmen",
  },
  "resolve/unpinned-parent": {
    message: ({ parent }) =>
      `\`${parent}\` ist nicht auf eine Version festgelegt: eine spätere Ausgabe kann diese Richtlinie ändern`,
    mend: ({ parent, major }) => `\`${parent}@${major}\` schreiben`,
  },
  "resolve/other-major": {
    message: ({ parent, version }) => `\`${parent}\` nennt eine andere Hauptversion als ${version}, die vorliegt`,
    mend: ({ parent, major }) =>
      `nachlesen, was sich geändert hat, dann \`${parent.replace(/@.*/, "")}@${major}\` schreiben`,
  },
  "resolve/needs-parent": {
    message: ({ key }) => `\`${key}\` bezieht sich auf eine Vorlage, und die Richtlinie hat keine`,
    mend: ({ key }) => `\`${key}\` herausnehmen oder \`extends\` ergänzen`,
  },
  "resolve/near-name": {
    message: ({ thing, name, nearest }) =>
      `neu hinzugekommen: ${nameThing(thing)} \`${name}\`; \`${nearest ?? ""}\` aus der Vorlage gilt unverändert weiter`,
    mend: ({ nearest }) =>
      `\`${nearest ?? ""}\` schreiben, wenn die Vorlage geändert werden soll; sonst einen deutlich anderen Namen wählen`,
  },
  "resolve/parent-alone": {
    message: () => "die Vorlage ist für sich keine vollständige Richtlinie, daher ließ sich nichts mit ihr vergleichen",
  },
  "resolve/looser": {
    message: ({ what, ...sides }) => `weniger streng als in der Vorlage: ${what}; ${saySides(sides)}`,
    mend: () => "verschärfen oder die Abweichung nach einer Anordnung in `adopted` aufnehmen",
  },
  "resolve/adoption-does-not-fit": {
    message: ({ adoption, step, known }) =>
      known.length === 0
        ? `die geerbte Ausnahme \`${adoption}\` nennt Grenzwerte für \`${step}\`; der Schritt hat hier keine Anforderung mit Grenzwerten`
        : `die geerbte Ausnahme \`${adoption}\` nennt Grenzwerte für \`${step}\`; es ist nicht klar, für welche Anforderung dieses Schritts`,
    wanted: ({ known }) => (known.length === 0 ? "eine Anforderung mit Grenzwerten" : wantOneOf(known)),
    mend: ({ adoption, known }) =>
      known.length === 0
        ? `\`${adoption}\` hier unter \`adopted\` neu angeben, für das, was dieser Schritt verlangt; oder den Schritt lassen, wie ihn die Vorlage hat`
        : `\`${adoption}\` hier unter \`adopted\` neu angeben, mit \`requirement\`; oder den Schritt lassen, wie ihn die Vorlage hat`,
  },
  "resolve/asked-only-instead": {
    message: ({ step, adoption }) =>
      `die Vorlage verlangt \`${step}\` in jedem Protokoll; hier wird der Schritt nur verlangt, solange \`${adoption}\` gilt`,
    mend: () => "einen eigenen Schritt dieser Richtlinie angeben und ihn als `instead` nennen",
  },
  "resolve/covers-nothing": {
    message: ({ adoption }) =>
      `die Ausnahme \`${adoption}\` ist ohne Wirkung: kein Teil, den sie nennt, ist weniger streng als in der Vorlage`,
    mend: () => "herausnehmen oder die Abweichung in ihr angeben, als `accept`, `instead` oder `omit`",
  },
  "resolve/cannot-compare": {
    message: ({ what, ...sides }) =>
      `nicht mit der Vorlage vergleichbar: ${what}; ${saySides(sides)}; es könnte weniger streng sein`,
    mend: () => "selbst prüfen und die Abweichung nach einer Anordnung in `adopted` aufnehmen",
  },
} satisfies Pick<DiagnosticTexts, keyof ResolveShapes>;

type Sides = Pick<ParamsOf<"resolve/looser">, "here" | "parent" | "limit" | "parentLimit">;

function saySides({ here, parent, limit, parentLimit }: Sides): string {
  const say = (text: string | undefined, spot: string) => (text === undefined ? spot : `${text} (${spot})`);
  return `hier ${say(limit, here)}, dort ${say(parentLimit, parent)}`;
}
