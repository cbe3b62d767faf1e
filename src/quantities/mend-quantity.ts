import { expandExponent } from "./expand-exponent.js";
import { scanQuantity } from "./scan-quantity.js";
import { type Dimension, findUnit, unitSymbolsOf } from "./units.js";

const LONGEST_MENDABLE = 64;

const COMPARISONS: ReadonlyMap<string, string> = new Map([
  ["≤", "at-most: "],
  ["<=", "at-most: "],
  ["=<", "at-most: "],
  ["≥", "at-least: "],
  [">=", "at-least: "],
  ["=>", "at-least: "],
  ["<", "below: "],
  [">", "above: "],
]);

/** Everyday spellings that are no near miss of the symbol they mean. */
const EVERYDAY_SPELLINGS: ReadonlyMap<string, string> = new Map([
  ["bars", "bar"],
  ["lbf/in2", "psi"],
  ["hpa", "mbar"],
  ["mmwg", "mmH2O"],
  ["mmwc", "mmH2O"],
  ["sec", "s"],
  ["secs", "s"],
  ["second", "s"],
  ["seconds", "s"],
  ["mins", "min"],
  ["minute", "min"],
  ["minutes", "min"],
  ["hr", "h"],
  ["hrs", "h"],
  ["hour", "h"],
  ["hours", "h"],
  ["litre", "L"],
  ["litres", "L"],
  ["liter", "L"],
  ["liters", "L"],
  ["lpm", "L/min"],
  ["m³", "m3"],
  ["mg/m³", "mg/m3"],
  ["c", "Cel"],
  ["°c", "Cel"],
  ["celsius", "Cel"],
  ["percent", "%"],
]);

/** Whether one letter added, dropped or replaced turns `left` into `right`. */
function isOneLetterApart(left: string, right: string): boolean {
  if (Math.abs(left.length - right.length) > 1) return false;
  let at = 0;
  while (at < left.length && at < right.length && left[at] === right[at]) at += 1;
  const [leftRest, rightRest] = [left.slice(at), right.slice(at)];
  return leftRest.slice(1) === rightRest || leftRest === rightRest.slice(1) || leftRest.slice(1) === rightRest.slice(1);
}

/** The unit of `dimension` that `text` most likely stands for; the usual one where nothing was written. */
function mendUnit(text: string, dimension: Dimension): string | undefined {
  const symbols = unitSymbolsOf(dimension);
  if (text === "") return symbols[0];
  if (findUnit(text, dimension) !== undefined) return text;
  // Why: a millipascal is a real unit, a thousand-millionth of the one it would be mended to.
  if (text === "mPa") return undefined;
  const lower = text.toLowerCase();
  const sameLetters = symbols.find((symbol) => symbol.toLowerCase() === lower);
  if (sameLetters !== undefined) return sameLetters;
  const everyday = EVERYDAY_SPELLINGS.get(lower);
  if (everyday !== undefined && findUnit(everyday, dimension) !== undefined) return everyday;
  const near = symbols.filter((symbol) => symbol.length >= 3 && isOneLetterApart(symbol.toLowerCase(), lower));
  return near.length === 1 ? near[0] : undefined;
}

/** Puts a number with a decimal comma, an exponent, a bare point or leading zeros into the grammar. */
function mendNumber(text: string): string | undefined {
  // Why: `1,000` may mean one or a thousand, so it gets no mend.
  const isGrouped = /^-?[1-9]\d{0,2},\d{3}$/.test(text);
  const pointed = !isGrouped && /^[^,.]*,\d+(?:[eE].*)?$/.test(text) ? text.replace(",", ".") : text;
  const completed = pointed.replace(/^(-?)(?=\.\d)/, "$10").replace(/^(-?\d+)\.(?!\d)/, "$1");
  const expanded = expandExponent(completed);
  return expanded?.replace(/^(-?)0+(?=\d)/, "$1");
}

/**
 * What the author of a text or number that is no quantity should have written, where the slip is a known one; undefined where it is
 * not.
 *
 * The mend is only ever shown: no value is taken from it.
 */
export function mendQuantity(value: unknown, dimension: Dimension): string | undefined {
  if (typeof value === "string") return mendText(value, dimension);
  return typeof value === "number" && dimension !== "count" ? mendText(String(value), dimension) : undefined;
}

function mendText(text: string, dimension: Dimension): string | undefined {
  if (text.length > LONGEST_MENDABLE) return undefined;
  const spaced = text.replace(/[\s\u200b]+/g, " ").trim();
  const [, comparison = "", compared = ""] = /^([<>=≤≥]{0,2}) ?(.*)$/.exec(spaced) ?? [];
  const signed = compared.replace(/^[\u2010-\u2013\u2212] ?/, "-").replace(/^\+ ?/, "");
  const match = /^(-?[\d.,]+(?:[eE][+-]?\d+)?) ?(.*)$/.exec(signed);
  if (match === null) return undefined;
  const [, numberText = "", unitText = ""] = match;
  const number = mendNumber(numberText);
  if (dimension === "count") {
    const isCount = number !== undefined && unitText === "" && /^-?\d+$/.test(number);
    return isCount && Number.isSafeInteger(Number(number)) ? number : undefined;
  }
  const unit = mendUnit(unitText, dimension);
  if (number === undefined || unit === undefined) return undefined;
  const mended = `${number} ${unit}`;
  if (typeof scanQuantity(mended, dimension) === "string" || mended === text) return undefined;
  if (comparison === "") return mended;
  const word = COMPARISONS.get(comparison);
  return word === undefined ? undefined : word + mended;
}
