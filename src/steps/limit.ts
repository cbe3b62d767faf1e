import {
  type Dimension,
  makeRational,
  mendQuantity,
  multiplyRational,
  parseQuantity,
  type Quantity,
  type QuantityFault,
  type Rational,
  rationalOfQuantity,
} from "../quantities/index.js";

/** A limit as written: a quantity, or a share of a fact. */
export type ParsedLimit =
  | { readonly form: "quantity"; readonly quantity: Quantity }
  | { readonly form: "share"; readonly share: Quantity; readonly fact: string }
  | { readonly form: "fault"; readonly fault: QuantityFault };

const SHARE = /^(.*?) of ([a-z][a-zA-Z0-9.-]*)$/;
/** Quanta of 100 %. */
const WHOLE = 100_000_000n;

/** Reads `10 bar`, a whole number where a count is meant, or `90 % of rated-pressure`. */
export function parseLimit(limit: string | number, dimension: Dimension): ParsedLimit {
  const { written, fact } = splitShare(limit);
  const parsed = parseQuantity(written, fact === undefined ? dimension : "fraction");
  if (!parsed.ok) return { form: "fault", fault: parsed.fault };
  if (fact === undefined) return { form: "quantity", quantity: parsed.quantity };
  return { form: "share", share: parsed.quantity, fact };
}

/** What the author of a refused limit should have written, where the slip is a known one. */
export function mendLimit(limit: string | number, dimension: Dimension): string | undefined {
  const { written, fact } = splitShare(limit);
  if (fact === undefined) return mendQuantity(written, dimension);
  const mend = mendQuantity(written, "fraction");
  return mend === undefined ? undefined : `${mend} of ${fact}`;
}

function splitShare(limit: string | number): { readonly written: string | number; readonly fact?: string } {
  const [, written, fact] = (typeof limit === "string" ? SHARE.exec(limit) : null) ?? [];
  return written === undefined || fact === undefined ? { written: limit } : { written, fact };
}

/** The share of a fact, exact, in base quanta of the fact's dimension. */
export function takeShare(share: Quantity, fact: Quantity): Rational {
  return multiplyRational(makeRational(BigInt(share.quanta), WHOLE), rationalOfQuantity(fact));
}

/** The dimension in which the difference of two values is measured. */
export function differenceOf(dimension: Dimension): Dimension {
  return dimension === "temperature" ? "temperature-difference" : dimension;
}
