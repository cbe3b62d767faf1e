import type { CheckPlan, Plan } from "../model/index.js";
import { compareCheck, compareOrder } from "./compare-check.js";
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

/**
 * How the order of a policy's checks stands to its parent's, where the parent asks a step again once an order of its own lapses, and
 * the policy states that step too. Checks whose order departs as the parent states it are told by `comparePlans`.
 *
 * @param covered the parent with what stands where its covering adoptions do not apply
 */
export function compareRestoredOrders(parent: Plan, covered: Plan, child: Plan): readonly Departure[] {
  const departures: Departure[] = [];
  for (const check of covered.checks) {
    const stated = parent.checks.find((one) => one.check === check.check);
    const other = child.checks.find((one) => one.check === check.check);
    if (stated === undefined || other === undefined) continue;
    let isKnown = false;
    compareOrder(stated, other, (relation) => {
      isKnown = relation !== "same" && relation !== "tighter";
    });
    if (isKnown) continue;
    compareOrder(check, other, (relation, departure) => {
      if (relation !== "same") departures.push({ relation, ...departure });
    });
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
