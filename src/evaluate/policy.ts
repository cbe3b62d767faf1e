import type { Assessment, Plan } from "../model/index.js";
import { type EvaluateOptions, evaluateRecord } from "./evaluate-record.js";
import { preparePolicy } from "./prepared-policy.js";

/** A policy ready to judge. `plan` is plain data and can be saved as JSON. */
export interface Policy {
  readonly plan: Plan;
  /** Judges one record; {@link evaluate} is the usual way to call it. */
  readonly assess: (record: unknown, options?: EvaluateOptions) => Assessment;
}

/** Makes a policy of a plan that this library compiled or restored. */
export function makePolicy(plan: Plan): Policy {
  const prepared = preparePolicy(freezeDeep(plan));
  return Object.freeze({
    plan,
    assess: (record: unknown, options?: EvaluateOptions) => evaluateRecord(prepared, record, options),
  });
}

/**
 * Evaluates one record against a policy.
 *
 * Pure, synchronous, and never throws on a JSON value: what is missing, unreadable or unknown comes back as findings, a broken
 * envelope as `judged: false` with `problems`. Duplicate keys of a JSON text hide evidence and cannot be seen in a value: parse
 * records with a reader that refuses them, as the command line does.
 *
 * @param record one check record, any JSON value
 */
export function evaluate(policy: Policy, record: unknown, options?: EvaluateOptions): Assessment {
  return policy.assess(record, options);
}

function freezeDeep<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const member of Object.values(value)) freezeDeep(member);
  }
  return value;
}
