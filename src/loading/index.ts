export { type LoadedPolicy, type LoadOptions, loadPolicy } from "./load-policy.js";
