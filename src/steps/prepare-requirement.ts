import type { RequirementPlan } from "../model/index.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import { prepareTolerance } from "./prepared-tolerance.js";

/** Turns one planned requirement of a step, or of the check itself, into numbers. */
export function prepareRequirement(
  plan: RequirementPlan,
  kind: PreparedRequirement["kind"],
  check: string,
  step: string | undefined,
): PreparedRequirement {
  return {
    plan,
    name: plan.name,
    consequence: plan.consequence,
    tolerance: plan.tolerance === undefined ? undefined : prepareTolerance(plan.tolerance),
    kind,
    step,
    label: undefined,
    key: `${check}/${step ?? ""}/${plan.name}`,
  };
}

/** Prepares the requirement of an interval or a rule, which has no limits of its own. */
export function prepareNamedRequirement(
  plan: RequirementPlan,
  kind: "interval" | "rule",
  label: string,
): PreparedRequirement {
  return {
    plan,
    name: plan.name,
    consequence: plan.consequence,
    tolerance: undefined,
    kind,
    step: undefined,
    label,
    key: `${kind}/${label}`,
  };
}
