import {
  type DiagnosticWords,
  joinWords,
  type ParentWords,
  type PartOfPolicy,
  type PolicyTextWords,
} from "../words/index.js";
import { GERMAN_SCHEMA_TEXTS } from "./german-schema-texts.js";

export const GERMAN_POLICY_TEXT: PolicyTextWords = {
  found: {
    text: "ein Text",
    number: "eine Zahl",
    flag: "wahr oder falsch",
    nothing: "nichts",
    list: "eine Liste",
    map: "eine Zuordnung von Schlüsseln",
    tab: "ein Tabulator",
  },
  types: {
    string: "ein Text",
    number: "eine Zahl",
    integer: "eine ganze Zahl",
    boolean: "`true` oder `false`",
    null: "`null`",
    array: "eine Liste",
    object: "eine Zuordnung von Schlüsseln",
    any: "ein Wert",
  },
  schema: GERMAN_SCHEMA_TEXTS,
  suchAs: (sentence, example) => `${sentence}, etwa \`${example}\``,
  oneOf: (words) => joinWords(words, "oder"),
  keyAndValue: "ein Schlüssel, ein Doppelpunkt und ein Wert",
  quantityWithPoint: "eine Zahl mit Dezimalpunkt, ein Leerzeichen und eine Einheit",
  membersWithPoints: (count) => `${count} Einträge, mit Dezimalpunkten`,
  thePolicy: "der Richtlinie",
  member: (number, list) => `Eintrag ${number} von \`${list}\``,
  hints: {
    beginning: "die Richtlinie mit `tenbar: 1` beginnen",
    writeThis: (text) => `\`${text}\` schreiben`,
    unitBehind: (example) => `die Einheit hinter die Zahl schreiben, wie in \`${example}\``,
    withoutQuotes: (value) => `\`${value}\` ohne Anführungszeichen schreiben`,
    asList: (value) => `als Liste schreiben: \`[${value}]\``,
    hyphens: "jeden Eintrag mit Bindestrich und Leerzeichen beginnen",
    writtenLike: (example) => `schreiben wie \`${example}\``,
  },
};

export const GERMAN_PARENTS: ParentWords = {
  notFromOwnFolder: "eine Datei wird vom Ordner der Richtlinie aus genannt, mit `./` davor",
  leavesOwnFolder: "eine Vorlage liegt im Ordner der Richtlinie oder darunter",
  notGiven: "ihr Text liegt nicht vor",
};

export const GERMAN_RELATED: DiagnosticWords["related"] = {
  first: "das erste",
  otherOne: "das andere",
  otherCase: "der andere Fall",
  parents: "in der Vorlage",
};

const KINDS = {
  scope: "der Geltungsbereich",
  subject: "das Gerät",
  "former-names": "die früheren Namen",
  competence: "die Befähigung",
  order: "die Reihenfolge",
  fact: "die Angabe",
  instrument: "das Messgerät",
  consequence: "die Folge",
  limit: "der Grenzwert",
  interval: "die Frist",
  rule: "die Regel",
} as const;

export function sayPartOfPolicy(part: PartOfPolicy): string {
  switch (part.kind) {
    case "policy-scope":
      return "der Geltungsbereich der Richtlinie";
    case "gaps":
      return "wie fehlende Angaben gewertet werden";
    case "fact":
    case "instrument":
      return `${KINDS[part.kind]} \`${part.name}\``;
    case "check-left-out":
      return `die Prüfung \`${part.of}\`, die weggelassen ist`;
    case "unanchored":
      return `die Prüfung \`${part.of}\`, in der nichts immer beurteilt wird`;
    case "step":
      return `der Schritt \`${part.name}\``;
    case "step-left-out":
      return `der Schritt \`${part.name}\`, der weggelassen ist`;
    case "step-added":
      return `der Schritt \`${part.name}\`, den die Vorlage nicht hat`;
    case "requirement-left-out":
      return `\`${part.requirement}\` von \`${part.name}\`, das weggelassen ist`;
    case "requirement-added":
      return `\`${part.requirement}\` von \`${part.name}\`, das neu ist`;
    case "consequence":
    case "limit":
      return `${KINDS[part.kind]} von \`${part.name}\` \`${part.requirement}\``;
    case "interval":
    case "rule":
      return `${KINDS[part.kind]} \`${part.name}\` von \`${part.of}\``;
    default:
      return `${KINDS[part.kind]} der Prüfung \`${part.of}\``;
  }
}
