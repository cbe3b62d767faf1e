export { digestPlan, digestValue } from "./digest-plan.js";
export { nameAcceptedKey, nameAdoptedKey } from "./position-key.js";
export { type RestoredPlan, restorePlanData } from "./restore-plan-data.js";
