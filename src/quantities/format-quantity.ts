import { formatExactDecimal } from "./format-decimal.js";
import { makeRational } from "./rational.js";
import type { Quantity } from "./scan-quantity.js";
import { UNITS, type Unit } from "./units.js";

const MOST_PLACES = 15;

/** The number of `unit` as text; undefined where its decimal does not end. */
function formatNumber(quanta: number, unit: Unit): string | undefined {
  const number = (quanta - unit.offsetQuanta) / unit.quantaPerUnit;
  if (Number.isSafeInteger(number) && number * unit.quantaPerUnit + unit.offsetQuanta === quanta)
    return String(number + 0);
  const value = makeRational(BigInt(quanta) - BigInt(unit.offsetQuanta), BigInt(unit.quantaPerUnit));
  return formatExactDecimal(value, MOST_PLACES);
}

/**
 * Prints a quantity exactly, in its own unit; reading the text again gives the same quantity (a count prints without a
 * unit).
 *
 * A value made by arithmetic whose decimal does not end in its unit (1 s in minutes) is printed in the first unit of
 * the family where it does.
 */
export function formatQuantity(quantity: Quantity): string {
  const { quanta, unit } = quantity;
  for (const candidate of [unit, ...UNITS.filter((other) => other.family === unit.family)]) {
    const number = formatNumber(quanta, candidate);
    if (number !== undefined) return candidate.symbol === "" ? number : `${number} ${candidate.symbol}`;
  }
  throw new Error(`no unit of ${unit.family.id} prints ${quanta} quanta exactly`);
}
