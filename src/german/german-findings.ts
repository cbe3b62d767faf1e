import type { RequirementName, UndecidedReason } from "../terms/index.js";
import { type FindingParams, type FindingWords, type QuantityName, quoteQuantities } from "../words/index.js";

export const GERMAN_REASONS: Readonly<Record<UndecidedReason, string>> = {
  "not-for-this-policy": "die Richtlinie gilt nicht für dieses Protokoll",
  "nothing-judged": "nichts Wesentliches ließ sich beurteilen",
  "fact-missing": "im Protokoll fehlt eine Angabe, von der der Grenzwert abhängt",
  "facts-differ": "das Protokoll nennt verschiedene Werte für eine Angabe, von der der Grenzwert abhängt",
  "fitting-not-recorded": "das Protokoll sagt nicht, ob dieses Teil vorhanden ist",
  "no-case": "kein Fall der Toleranz gilt für dieses Protokoll",
  "no-date": "im Protokoll fehlt das Datum, ab dem gerechnet wird",
  "order-unknown": "aus dem Protokoll geht nicht hervor, in welcher Reihenfolge geprüft wurde",
  "not-yet": "noch nicht ausgefüllt",
  missing: "nichts ist eingetragen",
  "not-done": "als nicht durchgeführt eingetragen",
  unreadable: "der Eintrag ist nicht lesbar",
  "no-unit": "dem Wert fehlt die Einheit",
  "unknown-unit": "die Einheit ist nicht bekannt",
  "wrong-dimension": "der Wert misst etwas anderes",
  "unknown-word": "dieses Wort ist hier nicht vorgesehen",
  "too-fine": "der Wert hat mehr Nachkommastellen, als für seine Einheit vorgesehen sind",
  "off-range": "einen solchen Wert kann das Messgerät nicht anzeigen",
  "mixed-units": "die Messwerte stehen in Einheiten, die sich nicht genau vergleichen lassen",
  "instrument-unknown": "eingetragen ist ein anderes Messgerät, als die Richtlinie nennt",
  "finer-than-division": "einen Wert zwischen zwei Teilstrichen kann das Messgerät nicht anzeigen",
  conflicting: "das Protokoll widerspricht sich",
  "date-ahead": "das Datum liegt nach dem des Protokolls",
  "start-too-low": "der verlangte Anfangswert der Haltezeit ist nicht nachgewiesen",
  "hold-too-short": "es ist nicht nachgewiesen, dass die Haltezeit lang genug war",
  "moved-the-wrong-way": "der Wert hat sich in die andere Richtung geändert",
  uncertainty: "der Eintrag lässt beides zu",
  "explained-by-temperature": "nur mit der Temperaturkorrektur liegt der Wert innerhalb",
  "rule-incomplete": "eine Angabe fehlt, die die Regel braucht, oder ist anders geschrieben",
};

/** What is missing where something is recorded: a place among several, or which of several things a figure belongs to. */
function namePart(requirement: RequirementName): string {
  return requirement === "match"
    ? "nicht jede Stelle ist eingetragen"
    : "der Eintrag nennt nicht, für welches Gerät er gilt (`of`)";
}

const SUBJECTS: Readonly<Record<RequirementName, string>> = {
  condition: "der Zustand",
  match: "die Übereinstimmung der Texte",
  level: "der Messwert",
  apart: "der Abstand der Messwerte",
  start: "der Anfangswert der Haltezeit",
  lasting: "die Länge der Haltezeit",
  drop: "der Abfall während der Haltezeit",
  rise: "der Anstieg während der Haltezeit",
  change: "die Änderung während der Haltezeit",
  elapsed: "die Zeit",
  date: "das Datum",
  order: "die Reihenfolge der Schritte",
  competence: "die Befähigung der prüfenden Person",
  due: "die Fälligkeit",
  rule: "die Regel",
};

const QUANTITIES: Readonly<Record<QuantityName, string>> = {
  pressure: "der Druck",
  duration: "die Dauer",
  length: "die Länge",
  volume: "das Volumen",
  flow: "der Volumenstrom",
  temperature: "die Temperatur",
  "temperature-difference": "der Temperaturunterschied",
  "sound-level": "der Schallpegel",
  "mass-concentration": "die Massenkonzentration",
  fraction: "der Anteil",
  count: "die Anzahl",
};

