import { type Quantity, type ScanFault, scanQuantity } from "./scan-quantity.js";
import { DIMENSIONS, type Dimension, findUnit } from "./units.js";

export type QuantityFault = "missing" | "unreadable" | "no-unit" | "unknown-unit" | "wrong-dimension" | "too-fine";

/** A quantity, or why there is none. */
export type ParsedQuantity =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly fault: QuantityFault };

function refuse(fault: QuantityFault): ParsedQuantity {
  return Object.freeze({ ok: false, fault });
}

function accept(quantity: Quantity): ParsedQuantity {
  return Object.freeze({ ok: true, quantity });
}

/** A count is a JSON integer of magnitude at most 2^53 - 1. */
function parseCount(value: number): ParsedQuantity {
  const unit = findUnit("", "count");
  if (unit === undefined || !Number.isFinite(value)) return refuse("unreadable");
  if (!Number.isInteger(value)) return refuse("too-fine");
  if (!Number.isSafeInteger(value)) return refuse("unreadable");
  // Why: adding 0 turns a negative zero into the plain one.
  return accept(Object.freeze({ quanta: value + 0, unit }));
}

/** Names the fault of a text that is outside the grammar. */
function nameTextFault(text: string, dimension: Dimension): QuantityFault {
  const match = /^-?(0|[1-9]\d*)(?:\.(\d+))?(?: (\S+))?$/.exec(text);
  if (match === null) return "unreadable";
  const [, whole = "", fraction = "", symbol] = match;
  if (symbol === undefined) return dimension === "count" ? "unreadable" : "no-unit";
  if (findUnit(symbol, dimension) === undefined) {
    return DIMENSIONS.some((other) => findUnit(symbol, other) !== undefined) ? "wrong-dimension" : "unknown-unit";
  }
  return fraction.length > 15 && whole.length <= 15 ? "too-fine" : "unreadable";
}

function explainScanFault(text: string, dimension: Dimension, fault: ScanFault): ParsedQuantity {
  if (fault === "too-fine") return refuse("too-fine");
  if (fault === "beyond-range") return refuse("unreadable");
  if (text.trim() === "") return refuse("missing");
  return refuse(nameTextFault(text, dimension));
}

/**
 * Reads anything found in a policy or record as an exact quantity of `dimension`.
 *
 * Text follows the grammar `NUMBER UNIT` and a count is a JSON integer. Null, undefined, blank text and an empty list
 * are `missing`; a bare number is `no-unit`; a value finer than its quantum is `too-fine`; one beyond 2^53 - 1 quanta
 * or below absolute zero, and everything else, is `unreadable`. Nothing is rounded.
 */
export function parseQuantity(value: unknown, dimension: Dimension): ParsedQuantity {
  if (typeof value === "string") {
    const scanned = scanQuantity(value, dimension);
    return typeof scanned === "string" ? explainScanFault(value, dimension, scanned) : accept(scanned);
  }
  if (value === null || value === undefined) return refuse("missing");
  if (typeof value === "number") {
    if (dimension === "count") return parseCount(value);
    return refuse(Number.isFinite(value) ? "no-unit" : "unreadable");
  }
  return refuse(Array.isArray(value) && value.length === 0 ? "missing" : "unreadable");
}
