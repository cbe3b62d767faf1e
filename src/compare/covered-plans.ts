import type { AdoptionStanding, Plan } from "../model/index.js";

/** A policy and its parent, each as it is written, and the parent with what it covers towards its own parent. */
export interface CoveredPlans {
  readonly parent: Plan;
  readonly parentCovered: Plan;
  readonly child: Plan;
  /** How many policies the child has above it. */
  readonly generation: number;
  /** The ids of the parent's adoptions that the child does not state again. */
  readonly inherited: readonly string[];
}

/** When an adoption applies, without what it names. */
export function standingOf({ id, only, from, until, order }: AdoptionStanding): AdoptionStanding {
  return { id, ...(only === undefined ? {} : { only }), from, ...(until === undefined ? {} : { until }), order };
}
