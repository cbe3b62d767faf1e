import type { RequirementPlan, StepPlan } from "../model/index.js";
import type { Consequence, RequirementName } from "../terms/index.js";
import type { PreparedTolerance } from "./prepared-tolerance.js";

/** One requirement of a plan with its limits turned into numbers. */
export interface PreparedRequirement {
  readonly plan: RequirementPlan;
  readonly name: RequirementName;
  readonly consequence: Consequence;
  readonly tolerance: PreparedTolerance | undefined;
  /** The step kind that asks, or what else of the check does. */
  readonly kind: StepPlan["kind"] | "check" | "interval" | "rule";
  readonly step: string | undefined;
  /** The name of the interval or the rule. */
  readonly label: string | undefined;
  /** The key under which the plan keeps this requirement's positions: `check/step/requirement`. */
  readonly key: string;
}
