export { comparePlans } from "./compare-plans.js";
export type { Departure } from "./departure.js";
