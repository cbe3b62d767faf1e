import type { PlainThing, QuantityName, RuleThing, Thing } from "../words/index.js";

const THINGS: Readonly<Record<PlainThing, string>> = {
  adoption: "Ausnahme",
  check: "Prüfung",
  "check of the parent": "Prüfung der Vorlage",
  fact: "Angabe",
  instrument: "Messgerät",
  interval: "Frist",
  place: "Stelle",
  "quantity fact": "Angabe mit Einheit",
  rule: "Regel",
  step: "Schritt",
  "step of the parent": "Schritt der Vorlage",
  "step of the same check": "Schritt derselben Prüfung",
  "step of this check": "Schritt dieser Prüfung",
  "step to stand beside": "Nachbarschritt",
  "text fact": "Angabe als Text",
  tolerance: "Toleranz",
};

/** What a policy names; something of a thing keeps the name that its author gave it. */
export function nameThing(thing: Thing): string {
  if (isPlain(thing)) return THINGS[thing];
  const [, whose = ""] = thing.split("`");
  return thing.startsWith("requirement") ? `Anforderung von \`${whose}\`` : `Wert von \`${whose}\``;
}

function isPlain(thing: Thing): thing is PlainThing {
  return Object.hasOwn(THINGS, thing);
}

/** What is measured, without an article. */
export const GERMAN_QUANTITIES: Readonly<Record<QuantityName, string>> = {
  pressure: "Druck",
  duration: "Dauer",
  length: "Länge",
  volume: "Volumen",
  flow: "Volumenstrom",
  temperature: "Temperatur",
  "temperature-difference": "Temperaturunterschied",
  "sound-level": "Schallpegel",
  "mass-concentration": "Massenkonzentration",
  fraction: "Anteil",
  count: "Anzahl",
};

export const GERMAN_RULE_THINGS: Readonly<Record<RuleThing, string>> = {
  "a pressure": "ein Druck",
  "a duration": "eine Dauer",
  "a length": "eine Länge",
  "a volume": "ein Volumen",
  "a flow": "ein Volumenstrom",
  "a temperature": "eine Temperatur",
  "a temperature-difference": "ein Temperaturunterschied",
  "a sound-level": "ein Schallpegel",
  "a mass-concentration": "eine Massenkonzentration",
  "a fraction": "ein Anteil",
  "a count": "eine Anzahl",
  "a date": "ein Datum",
  "a list": "eine Liste",
  "a list of values": "eine Liste von Werten",
  "a number": "eine Zahl",
  "a plain value": "ein einfacher Wert",
  "a quantity": "eine Größe",
  "a quantity or a date": "eine Größe oder ein Datum",
  "a quantity that can be added, such as a difference of temperatures":
    "eine Größe, die sich addieren lässt, etwa ein Temperaturunterschied",
  "a text": "ein Text",
  "a text, a date or a quantity": "ein Text, ein Datum oder eine Größe",
  "a text, true or false, a date or a quantity": "ein Text, wahr oder falsch, ein Datum oder eine Größe",
  "a value that JSON does not know (bigint)": "ein Wert, den JSON nicht kennt (bigint)",
  "a value that JSON does not know (function)": "ein Wert, den JSON nicht kennt (function)",
  "a value that JSON does not know (symbol)": "ein Wert, den JSON nicht kennt (symbol)",
  "a value that JSON does not know (undefined)": "ein Wert, den JSON nicht kennt (undefined)",
  "an empty list": "eine leere Liste",
  "an empty text": "ein leerer Text",
  "an operator": "ein Operator",
  null: "null",
  "true or false": "wahr oder falsch",
};
