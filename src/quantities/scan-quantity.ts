import { type Dimension, findUnit, type Unit } from "./units.js";

/**
 * An exact value: whole quanta of the unit's family, of magnitude at most 2^53 - 1. Temperatures count from absolute
 * zero.
 */
export interface Quantity {
  readonly quanta: number;
  readonly unit: Unit;
}

/** `malformed` is a text outside the grammar; `beyond-range` more than 2^53 - 1 quanta, or below absolute zero. */
export type ScanFault = "malformed" | "too-fine" | "beyond-range";

const LONGEST_DIGITS = 15;
const ZERO = 48;
const NINE = 57;
const MINUS = 45;
const POINT = 46;
const SPACE = 32;

const POWERS_OF_TEN: readonly number[] = Object.freeze(
  Array.from({ length: LONGEST_DIGITS + 1 }, (_, power) => Number(`1e${power}`)),
);

/** Where the run of decimal digits that begins at `from` ends. */
function skipDigits(text: string, from: number): number {
  let at = from;
  for (let code = text.charCodeAt(at); code >= ZERO && code <= NINE; code = text.charCodeAt(at)) at += 1;
  return at;
}

/** The digits of `text` in [from, to) as an integer; exact up to 15 digits. */
function readDigits(text: string, from: number, to: number): number {
  let value = 0;
  for (let at = from; at < to; at += 1) value = value * 10 + (text.charCodeAt(at) - ZERO);
  return value;
}

/** Quanta of the fraction `digits / 10^places` of a unit; undefined where they are not whole. */
function countFractionQuanta(digits: number, places: number, unit: Unit): number | undefined {
  if (digits === 0) return 0;
  const power = POWERS_OF_TEN[places];
  if (power === undefined) return undefined;
  const product = digits * unit.quantaPerUnit;
  if (product <= Number.MAX_SAFE_INTEGER) return product % power === 0 ? product / power : undefined;
  const exact = BigInt(digits) * BigInt(unit.quantaPerUnit);
  return exact % BigInt(power) === 0n ? Number(exact / BigInt(power)) : undefined;
}

/** Makes the quantity `±(whole + digits / 10^places)` of `unit`, exactly or not at all. */
function makeQuantity(
  negative: boolean,
  whole: number,
  digits: number,
  places: number,
  unit: Unit,
): Quantity | ScanFault {
  const fractionQuanta = countFractionQuanta(digits, places, unit);
  if (fractionQuanta === undefined) return "too-fine";
  // Invariant: an exact product or sum above 2^53 - 1 also rounds to more than 2^53 - 1, so the comparison below cannot
  // be fooled by a rounded one.
  const size = whole * unit.quantaPerUnit + fractionQuanta;
  // Why: the sum is never a negative zero, since the offset is 0 or more.
  const quanta = (negative ? -size : size) + unit.offsetQuanta;
  if (Math.abs(quanta) > Number.MAX_SAFE_INTEGER) return "beyond-range";
  if (unit.dimension === "temperature" && quanta < 0) return "beyond-range";
  return Object.freeze({ quanta, unit });
}

/**
 * Reads a text that follows the grammar to the letter: `-?(0|[1-9][0-9]{0,14})(\.[0-9]{1,15})?`, one space, a unit of
 * `dimension`.
 *
 * Written over character codes, since a replay reads millions of them. A count has no text form.
 */
export function scanQuantity(text: string, dimension: Dimension): Quantity | ScanFault {
  const negative = text.charCodeAt(0) === MINUS;
  const wholeFrom = negative ? 1 : 0;
  const wholeTo = skipDigits(text, wholeFrom);
  const wholeLength = wholeTo - wholeFrom;
  if (wholeLength === 0 || wholeLength > LONGEST_DIGITS) return "malformed";
  if (wholeLength > 1 && text.charCodeAt(wholeFrom) === ZERO) return "malformed";
  let at = wholeTo;
  let digits = 0;
  let places = 0;
  if (text.charCodeAt(at) === POINT) {
    const from = at + 1;
    at = skipDigits(text, from);
    places = at - from;
    if (places === 0 || places > LONGEST_DIGITS) return "malformed";
    digits = readDigits(text, from, at);
  }
  if (text.charCodeAt(at) !== SPACE || dimension === "count") return "malformed";
  const unit = findUnit(text.slice(at + 1), dimension);
  if (unit === undefined) return "malformed";
  return makeQuantity(negative, readDigits(text, wholeFrom, wholeTo), digits, places, unit);
}
