import type { RequirementPlan } from "../model/index.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import { prepareTolerance } from "./prepared-tolerance.js";

/** Turns one planned requirement of a step, or of the check itself, into numbers; `key` is that of its positions. */
export function prepareRequirement(
  plan: RequirementPlan,
  kind: PreparedRequirement["kind"],
  step: string | undefined,
  key: string,
): PreparedRequirement {
  return {
    plan,
    name: plan.name,
    consequence: plan.consequence,
    tolerance: plan.tolerance === undefined ? undefined : prepareTolerance(plan.tolerance),
    kind,
    step,
    label: undefined,
    key,
  };
}

/** Prepares the requirement of an interval or a rule, which has no limits of its own. */
export function prepareNamedRequirement(
  plan: RequirementPlan,
  kind: "interval" | "rule",
  label: string,
  key: string = `${kind}/${label}`,
): PreparedRequirement {
  return {
    plan,
    name: plan.name,
    consequence: plan.consequence,
    tolerance: undefined,
    kind,
    step: undefined,
    label,
    key,
  };
}
