import {
  type Dimension,
  makeRational,
  multiplyRational,
  type ParsedQuantity,
  parseQuantity,
  type Quantity,
  type Rational,
  rationalOfQuantity,
} from "../quantities/index.js";

/** A limit as written: a quantity, or a share of a fact. */
export type ParsedLimit =
  | { readonly form: "quantity"; readonly quantity: Quantity }
  | { readonly form: "share"; readonly share: Quantity; readonly fact: string }
  | { readonly form: "fault"; readonly parsed: Extract<ParsedQuantity, { ok: false }>; readonly text: string };

const SHARE = /^(.*?) of ([a-z][a-zA-Z0-9.-]*)$/;
/** Quanta of 100 %. */
const WHOLE = 100_000_000n;

/** Reads `10 bar`, a whole number where a count is meant, or `90 % of rated-pressure`. */
export function parseLimit(limit: string | number, dimension: Dimension): ParsedLimit {
  const share = typeof limit === "string" ? SHARE.exec(limit) : null;
  const [, shareText, fact] = share ?? [];
  const parsed =
    shareText === undefined || fact === undefined
      ? parseQuantity(limit, dimension)
      : parseQuantity(shareText, "fraction");
  if (!parsed.ok) {
    const mend = parsed.mend === undefined || fact === undefined ? parsed.mend : `${parsed.mend} of ${fact}`;
    return { form: "fault", parsed: { ...parsed, mend }, text: String(limit) };
  }
  if (fact === undefined) return { form: "quantity", quantity: parsed.quantity };
  return { form: "share", share: parsed.quantity, fact };
}

/** The share of a fact, exact, in base quanta of the fact's dimension. */
export function takeShare(share: Quantity, fact: Quantity): Rational {
  return multiplyRational(makeRational(BigInt(share.quanta), WHOLE), rationalOfQuantity(fact));
}

/** The dimension in which the difference of two values is measured. */
export function differenceOf(dimension: Dimension): Dimension {
  return dimension === "temperature" ? "temperature-difference" : dimension;
}