const CHANGES = { drop: "fiel", rise: "stieg", change: "änderte sich" } as const;
const NOTHING = "nichts";

export const GERMAN_FINDINGS: FindingWords = {
  decided: {
    condition: ({ defect }) =>
      defect === undefined ? "ein Mangel ist eingetragen" : `der Mangel \`${defect}\` ist eingetragen`,
    match: ({ observed = NOTHING, accept }) => `die Texte sind nicht wie verlangt: ${observed}; verlangt: ${accept}`,
    level: sayReading,
    start: sayReading,
    apart: (params) => `die Messwerte liegen ${quoteObserved(params)} auseinander; ${sayAccepted(params)}`,
    lasting: (params) => `die Haltezeit dauerte ${quoteObserved(params)}; ${sayAccepted(params)}`,
    drop: (params) => sayChange("drop", params),
    rise: (params) => sayChange("rise", params),
    change: (params) => sayChange("change", params),
    elapsed: (params) =>
      params.never ? sayNever(params) : `es dauerte ${quoteObserved(params)}; ${sayAccepted(params)}`,
    date: ({ observed = NOTHING, accept }) => `das Datum ist \`${observed}\`; zulässig: ${accept}`,
    order: ({ late = "", early = "" }) => `\`${late}\` wurde nach \`${early}\` eingetragen, gehört aber davor`,
    competence: ({ observed = NOTHING, accept }) =>
      `geprüft hat \`${observed}\`; vorgesehen ist die Prüfung für ${accept}`,
    due: ({ observed = NOTHING, accept, forbids }) =>
      `zuletzt durchgeführt am \`${observed}\`; zulässig: ${accept}${sayForbidden(forbids)}`,
    rule: ({ accept }) => `die Regel ist nicht erfüllt: ${accept}`,
  },
  undecided(requirement, reason, observed) {
    const isRecorded = observed !== undefined && observed.trim() !== "" && requirement !== "apart";
    const recorded = isRecorded ? `; eingetragen ist \`${observed}\`` : "";
    const isGap = isRecorded && reason === "missing";
    const why =
      reason === undefined ? "der Grund ist nicht bekannt" : isGap ? namePart(requirement) : GERMAN_REASONS[reason];
    return `${SUBJECTS[requirement]} lässt sich nicht beurteilen: ${why}${recorded}`;
  },
};

function sayReading(params: FindingParams): string {
  return params.never ? sayNever(params) : `abgelesen wurde ${quoteObserved(params)}; ${sayAccepted(params)}`;
}

function sayNever(params: FindingParams): string {
  return `das erwartete Ereignis blieb aus; ${sayAccepted(params)}`;
}

function sayChange(requirement: keyof typeof CHANGES, params: FindingParams): string {
  const what = params.quantity === undefined ? "der Wert" : QUANTITIES[params.quantity];
  return `${what} ${CHANGES[requirement]} während der Haltezeit um ${quoteObserved(params)}; ${sayAccepted(params)}`;
}

function quoteObserved({ observed = NOTHING }: FindingParams): string {
  return quoteQuantities(observed);
}

function sayAccepted({ outcome, accept }: FindingParams): string {
  const close = outcome === "caution" ? "; das liegt nahe an der Grenze" : "";
  const verb = isSingular(accept) ? "ist" : "sind";
  return `zulässig ${verb} ${quoteQuantities(accept)}${close}`;
}

/** Whether a limit speaks of one thing, "höchstens 1 bar"; else German has the plural. */
function isSingular(accept: string): boolean {
  const numbers = accept.match(/-?\d+(?:\.\d+)?/g) ?? [];
  return numbers.length === 0 || (numbers.length === 1 && numbers[0] === "1");
}

/** What may not be done once an interval has passed; printed, never judged. */
function sayForbidden(forbids: string | undefined): string {
  if (forbids === undefined) return "";
  return `; bis zur nächsten Durchführung nicht ${forbids === "fill" ? "füllen" : "benutzen"}`;
}
