const LARGEST_SHIFT = 40;

/**
 * Writes a decimal with an exponent as plain digits, exactly: `2.9e2` is `290`, `1e-7` is `0.0000001`.
 *
 * A text without an exponent comes back as it is; undefined where it is no such number or the shift is beyond 40
 * places.
 */
export function expandExponent(text: string): string | undefined {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:[eE]([+-]?\d{1,3}))?$/.exec(text);
  if (match === null) return undefined;
  const [, sign = "", whole = "", fraction = "", exponent] = match;
  if (exponent === undefined) return text;
  const shift = Number(exponent);
  if (Math.abs(shift) > LARGEST_SHIFT) return undefined;
  const digits = "0".repeat(LARGEST_SHIFT) + whole + fraction + "0".repeat(LARGEST_SHIFT);
  const point = LARGEST_SHIFT + whole.length + shift;
  const wholeDigits = digits.slice(0, point).replace(/^0+(?=\d)/, "");
  const fractionDigits = digits.slice(point).replace(/0+$/, "");
  return sign + (wholeDigits === "" ? "0" : wholeDigits) + (fractionDigits === "" ? "" : `.${fractionDigits}`);
}
