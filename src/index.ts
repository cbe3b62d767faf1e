export type { Diagnostic, DiagnosticCode, Severity } from "./diagnostics/index.js";
export {
  type Circumstances,
  describeCheck,
  ENGINE_VERSION,
  type EvaluateOptions,
  evaluate,
  type JsonSchema,
  type Policy,
  type RestoredPolicy,
  recordSchema,
  restorePlan,
} from "./evaluate/index.js";
export { type CompiledPolicy, type CompileOptions, compilePolicy } from "./library/index.js";
export type { Assessment, CheckRecord, Finding, Form, Plan, PolicyDocument, Result } from "./model/index.js";
export { quantity } from "./quantities/index.js";
export type {
  Consequence,
  NotApplicableReason,
  Outcome,
  Reason,
  RequirementName,
  StepKind,
  UndecidedReason,
  Verdict,
} from "./terms/index.js";
export { CONSEQUENCES } from "./terms/index.js";
export type { Catalogue } from "./words/index.js";
