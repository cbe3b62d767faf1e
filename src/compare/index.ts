export { comparePlans, compareRestoredOrders } from "./compare-plans.js";
export { coverDepartures } from "./cover-departures.js";
export type { Departure } from "./departure.js";
