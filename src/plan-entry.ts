export {
  ENGINE_VERSION,
  type EvaluateOptions,
  evaluate,
  type Policy,
  type RestoredPolicy,
  restorePlan,
} from "./evaluate/index.js";
export type { Assessment, Finding, Plan, Result } from "./model/index.js";
export type { Catalogue } from "./words/index.js";
