import type { CheckPlan, Plan } from "../model/index.js";
import { compareCheck } from "./compare-check.js";
import type { AddDeparture, Departure } from "./departure.js";
import { relateFixed, relateNumbers } from "./relation.js";

/**
 * Every part in which a policy differs from its parent, as to what its records come to.
 *
 * Sound: over the checks that both have, a policy whose departures are all `tighter` never gives a better verdict than its parent.
 * A check of its own is not compared; adoptions are open departures and are not compared either.
 */
export function comparePlans(parent: Plan, child: Plan): readonly Departure[] {
  const departures: Departure[] = [];
  const add: AddDeparture = (relation, departure) => {
    if (relation !== "same") departures.push({ relation, ...departure });
  };
  add(relateFixed(parent.for, child.for), { what: { kind: "policy-scope" }, here: "/for", there: "/for" });
  add(relateNumbers(weighGaps(parent), weighGaps(child)), {
    what: { kind: "gaps" },
    here: "/undecided",
    there: "/undecided",
  });
  compareNamed("facts", "fact", parent.facts, child.facts, add);
  compareNamed("instruments", "instrument", parent.instruments, child.instruments, add);
  for (const check of parent.checks) {
    const other = child.checks.find((one) => one.check === check.check);
    if (other !== undefined) compareCheck(check, other, add);
    else reportMissing(check, add);
  }
  return departures;
}

function weighGaps({ gaps }: Plan): number {
  return gaps === "as-outside" ? 1 : 0;
}

/** What a fact or an instrument states can work either way. */
function compareNamed(
  key: string,
  kind: "fact" | "instrument",
  parent: readonly { readonly name: string }[],
  child: readonly { readonly name: string }[],
  add: AddDeparture,
): void {
  for (const one of parent) {
    const other = child.find(({ name }) => name === one.name);
    const at = `/${key}/${one.name}`;
    add(relateFixed(one, other), { what: { kind, name: one.name }, here: at, there: at });
  }
}

function reportMissing({ check }: CheckPlan, add: AddDeparture): void {
  add("looser", { what: { kind: "check-left-out", of: check }, here: "/without", there: `/checks/${check}` });
}
