import type { DiagnosticTexts, ReadTextShapes } from "../words/index.js";

const QUOTE_IT = "in Anführungszeichen setzen";

/** A text that is not, or not only, the part of YAML that policies are written in. */
export const GERMAN_READ_TEXT_TEXTS = {
  "read/too-large": {
    message: ({ bytes }) => `die Richtlinie hat ${bytes} Byte, das ist zu viel`,
    wanted: ({ most }) => `höchstens ${most} Byte`,
    mend: () => "in eine Richtlinie und eine zweite teilen, die auf ihr aufbaut (`extends`)",
  },
  "read/too-deep": {
    message: ({ most }) => `Zuordnungen und Listen sind mehr als ${most} Ebenen tief verschachtelt`,
    wanted: ({ most }) => `höchstens ${most} Ebenen`,
    mend: () => "nach Klammern suchen, die nicht geschlossen sind",
  },
  "read/too-many-nodes": {
    message: ({ most }) => `die Richtlinie hat mehr als ${most} Schlüssel und Werte`,
    wanted: ({ most }) => `höchstens ${most} Schlüssel und Werte`,
    mend: () => "in eine Richtlinie und eine zweite teilen, die auf ihr aufbaut (`extends`)",
  },
  "read/control-character": {
    message: ({ found, count }) =>
      `${found ?? "ein Steuerzeichen"} darf in einer Richtlinie nicht stehen${countOthers(count)}`,
    wanted: () => "druckbare Zeichen, Leerzeichen und Zeilenenden",
    mend: () => "löschen und die Datei als reinen UTF-8-Text speichern",
  },
  "read/lone-surrogate": {
    message: ({ found, count }) => `${found ?? "ein Zeichen"} ist nur ein halbes Zeichen${countOthers(count)}`,
    wanted: () => "ganze Zeichen",
    mend: () => "das Zeichen neu eingeben und die Datei als reinen UTF-8-Text speichern",
  },
  "read/empty": {
    message: () => "die Richtlinie ist leer",
    wanted: () => "eine Richtlinie, die mit `tenbar: 1` beginnt",
  },
  "read/several-documents": {
    message: () => "hier beginnt ein zweites Dokument",
    wanted: () => "ein einziges Dokument",
    mend: () => "jede Richtlinie in eine eigene Datei schreiben und die Zeile `---` löschen",
  },
  "read/directive": {
    message: ({ found }) => `die Direktive \`${found ?? "%"}\` wird nicht gelesen`,
    wanted: () => "YAML 1.2 ohne Direktiven",
    mend: () => "die Zeile löschen",
  },
  "read/anchor": {
    message: ({ found }) => `der Anker \`${found ?? "&"}\` wird nicht gelesen`,
    wanted: () => "jeder Wert dort, wo er gebraucht wird",
    mend: () => `löschen; beginnt der Text mit \`&\`, ${QUOTE_IT}`,
  },
  "read/alias": {
    message: ({ found }) => `der Verweis \`${found ?? "*"}\` wird nicht gelesen`,
    wanted: () => "jeder Wert dort, wo er gebraucht wird",
    mend: () => `den Wert ausschreiben oder eine Toleranz nennen; beginnt der Text mit \`*\`, ${QUOTE_IT}`,
  },
  "read/merge-key": {
    message: () => "der Mischschlüssel `<<` wird nicht gelesen",
    wanted: () => "jeder Schlüssel dort, wo er gebraucht wird",
    mend: () => "die Schlüssel ausschreiben; gemeinsam nutzen lässt sich nur über `extends`",
  },
  "read/tag": {
    message: ({ found }) => `die Typangabe \`${found ?? "!"}\` wird nicht gelesen`,
    wanted: () => "Werte ohne Typangabe",
    mend: () => `löschen; beginnt der Text mit \`!\`, ${QUOTE_IT}`,
  },
  "read/unclosed-quote": {
    message: ({ quote }) => `der Text beginnt mit ${quote} und wird nicht geschlossen`,
    wanted: ({ quote }) => `ein schließendes ${quote}`,
    mend: ({ quote }) => `${quote} hinter den Text setzen`,
  },
  "read/stray-quote": {
    message: ({ quote, text, found }) =>
      text === undefined
        ? `${quote} schließt hier nichts`
        : `${quote} schließt \`${found ?? ""}\`, und keines öffnet den Text`,
    wanted: () => "Anführungszeichen an beiden Enden oder an keinem",
    mend: ({ quote, text }) =>
      text === undefined
        ? `${quote} löschen`
        : `\`${text}\` schreiben, oder \`${quote}${text}${quote}\`, wo es ein Text ist`,
  },
  "read/text-behind-quote": {
    message: ({ found }) => `\`${found ?? ""}\` steht hinter dem schließenden Anführungszeichen`,
    wanted: () => "nichts hinter einem schließenden Anführungszeichen in seiner Zeile",
    mend: () => "den ganzen Text in Anführungszeichen setzen und eines darin doppelt schreiben (`'so geht''s'`)",
  },
  "read/unclosed-bracket": {
    message: ({ bracket }) => `\`${bracket}\` wird nicht geschlossen, bevor seine Zeilen enden`,
    wanted: ({ closing }) => `eine schließende \`${closing}\``,
    mend: ({ closing }) => `\`${closing}\` ans Ende setzen; geht es über mehrere Zeilen, diese weiter einrücken`,
  },
  "read/tab-indent": {
    message: () => "die Zeile ist mit einem Tabulator eingerückt",
    wanted: () => "Leerzeichen vor dem Schlüssel",
    mend: () => "mit Leerzeichen einrücken",
  },
  "read/bad-indentation": {
    message: () => "die Einrückung passt zu keiner Zeile darüber",
    wanted: () => "gleich viele Leerzeichen vor allen Schlüsseln einer Zuordnung",
    mend: () => "so weit einrücken wie die Schlüssel, zu denen sie gehört",
  },
  "read/no-space-behind-colon": {
    message: ({ key }) => `hinter dem Doppelpunkt von \`${key}\` steht kein Leerzeichen`,
    wanted: ({ key }) => `\`${key}: \` und der Wert`,
    mend: () => "hinter den Doppelpunkt ein gewöhnliches Leerzeichen setzen",
  },
  "read/no-colon": {
    message: ({ found }) => `\`${found ?? ""}\` steht, wo ein Schlüssel stehen müsste, und hat keinen Doppelpunkt`,
    wanted: () => "ein Schlüssel, ein Doppelpunkt und ein Wert",
    mend: () => "Doppelpunkt und Wert dahinter setzen; setzt die Zeile den Text darüber fort, weiter einrücken",
  },
  "read/colon-in-text": {
    message: ({ found }) => `in \`${found ?? ""}\` steht ein zweiter Doppelpunkt mit Leerzeichen`,
    wanted: () => "ein Schlüssel und ein Wert je Zeile",
    mend: () => "den Text in Anführungszeichen setzen oder den zweiten Schlüssel in eine eigene Zeile",
  },
  "read/reserved-start": {
    message: ({ character }) => `ohne Anführungszeichen darf ein Text nicht mit \`${character}\` beginnen`,
    mend: () => "den Text in Anführungszeichen setzen",
  },
  "read/bad-escape": {
    message: () => "der umgekehrte Schrägstrich leitet kein bekanntes Zeichen ein",
    wanted: () => "`\\\\` für einen umgekehrten Schrägstrich zwischen doppelten Anführungszeichen",
    mend: () => "ihn doppelt schreiben oder einfache Anführungszeichen verwenden",
  },
  "read/bad-yaml": {
    message: ({ found }) => `\`${found ?? ""}\` lässt sich hier nicht als YAML lesen`,
    mend: () => "in dieser Zeile und der darüber Klammern, Anführungszeichen und Einrückung prüfen",
  },
  "read/text-cut-by-comment": {
    message: ({ found }) =>
      `der Text ist \`${found ?? ""}\`: ein \`#\` hinter einem Leerzeichen beginnt einen Kommentar`,
    mend: ({ whole }) =>
      `in Anführungszeichen setzen (\`"${whole}"\`) oder hinter das \`#\` eines Kommentars ein Leerzeichen setzen`,
  },
} satisfies Pick<DiagnosticTexts, keyof ReadTextShapes>;

function countOthers(count: number): string {
  return count === 1 ? "" : `, und ${count - 1} weitere davon`;
}
