import type { JsonWords, RecordInputWords } from "../words/index.js";

export const GERMAN_JSON: JsonWords = {
  wanted: {
    value: "ein Wert",
    "value-or-end": "ein Wert oder `]`",
    key: "ein Schlüssel in doppelten Anführungszeichen",
    "key-or-end": "ein Schlüssel in doppelten Anführungszeichen oder `}`",
    colon: "`:`",
    nothing: "das Ende des Textes",
  },
  commaOr: (closing) => `\`,\` oder \`${closing}\``,
  unwanted: (found, wanted) => `\`${found}\` steht da, wo ${wanted} verlangt ist`,
  commaBefore: (closing) => `vor dem schließenden \`${closing}\` steht ein Komma`,
  endsEarly: "der JSON-Text endet zu früh",
  endlessText: "ein Text in Anführungszeichen endet nicht auf seiner Zeile",
  controlCharacter: "in einem Text steht ein Steuerzeichen",
  badEscape: (sequence) =>
    `mit \`${sequence}\` beginnt in JSON kein Zeichen; ein umgekehrter Schrägstrich selbst wird \`\\\\\` geschrieben`,
  singleQuote: "ein Text steht in `'`; JSON verlangt `\"`",
  noJson: "das ist kein JSON",
  tooDeep: (levels) => `mehr als ${levels} Ebenen sind ineinander geschachtelt`,
  repeatedKey: (key) => `der Schlüssel \`${key}\` steht zweimal in einem Objekt`,
};

export const GERMAN_RECORD_INPUT: RecordInputWords = {
  lineTooLong: (mebibytes) => `die Zeile ist länger als ${mebibytes} MiB`,
  endlessLine: "die Zeile endet nicht innerhalb von 1 GiB; der Rest der Eingabe wurde nicht gelesen",
  documentTooLarge: "ein JSON-Dokument hat mehr als 64 MiB und wurde nicht gelesen; je Zeile ein Protokoll schreiben",
  documentTooLong:
    "ein JSON-Dokument hat mehr als 4 Millionen Zeilen und wurde nicht gelesen; je Zeile ein Protokoll schreiben",
};
