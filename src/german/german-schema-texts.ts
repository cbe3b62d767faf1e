import type { SchemaText } from "../words/index.js";

/** Titles and first sentences of the schema of policies. */
export const GERMAN_SCHEMA_TEXTS: Readonly<Record<SchemaText, string>> = {
  "tenbar policy": "tenbar-Richtlinie",
  "About the policy": "Angaben zur Richtlinie",
  "Lower-case words, hyphens and slashes": "Wörter in Kleinbuchstaben, Bindestriche und Schrägstriche",
  "A name for people to read": "ein Name, wie ihn Menschen lesen",
  "Always in quotes": "immer in Anführungszeichen",
  "Who issues the policy": "wer die Richtlinie herausgibt",
  "A shipped policy pinned to its major version, or another file":
    "eine mitgelieferte Richtlinie mit ihrer Hauptversion oder eine andere Datei",
  "The sentence that every assessment carries: what stands above this policy":
    "der Satz, den jede Beurteilung trägt: was über dieser Richtlinie steht",
  Fact: "Angabe",
  Instrument: "Messgerät",
  Tolerance: "Toleranz",
  Case: "Fall",
  Check: "Prüfung",
  "The kind of subject that is checked: `set`, `mask`, `cylinder` and so on":
    "die Art des Geräts, das geprüft wird: `set`, `mask`, `cylinder` und so weiter",
  "Who may carry the check out; compared exactly": "wer die Prüfung durchführen darf; genau verglichen",
  "`any`, or `listed-by: position` (of the record's steps) or `listed-by: at` (their instants)":
    "`any` oder `listed-by: position` (der Schritte im Protokoll) oder `listed-by: at` (ihrer Zeitpunkte)",
  Step: "Schritt",
  Confirm: "Bestätigung",
  "The question as the person at the set reads it": "die Frage, wie sie die Person am Gerät liest",
  Match: "Vergleich von Texten",
  Reading: "Ablesung",
  Hold: "Haltezeit",
  Timing: "Zeitmessung",
  "In date": "Datum innerhalb der Frist",
  "Calendar span": "Kalenderspanne",
  "ISO 8601 span that the date may lie back: `P30D`, `P1M`, `P5Y`":
    "Spanne nach ISO 8601, die das Datum zurückliegen darf: `P30D`, `P1M`, `P5Y`",
  Interval: "Frist",
  "ISO 8601 span": "Spanne nach ISO 8601",
  "The record field that holds the date": "das Feld im Protokoll, das das Datum enthält",
  Rule: "Regel",
  Adoption: "Ausnahme",
  "`check/step`": "`check/step`",
  "The order that lets it stand": "die Anordnung, unter der sie gilt",
  "Who decided it": "wer darüber entschieden hat",
  "Why it was decided": "warum so entschieden wurde",
  Basis: "Grundlage",
  "Common practice": "übliche Praxis",
  "What a reader of the figure should know": "was man beim Lesen der Zahl wissen sollte",
  Published: "veröffentlicht",
  "The document": "das Dokument",
  "Edition or year": "Ausgabe oder Jahr",
  "Clause, section or table": "Abschnitt, Absatz oder Tabelle",
  Manufacturer: "Hersteller",
  "The manufacturer's document": "das Dokument des Herstellers",
  "Local order": "örtliche Anordnung",
  "The local order": "die örtliche Anordnung",
  Date: "Datum",
  "Year-month-day, `2026-04-01`": "Jahr-Monat-Tag, `2026-04-01`",
  "A fact of the record: `subject.marking`, or the name of a fact":
    "eine Angabe im Protokoll: `subject.marking` oder der Name einer Angabe",
  "Former names": "frühere Namen",
  "JSON Pointer": "JSON-Zeiger (JSON Pointer)",
  "Where the fact stands in a record": "wo die Angabe in einem Protokoll steht",
  Limit: "Grenzwert",
  "A quantity such as `10 bar`, or a share of a fact such as `90 % of rated-pressure`":
    "eine Größe wie `10 bar` oder ein Anteil an einer Angabe wie `90 % of rated-pressure`",
  "Limit of a step": "Grenzwert eines Schritts",
  Limits: "Grenzwerte",
  Name: "Name",
  "Lower-case words joined by hyphens, such as `leak-drop`":
    "Wörter in Kleinbuchstaben, mit Bindestrichen verbunden, etwa `leak-drop`",
  Quantity: "Größe",
  "A number, one space and a unit: `280 bar`, `-10 mbar`, `90 %`, `30 s`":
    "eine Zahl, ein Leerzeichen und eine Einheit: `280 bar`, `-10 mbar`, `90 %`, `30 s`",
  "Rule term": "Ausdruck einer Regel",
  "A term in JsonLogic notation: one operator and its operands":
    "ein Ausdruck in JsonLogic-Schreibweise: ein Operator und seine Operanden",
  Scope: "Geltungsbereich",
  "The name of a tolerance of this policy, or limits written here, which take the `basis` of the step":
    "der Name einer Toleranz dieser Richtlinie oder hier geschriebene Grenzwerte, die die `basis` des Schritts übernehmen",
};
