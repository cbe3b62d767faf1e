import type { Diagnostics } from "../diagnostics/index.js";
import { type CalendarDate, compareDates, parseDate, parseDay } from "../quantities/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";

/** Checks `effective`: real days in their order; a review date that has passed is a warning against `asOf`. */
export function checkDates({ document, place }: ResolvedPolicy, diagnostics: Diagnostics, asOf?: string): void {
  const { effective = {} } = document.policy;
  const read = (key: "from" | "to" | "review"): CalendarDate | undefined => {
    const text = effective[key];
    const date = parseDay(text);
    if (text !== undefined && date === undefined) {
      diagnostics.report("plan/bad-date", place(`/policy/effective/${key}`), { found: text });
    }
    return date;
  };
  const from = read("from");
  const to = read("to");
  const review = read("review");
  if (from !== undefined && to !== undefined && compareDates(from, to) === 1) {
    const params = { from: String(effective.from), to: String(effective.to), key: "to" };
    diagnostics.report("plan/dates-swapped", place("/policy/effective/from"), params);
  }
  const today = parseDate(asOf);
  if (review !== undefined && today !== undefined && compareDates(review, today) === -1) {
    const params = { review: String(effective.review), asOf: String(asOf) };
    diagnostics.report("plan/review-passed", place("/policy/effective/review"), params);
  }
}
