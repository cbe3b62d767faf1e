import { ceilRational, floorRational, makeRational, multiplyRational, type Rational } from "./rational.js";

/** Towards which side a decimal that does not end is cut: `down` to minus infinity, `up` to plus infinity. */
export type Cut = "down" | "up";

/** `scaled / 10^places` as plain digits without closing zeros. */
function writeScaled(scaled: bigint, places: number): string {
  const sign = scaled < 0n ? "-" : "";
  const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(places + 1, "0");
  const whole = digits.slice(0, digits.length - places);
  const fraction = digits.slice(digits.length - places).replace(/0+$/, "");
  return sign + whole + (fraction === "" ? "" : `.${fraction}`);
}

/** Writes a rational whose decimal ends within `mostPlaces`; undefined where it does not. */
export function formatExactDecimal(value: Rational, mostPlaces: number): string | undefined {
  let places = 0;
  for (let power = 1n; places <= mostPlaces; places += 1, power *= 10n) {
    if (power % value.denominator === 0n) return writeScaled((value.numerator * power) / value.denominator, places);
  }
  return undefined;
}

/** Writes a rational with at most `places` decimals, cut towards the side that `cut` names. */
export function formatCutDecimal(value: Rational, places: number, cut: Cut): string {
  const scaled = multiplyRational(value, makeRational(10n ** BigInt(places)));
  return writeScaled(cut === "down" ? floorRational(scaled) : ceilRational(scaled), places);
}
