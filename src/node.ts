export { type ReadRecord, readRecords } from "./files/index.js";
export { type LoadedPolicy, type LoadOptions, loadPolicy } from "./loading/index.js";
