import { joinWords, listSpanParts, type SpanUnit } from "../words/index.js";

const NAMES: Readonly<Record<SpanUnit, readonly [one: string, several: string, every: string]>> = {
  years: ["Jahr", "Jahre", "jedes Jahr"],
  months: ["Monat", "Monate", "jeden Monat"],
  weeks: ["Woche", "Wochen", "jede Woche"],
  days: ["Tag", "Tage", "jeden Tag"],
};

/** `P1Y6M` sind "1 Jahr und 6 Monate". */
export function saySpan(span: string): string {
  const parts = listSpanParts(span).map(({ unit, count }) => `${count} ${NAMES[unit][count === 1 ? 0 : 1]}`);
  return parts.length === 0 ? span : joinWords(parts, "und");
}

/** `P1Y` heißt "jedes Jahr", `P30D` "alle 30 Tage". */
export function sayEvery(span: string): string {
  const [first, ...others] = listSpanParts(span);
  return first?.count === 1 && others.length === 0 ? NAMES[first.unit][2] : `alle ${saySpan(span)}`;
}
