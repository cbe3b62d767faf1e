export { digestPlan, digestValue } from "./digest-plan.js";
export { type RestoredPlan, restorePlanData } from "./restore-plan-data.js";
