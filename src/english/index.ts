export { english } from "./english.js";
export { ENGLISH_DIAGNOSTICS } from "./english-diagnostics.js";
export { ENGLISH_REPORTS } from "./english-reports.js";
export { ENGLISH_START } from "./english-start.js";
