export { digestPlan, digestValue } from "./digest-plan.js";
export { nameAdoptedKey } from "./position-key.js";
export { type RestoredPlan, restorePlanData } from "./restore-plan-data.js";
