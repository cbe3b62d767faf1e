import { comparePlans, compareRestoredOrders, type Departure } from "../compare/index.js";
import type { Diagnostics } from "../diagnostics/index.js";
import type { CheckPlan, Covering, Plan } from "../model/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import { locatePlace, type Place } from "../source/index.js";
import { describeDifference } from "./describe-difference.js";

/**
 * Warns of every part that is looser than the parent's or cannot be compared with it, unless an adoption covers it.
 *
 * @param covered the parent with the steps that it asks again once an order of its own lapses
 */
export function warnDepartures(
  parentPlan: Plan,
  covered: Plan,
  plan: Plan,
  coverings: readonly Covering[],
  resolved: ResolvedPolicy,
  parent: ResolvedPolicy,
  diagnostics: Diagnostics,
): void {
  const departures = [...comparePlans(parentPlan, plan), ...compareRestoredOrders(parentPlan, covered, plan)];
  for (const departure of departures) {
    const { relation, what } = departure;
    if (relation === "tighter" || coverings.some((covering) => covers(covering, departure))) continue;
    const there = parent.place(departure.there);
    const related = [{ message: diagnostics.words.related.parents, place: there }];
    const here = resolved.place(departure.here);
    const params = {
      what: diagnostics.words.partOfPolicy(what),
      here: nameSpot(here),
      parent: nameSpot(there),
      ...describeDifference(what, plan, parentPlan, diagnostics.words.limits),
    };
    diagnostics.report(relation === "looser" ? "resolve/looser" : "resolve/cannot-compare", here, params, related);
  }
  for (const check of covered.checks) {
    const own = plan.checks.find((one) => one.check === check.check);
    if (own !== undefined) warnAskedOnlyInstead(check, own, resolved, parent, diagnostics);
  }
}

function covers(covering: Covering, { step, requirement, tolerances, interval }: Departure): boolean {
  if (covering.step !== undefined) {
    return covering.step === step && (covering.requirement === undefined || covering.requirement === requirement);
  }
  if (covering.tolerance !== undefined) return tolerances?.includes(covering.tolerance) === true;
  return covering.interval !== undefined && covering.interval === interval;
}

/**
 * Warns of a step of the parent that an adoption of the child's names as its `instead`, so that nobody else is asked any more.
 * Why at the adoption: the step itself may stand in the parent only.
 */
function warnAskedOnlyInstead(
  parents: CheckPlan,
  own: CheckPlan,
  resolved: ResolvedPolicy,
  parent: ResolvedPolicy,
  diagnostics: Diagnostics,
): void {
  const isNamed = ({ adoptions }: CheckPlan, step: string) => adoptions.some(({ instead }) => instead === step);
  const adopted = resolved.document.adopted ?? [];
  for (const { step } of parents.steps) {
    if (isNamed(parents, step) || !isNamed(own, step)) continue;
    const name = `${own.check}/${step}`;
    const index = parent.document.checks?.[own.check]?.steps?.findIndex((one) => one.step === step) ?? -1;
    // Why: a step that the parent asks again once an order lapses is not stated there.
    const place = parent.place(`/checks/${own.check}${index === -1 ? "" : `/steps/${index}`}`);
    const at = adopted.findIndex(({ instead }) => instead === name);
    const params = { step: name, adoption: adopted[at]?.id ?? "" };
    const related = [{ message: diagnostics.words.related.parents, place }];
    diagnostics.report("resolve/asked-only-instead", resolved.place(`/adopted/${at}/instead`), params, related);
  }
}

function nameSpot(place: Place): string {
  const { file, line, column } = locatePlace(place);
  return `${file}:${line}:${column}`;
}
