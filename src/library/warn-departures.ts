import { comparePlans, type Departure } from "../compare/index.js";
import type { Diagnostics, RelatedPlace } from "../diagnostics/index.js";
import type { Covering, Plan } from "../model/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import { locatePlace, type Place } from "../source/index.js";
import { describeDifference } from "./describe-difference.js";

/** Warns of every part that is looser than the parent's or cannot be compared with it, unless an adoption covers it. */
export function warnDepartures(
  parentPlan: Plan,
  plan: Plan,
  coverings: readonly Covering[],
  resolved: ResolvedPolicy,
  parent: ResolvedPolicy,
  diagnostics: Diagnostics,
): void {
  for (const departure of comparePlans(parentPlan, plan)) {
    const { relation, what } = departure;
    if (relation === "tighter" || coverings.some((covering) => covers(covering, departure))) continue;
    const there = parent.place(departure.there);
    const related = [{ message: diagnostics.words.related.parents, place: there }];
    if (what.kind === "step-only-instead") {
      warnOnlyInstead(what.name, resolved, related, diagnostics);
      continue;
    }
    const here = resolved.place(departure.here);
    const params = {
      what: diagnostics.words.partOfPolicy(what),
      here: nameSpot(here),
      parent: nameSpot(there),
      ...describeDifference(what, plan, parentPlan, diagnostics.words.limits),
    };
    diagnostics.report(relation === "looser" ? "resolve/looser" : "resolve/cannot-compare", here, params, related);
  }
}

function covers(covering: Covering, { step, requirement, tolerances, interval }: Departure): boolean {
  if (covering.step !== undefined) {
    return covering.step === step && (covering.requirement === undefined || covering.requirement === requirement);
  }
  if (covering.tolerance !== undefined) return tolerances?.includes(covering.tolerance) === true;
  return covering.interval !== undefined && covering.interval === interval;
}

/** Why at the adoption: the step itself may stand in the parent only; that it is asked no more is written there. */
function warnOnlyInstead(
  step: string,
  resolved: ResolvedPolicy,
  related: readonly RelatedPlace[],
  diagnostics: Diagnostics,
): void {
  const adopted = resolved.document.adopted ?? [];
  const index = adopted.findIndex(({ instead }) => instead === step);
  const params = { step, adoption: adopted[index]?.id ?? "" };
  diagnostics.report("resolve/asked-only-instead", resolved.place(`/adopted/${index}/instead`), params, related);
}

function nameSpot(place: Place): string {
  const { file, line, column } = locatePlace(place);
  return `${file}:${line}:${column}`;
}
