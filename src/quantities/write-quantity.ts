import { expandExponent } from "./expand-exponent.js";
import { formatQuantity } from "./format-quantity.js";
import { parseQuantity } from "./parse-quantity.js";
import { DIMENSIONS, findUnit, UNITS } from "./units.js";

/**
 * Writes a number of `unit` as the text that records and policies carry: `quantity(290, "bar")` is `290 bar`.
 *
 * The number is taken as its shortest decimal. Throws RangeError on a number that is not finite, an unknown unit, a
 * value finer than the unit's quantum (`0.1 + 0.2` bar is) or beyond 2^53 - 1 quanta.
 */
export function quantity(value: number, unit: string): string {
  const dimensions = DIMENSIONS.filter((dimension) => dimension !== "count" && findUnit(unit, dimension) !== undefined);
  if (dimensions.length === 0) {
    const known = UNITS.filter((each) => each.symbol !== "").map((each) => `\`${each.symbol}\``);
    throw new RangeError(`unknown unit \`${unit}\`; the units are ${[...new Set(known)].join(", ")}`);
  }
  const number = Number.isFinite(value) ? expandExponent(String(value)) : undefined;
  const results = dimensions.map((dimension) => parseQuantity(`${number ?? ""} ${unit}`, dimension));
  for (const result of results) if (result.ok) return formatQuantity(result.quantity);
  const isTooFine = results.some((result) => !result.ok && result.fault === "too-fine");
  const reason = isTooFine
    ? "is finer than the unit can hold exactly"
    : "is not a finite number within the unit's range";
  throw new RangeError(`\`${value} ${unit}\` ${reason}`);
}
