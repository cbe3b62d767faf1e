import type { Quantity } from "./scan-quantity.js";
import type { Family } from "./units.js";

/** An exact fraction in lowest terms with a positive denominator. Quantities are in base quanta of their dimension. */
export interface Rational {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

function findGreatestDivisor(left: bigint, right: bigint): bigint {
  let [larger, smaller] = [left < 0n ? -left : left, right];
  while (smaller !== 0n) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

/** Throws RangeError on a zero denominator, which only a bug can ask for. */
export function makeRational(numerator: bigint, denominator = 1n): Rational {
  if (denominator === 1n) return Object.freeze({ numerator, denominator });
  if (denominator === 0n) throw new RangeError("a rational needs a denominator other than 0");
  if (denominator < 0n) return makeRational(-numerator, -denominator);
  const divisor = findGreatestDivisor(numerator, denominator);
  return Object.freeze({ numerator: numerator / divisor, denominator: denominator / divisor });
}

export function addRational(left: Rational, right: Rational): Rational {
  return makeRational(
    left.numerator * right.denominator + right.numerator * left.denominator,
    left.denominator * right.denominator,
  );
}

export function negateRational(value: Rational): Rational {
  return makeRational(-value.numerator, value.denominator);
}

export function subtractRational(left: Rational, right: Rational): Rational {
  return addRational(left, negateRational(right));
}

export function multiplyRational(left: Rational, right: Rational): Rational {
  return makeRational(left.numerator * right.numerator, left.denominator * right.denominator);
}

/** Throws RangeError where the divisor is 0. */
export function divideRational(dividend: Rational, divisor: Rational): Rational {
  return makeRational(dividend.numerator * divisor.denominator, dividend.denominator * divisor.numerator);
}

export function compareRational(left: Rational, right: Rational): -1 | 0 | 1 {
  const difference = left.numerator * right.denominator - right.numerator * left.denominator;
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

export function isNegativeRational(value: Rational): boolean {
  return value.numerator < 0n;
}

/** The greatest integer that is not above the value. */
export function floorRational(value: Rational): bigint {
  const quotient = value.numerator / value.denominator;
  return value.numerator % value.denominator < 0n ? quotient - 1n : quotient;
}

/** The least integer that is not below the value. */
export function ceilRational(value: Rational): bigint {
  return -floorRational(negateRational(value));
}

/** Whole quanta of a family, in base quanta of its dimension. Throws RangeError unless they are a whole number. */
export function rationalOfQuanta(quanta: number, family: Family): Rational {
  return makeRational(BigInt(quanta) * family.quantumNumerator, family.quantumDenominator);
}

/** A quantity in base quanta of its dimension: pressure in mPa, temperature in mK above absolute zero. */
export function rationalOfQuantity(quantity: Quantity): Rational {
  return rationalOfQuanta(quantity.quanta, quantity.unit.family);
}
