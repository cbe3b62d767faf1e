export { makePlan } from "./make-plan.js";
