import { type Cut, formatCutDecimal, formatExactDecimal } from "./format-decimal.js";
import { divideRational, makeRational, type Rational, subtractRational } from "./rational.js";
import { findUnit, type Unit } from "./units.js";

const MOST_EXACT_PLACES = 15;
const MOST_CUT_PLACES = 6;

function joinUnit(number: string, unit: Unit): string {
  return unit.symbol === "" ? number : `${number} ${unit.symbol}`;
}

/** Prints a number of family quanta, the offset already taken off. */
function formatQuanta(quanta: Rational, unit: Unit, cut: Cut): string {
  const number = divideRational(quanta, makeRational(BigInt(unit.quantaPerUnit)));
  const exact = formatExactDecimal(number, MOST_EXACT_PLACES);
  if (exact !== undefined) return joinUnit(exact, unit);
  const quantumPlaces = (unit.quantaPerUnit - 1).toString().length;
  const places = unit.quantaPerUnit === 1 ? 0 : Math.min(quantumPlaces, MOST_CUT_PLACES);
  return joinUnit(formatCutDecimal(number, places, cut), unit);
}

function countQuanta(value: Rational, unit: Unit): Rational {
  return divideRational(value, makeRational(unit.family.quantumNumerator, unit.family.quantumDenominator));
}

/**
 * Prints a value of base quanta in `unit`: exactly where its decimal ends within 15 places, else cut to the unit's
 * quantum and to 6 places at most, towards the side that does not look better than it is.
 */
export function formatRational(value: Rational, unit: Unit, cut: Cut): string {
  return formatQuanta(subtractRational(countQuanta(value, unit), makeRational(BigInt(unit.offsetQuanta))), unit, cut);
}

/**
 * Prints a difference of base quanta in `unit`, as `formatRational` does; a difference of temperatures is in kelvin.
 */
export function formatDifference(value: Rational, unit: Unit, cut: Cut): string {
  const differenceUnit = unit.dimension === "temperature" ? (findUnit("K", "temperature-difference") ?? unit) : unit;
  return formatQuanta(countQuanta(value, unit), differenceUnit, cut);
}
