import type { AssessmentWords, LimitWords, RuleWords } from "../words/index.js";
import { sayEvery, saySpan } from "./german-spans.js";

export const GERMAN_LIMITS: LimitWords = {
  bounds: {
    "at-least": (limit) => `mindestens ${limit}`,
    "at-most": (limit) => `höchstens ${limit}`,
    above: (limit) => `über ${limit}`,
    below: (limit) => `unter ${limit}`,
  },
  range: (ends) => ends.join(" bis "),
  all: (bounds) => bounds.join(" und "),
  share: (value, share, fact) => `${value} (${share} von ${fact})`,
  satisfactory: "in Ordnung",
  sameInEveryPlace: "an jeder Stelle gleich",
  equalTo: (text) => `gleich ${text}`,
  otherThan: (text) => `anders als ${text}`,
  notPast: "nicht abgelaufen",
  notOlder: (span) => `höchstens ${saySpan(span)} alt`,
  every: sayEvery,
  goodTo: (date) => ` (gültig bis ${date})`,
  didNotOccur: "blieb aus",
  anyOf: (names) => names.map((name) => `\`${name}\``).join(" oder "),
  orders: {
    any: "jeder Schritt nach denen, die er nennt",
    position: "die Schritte wie aufgeführt, nach ihrem Platz im Protokoll",
    at: "die Schritte wie aufgeführt, nach ihren Zeiten",
  },
};

export const GERMAN_RULES: RuleWords = {
  signs: {
    "<": ["kleiner als", "vor"],
    "<=": ["höchstens", "nicht nach"],
    ">": ["größer als", "nach"],
    ">=": ["mindestens", "nicht vor"],
  },
  compare: (left, sign, right) => `${left} ist ${sign} ${right}`,
  and: ", und ",
  or: ", oder ",
  not: (term) => `nicht ${term}`,
  choose: (value, condition, otherwise) => `${value}, falls ${condition}, sonst ${otherwise}`,
  equal: (left, right) => `${left} ist ${right}`,
  unequal: (left, right) => `${left} ist nicht ${right}`,
  least: (terms) => `das kleinste von (${terms})`,
  greatest: (terms) => `das größte von (${terms})`,
  size: (term) => `der Betrag von ${term}`,
  oneOf: (item, list) => `${item} ist eines von (${list})`,
  lists: {
    all: (list, holds) => `für jeden Eintrag von ${list} (${holds})`,
    some: (list, holds) => `für mindestens einen Eintrag von ${list} (${holds})`,
    none: (list, holds) => `für keinen Eintrag von ${list} (${holds})`,
    count: (list, holds) => `die Anzahl der Einträge von ${list} (${holds})`,
  },
};

export const GERMAN_OPEN_ENDS: AssessmentWords["openEnds"] = {
  from: "unbestimmt",
  to: "unbestimmt",
  until: "auf Weiteres",
};

export const GERMAN_PROBLEMS: AssessmentWords["problems"] = {
  "no-object": () => "ein Protokoll ist ein JSON-Objekt",
  "too-deep": ({ most }) => `ein Protokoll ist höchstens ${most} Ebenen tief verschachtelt`,
  "not-this-format": () => "`tenbar` muss die Zahl 1 sein",
  "blank-text": ({ key }) => `\`${key}\` muss ein Text sein, der nicht leer ist`,
  "no-time": () =>
    "`at` muss ein Zeitpunkt mit Zeitzone, eine Ortszeit oder ein Datum sein, etwa `2026-04-12T07:04:00+01:00`",
  "no-subject": () => "`subject` muss ein Objekt sein",
  "no-steps": () => "`steps` muss eine Liste sein",
  "too-many-steps": ({ most, count }) => `ein Protokoll hat höchstens ${most} Schritte; dieses hat ${count}`,
  "no-step": () => "ein Schritt muss ein Objekt mit einem Text `step` sein",
};
