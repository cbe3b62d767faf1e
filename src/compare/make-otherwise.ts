import type { Covering, Plan, RequirementPlan, StepPlan } from "../model/index.js";
import { weighConsequence } from "../terms/index.js";
import { relateTolerances } from "./relate-bands.js";
import { relateSteps } from "./relate-steps.js";
import { isLoose, relateFixed, relateNumbers } from "./relation.js";

/** A step as it is judged without an adoption, and the requirements for which that counts. */
export interface Otherwise {
  readonly step: StepPlan;
  readonly requirements: readonly StepPlan["requirements"][number]["name"][];
}

/**
 * The step without what a covering adoption lets pass: the parent's limits where the child's are looser or cannot be compared,
 * the child's own where they are tighter. Undefined where the adoption covers nothing of the step.
 */
export function makeOtherwise(parent: StepPlan, child: StepPlan, covering: Covering): Otherwise | undefined {
  const isWhole =
    covering.step !== undefined && covering.requirement === undefined && isLoose(relateSteps(parent, child));
  const covered = parent.requirements.filter((one) => {
    const own = findRequirement(child, one.name);
    return isNamed(one, own, covering) && (isWhole || own === undefined || isDeparted(one, own));
  });
  if (covered.length === 0) return undefined;
  const isParents = isWhole || covered.some(({ name }) => findRequirement(child, name) === undefined);
  const base = isParents ? parent : child;
  const requirements = base.requirements.map((one) => {
    const own = findRequirement(child, one.name);
    const theirs = findRequirement(parent, one.name);
    if (own === undefined || theirs === undefined) return one;
    return covered.includes(theirs) ? joinRequirements(theirs, own) : own;
  });
  return { step: { ...base, requirements }, requirements: covered.map(({ name }) => name) };
}

function findRequirement(step: StepPlan, name: string): RequirementPlan | undefined {
  return step.requirements.find((one) => one.name === name);
}

function isNamed(parent: RequirementPlan, child: RequirementPlan | undefined, covering: Covering): boolean {
  if (covering.step !== undefined) return covering.requirement === undefined || covering.requirement === parent.name;
  return [parent.tolerance?.name, child?.tolerance?.name].includes(covering.tolerance);
}

/** Whether the child's requirement lets more pass than the parent's, or weighs less. */
export function isDeparted(parent: RequirementPlan, child: RequirementPlan): boolean {
  return (
    isLoose(relateTolerances(parent.tolerance, child.tolerance)) ||
    isLoose(relateNumbers(weighConsequence(parent.consequence), weighConsequence(child.consequence)))
  );
}

/** The limit of the one that is not looser, at the heavier of the two consequences. */
function joinRequirements(parent: RequirementPlan, child: RequirementPlan): RequirementPlan {
  const limited = isLoose(relateTolerances(parent.tolerance, child.tolerance)) ? parent : child;
  return { ...limited, consequence: heavier(parent, child).consequence };
}

/** The one that weighs more, the first where they weigh the same. */
export function heavier(one: RequirementPlan, other: RequirementPlan): RequirementPlan {
  return weighConsequence(other.consequence) > weighConsequence(one.consequence) ? other : one;
}

/**
 * Whether a part of the parent names a fact or an instrument that the child states otherwise, so that it would no longer mean
 * what the parent says; of a group of instruments, also one of its members.
 */
export function refersToChanged(part: unknown, parent: Plan, child: Plan): boolean {
  const text = JSON.stringify(part);
  const groups = parent.instruments.filter(({ name, oneOf }) => oneOf !== undefined && text.includes(name));
  const named = JSON.stringify([part, groups]);
  const isChanged = (one: { readonly name: string }, list: readonly { readonly name: string }[]) =>
    named.includes(one.name) &&
    relateFixed(
      one,
      list.find(({ name }) => name === one.name),
    ) !== "same";
  return (
    parent.facts.some((fact) => isChanged(fact, child.facts)) ||
    parent.instruments.some((instrument) => isChanged(instrument, child.instruments))
  );
}
