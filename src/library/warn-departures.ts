import { comparePlans, type Departure } from "../compare/index.js";
import type { Diagnostics } from "../diagnostics/index.js";
import type { Plan, PolicyDocument } from "../model/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import { locatePlace, type Place } from "../source/index.js";

type PolicyAdoption = NonNullable<PolicyDocument["adopted"]>[number];

/** Warns of every part that is looser than the parent's or cannot be compared with it, unless an adoption covers it. */
export function warnDepartures(
  parentPlan: Plan,
  plan: Plan,
  resolved: ResolvedPolicy,
  parent: ResolvedPolicy,
  diagnostics: Diagnostics,
): void {
  const adopted = resolved.document.adopted ?? [];
  for (const departure of comparePlans(parentPlan, plan)) {
    const { relation, what } = departure;
    if (relation === "tighter" || adopted.some((adoption) => covers(adoption, departure))) continue;
    const here = resolved.place(departure.here);
    const there = parent.place(departure.there);
    const params = { what, here: nameSpot(here), parent: nameSpot(there) };
    const related = [{ message: "the parent's", place: there }];
    diagnostics.report(relation === "looser" ? "resolve/looser" : "resolve/cannot-compare", here, params, related);
  }
}

function covers(adoption: PolicyAdoption, { step, requirement, tolerances, interval }: Departure): boolean {
  if (adoption.step !== undefined) {
    return adoption.step === step && (adoption.requirement === undefined || adoption.requirement === requirement);
  }
  if (adoption.tolerance !== undefined) return tolerances?.includes(adoption.tolerance) === true;
  return adoption.interval !== undefined && adoption.interval === interval;
}

function nameSpot(place: Place): string {
  const { file, line, column } = locatePlace(place);
  return `${file}:${line}:${column}`;
}
