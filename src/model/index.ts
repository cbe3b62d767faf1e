export type { Assessment, Finding, Result } from "./assessment-model.js";
export type { Form } from "./form-model.js";
export { MODELS } from "./models.js";
export type {
  AdoptionPlan,
  AdoptionStanding,
  BandPlan,
  BoundPlan,
  CheckPlan,
  Covering,
  FactPlan,
  InstrumentPlan,
  IntervalPlan,
  Plan,
  RequirementPlan,
  RulePlan,
  ScopePlan,
  StepPlan,
  StepPlanOf,
  TolerancePlan,
} from "./plan-model.js";
export type {
  PolicyBounds,
  PolicyDocument,
  PolicyStep,
  PolicyTolerance,
} from "./policy-model.js";
export type { CheckRecord } from "./record-model.js";
