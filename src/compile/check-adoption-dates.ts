import { compareDates, parseDate, parseDay } from "../quantities/index.js";
import type { PlanContext } from "./plan-context.js";
import type { PolicyAdoption } from "./policy-adoption.js";

/** `until` for one that ends, `review` for one that lasts; real days, in their order. */
export function checkAdoptionDates(adoption: PolicyAdoption, pointer: string, context: PlanContext): boolean {
  const { diagnostics, resolved } = context;
  const { from, until, review } = adoption;
  const given = (["until", "review"] as const).filter((key) => adoption[key] !== undefined);
  if (given.length !== 1) {
    diagnostics.report("plan/adoption-without-end", resolved.place(`${pointer}/id`), { adoption: adoption.id, given });
    return false;
  }
  let usable = true;
  for (const key of ["from", "until", "review"] as const) {
    const text = adoption[key];
    if (text === undefined || parseDay(text) !== undefined) continue;
    diagnostics.report("plan/bad-date", resolved.place(`${pointer}/${key}`), { found: text });
    usable = false;
  }
  const today = parseDate(context.asOf);
  const reviewed = parseDay(review);
  if (review !== undefined && reviewed !== undefined && today !== undefined && compareDates(reviewed, today) === -1) {
    const params = { review, asOf: String(context.asOf) };
    diagnostics.report("plan/review-passed", resolved.place(`${pointer}/review`), params);
  }
  const first = parseDay(from);
  const last = parseDay(until ?? review);
  if (first !== undefined && last !== undefined && compareDates(first, last) === 1) {
    diagnostics.report("plan/dates-swapped", resolved.place(`${pointer}/from`), {
      from,
      to: until ?? review ?? "",
      key: until === undefined ? "review" : "until",
    });
    usable = false;
  }
  return usable;
}
