import type { DiagnosticTexts, ReadShapeShapes } from "../words/index.js";
import { wantOneOf, writeNearest } from "./german-lists.js";

/** A text that is YAML and does not have the shape of a policy. */
export const GERMAN_READ_SHAPE_TEXTS = {
  "read/duplicate-key": {
    message: ({ key }) => `der Schlüssel \`${key}\` steht hier ein zweites Mal`,
    wanted: () => "jeder Schlüssel einer Zuordnung einmal",
    mend: ({ entry }) =>
      entry !== undefined
        ? `den nächsten Eintrag der Liste mit einem Bindestrich beginnen: \`- ${entry}:\``
        : "einen der beiden löschen oder umbenennen",
  },
  "read/key-not-text": {
    message: ({ found }) => `der Schlüssel \`${found ?? ""}\` ist kein Text`,
    wanted: () => "ein Wort als Schlüssel",
    mend: () => "den Schlüssel mit einem Buchstaben beginnen oder in Anführungszeichen setzen",
  },
  "read/text-cut-by-comma": {
    message: ({ found, key }) =>
      `ein Komma schneidet den Text von \`${key}\` ab und lässt \`${found ?? ""}\` ohne Wert zurück`,
    wanted: () => "Texte mit einem Komma zwischen `{` und `}` in Anführungszeichen",
    mend: ({ key, whole }) => `den Text in Anführungszeichen setzen: \`${key}: "${whole}"\``,
  },
  "read/no-value": {
    message: ({ key }) => `\`${key}\` hat keinen Wert`,
    wanted: ({ expected }) => expected,
    mend: ({ cutByComment }) =>
      cutByComment === undefined
        ? "den Wert schreiben oder den Schlüssel löschen"
        : `\`#\` beginnt einen Kommentar: den Text in Anführungszeichen setzen (\`"${cutByComment}"\`)`,
  },
  "read/number-not-exact": {
    message: ({ found }) => `\`${found ?? ""}\` ist keine genau darstellbare Zahl`,
    wanted: () => "eine genau darstellbare Zahl, ganze bis 9007199254740991",
    mend: () => "ist es eine Kennzeichnung oder eine Anordnungsnummer, in Anführungszeichen setzen",
  },
  "read/unknown-key": {
    message: ({ key }) => `der Schlüssel \`${key}\` ist hier nicht bekannt`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest, belongsTo = [] }) =>
      writeNearest(nearest, belongsTo.length === 0 ? "löschen" : `löschen; er gehört zu ${wantOneOf(belongsTo)}`),
  },
  "read/bad-name": {
    message: ({ key }) => `\`${key}\` kann kein Name sein`,
    wanted: ({ expected }) => expected,
    mend: ({ nearest }) => writeNearest(nearest, "umbenennen"),
  },
  "read/missing-key": {
    message: ({ key, owner }) => `in ${owner} fehlt der Schlüssel \`${key}\``,
    wanted: ({ key, expected }) => `\`${key}\` mit ${expected}`,
    mend: ({ key }) => `\`${key}: …\` ergänzen`,
  },
  "read/wrong-type": {
    message: ({ found }) => `${found ?? "das"} kann hier nicht stehen`,
    wanted: ({ expected }) => expected,
    mend: ({ hint }) => hint,
  },
  "read/unquoted-text": {
    message: ({ text, readAs }) => `\`${text}\` wird als ${readAs} gelesen, gebraucht wird ein Text`,
    wanted: () => "ein Text",
    mend: ({ text }) => `in Anführungszeichen setzen: \`"${text}"\``,
  },
  "read/unknown-value": {
    message: ({ value }) => `\`${value}\` ist kein Wert, der hier bekannt ist`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest, quoted }) =>
      quoted === undefined
        ? writeNearest(nearest, "einen der bekannten Werte wählen")
        : `\`${quoted}\` ohne Anführungszeichen schreiben`,
  },
  "read/unknown-kind": {
    message: ({ key, value }) => `kein \`${key}\` heißt \`${value}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => writeNearest(nearest, "eine der bekannten Arten wählen"),
  },
  "read/bad-text": {
    message: ({ text }) => `\`${text}\` hat nicht die Form, die hier gebraucht wird`,
    wanted: ({ expected }) => expected,
    mend: ({ nearest, hint }) => (nearest === undefined ? hint : writeNearest(nearest, "")),
  },
  "read/empty-text": {
    message: () => "der Text ist leer",
    wanted: ({ expected }) => expected,
    mend: () => "den Text schreiben oder den Schlüssel löschen",
  },
  "read/too-long": {
    message: ({ most }) => `der Text ist länger als ${most} Zeichen`,
    wanted: ({ most }) => `höchstens ${most} Zeichen`,
    mend: () => "kürzen",
  },
  "read/wrong-count": {
    message: ({ count }) => `die Liste hat ${countMembers(count)}`,
    wanted: ({ least, most }) => describeCount(least, most),
    mend: ({ count, least = 0 }) => (count < least ? "ergänzen, was fehlt" : "löschen, was zu viel ist"),
  },
  "read/empty-map": {
    message: ({ owner }) => `in ${owner} steht nichts`,
    wanted: ({ known }) => (known.length === 0 ? "mindestens ein Schlüssel" : `mindestens ${wantOneOf(known)}`),
    mend: () => "einen seiner Schlüssel mit einem Wert schreiben oder das Ganze löschen",
  },
  "read/wrong-shape": {
    message: ({ keyword }) => `das hat nicht die Form einer Richtlinie (${keyword})`,
    mend: () => "mit dem veröffentlichten Schema vergleichen",
  },
  "read/more-mistakes": {
    message: ({ count }) => `${count} weitere Fehler sind nicht aufgeführt`,
    mend: () => "zuerst die aufgeführten beheben",
  },
} satisfies Pick<DiagnosticTexts, keyof ReadShapeShapes>;

function describeCount(least: number | undefined, most: number | undefined): string {
  if (least === most && least !== undefined) return `genau ${countMembers(least)}`;
  if (least !== undefined) return `mindestens ${countMembers(least)}`;
  return `höchstens ${countMembers(most ?? 0)}`;
}

function countMembers(count: number): string {
  return count === 1 ? "1 Eintrag" : `${count} Einträge`;
}
