export { type Circumstances, describeCheck } from "./describe-check.js";
export { ENGINE_VERSION } from "./engine-version.js";
export type { EvaluateOptions } from "./evaluate-record.js";
export { evaluate, makePolicy, type Policy } from "./policy.js";
export { type JsonSchema, recordSchema } from "./record-schema.js";
export { type RestoredPolicy, restorePlan } from "./restore-plan.js";
