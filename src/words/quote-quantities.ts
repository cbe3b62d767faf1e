const UNITS = "(?:bar|mbar|kPa|MPa|Pa|psi|mmH2O|s|min|h|mm|cm|m|L/min|L|m3|Cel|K|dB|mg/m3|%|ppm)";
const QUANTITY = new RegExp(`-?\\d+(?:\\.\\d+)? ${UNITS}(?![\\w/])`, "g");

/** Puts the quantities of a text in backticks. */
export function quoteQuantities(text: string): string {
  return text.replace(QUANTITY, "`$&`");
}
