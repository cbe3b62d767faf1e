import { listSpanParts } from "./list-span-parts.js";
import { joinWords } from "./word-list.js";

/** `P1Y6M` is "1 year and 6 months"; what is no span stays as it is. */
export function sayEnglishSpan(span: string): string {
  const parts = listSpanParts(span).map(({ unit, count }) => `${count} ${count === 1 ? unit.slice(0, -1) : unit}`);
  return parts.length === 0 ? span : joinWords(parts, "and");
}

/** `P1Y` is "every year", `P30D` "every 30 days". */
export function sayEnglishEvery(span: string): string {
  return `every ${sayEnglishSpan(span).replace(/^1 (?=[a-z]+$)/, "")}`;
}
