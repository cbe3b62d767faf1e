import { restorePlanData } from "../plan/index.js";
import { makePolicy, type Policy } from "./policy.js";

/** A policy made of a saved plan, or why there is none. */
export type RestoredPolicy =
  | { readonly policy: Policy; readonly problem: undefined }
  | { readonly policy: undefined; readonly problem: string };

/**
 * Takes back a plan that was saved as JSON, without a YAML parser or a schema compiler.
 *
 * A plan whose digest does not fit its content, or of another format, is refused with `problem`.
 *
 * @param value the parsed JSON of `policy.plan`
 */
export function restorePlan(value: unknown): RestoredPolicy {
  const restored = restorePlanData(value);
  if ("problem" in restored) return { policy: undefined, problem: restored.problem };
  return { policy: makePolicy(restored.plan), problem: undefined };
}
