import { DIMENSIONS, mendQuantity } from "../quantities/index.js";

/** `5,5 mbar`, the whole of it or a member of a list. */
const DECIMAL_COMMA = /(?<![\d.,])(-?\d+),(\d+ ?[^\s,\d[\]{}][^\s,[\]{}]*)/g;
/** Why: `1,000` may mean one or a thousand. */
const GROUPED = /^[1-9]\d{0,2}$/;

/** A text in which every decimal comma of a quantity is a point; nothing where there is none, or one that may set off thousands. */
export function mendDecimalCommas(written: string): string | undefined {
  let isDoubtful = false;
  const mended = written.replaceAll(DECIMAL_COMMA, (_, whole: string, rest: string) => {
    if (GROUPED.test(whole.replace("-", "")) && /^\d{3}(?!\d)/.test(rest)) isDoubtful = true;
    return `${whole}.${rest}`;
  });
  return isDoubtful || mended === written ? undefined : mended;
}

/** `at-most: 10 bar` for `≤ 10 bar`; nothing for any other text. */
export function mendComparison(text: string): string | undefined {
  const [, head = "", tail = ""] = /^(.*?)( of [a-z][a-zA-Z0-9.-]*)?$/.exec(text) ?? [];
  for (const dimension of DIMENSIONS) {
    const mend = mendQuantity(head, dimension);
    if (mend?.includes(": ") === true) return `${mend}${tail}`;
  }
  return undefined;
}
