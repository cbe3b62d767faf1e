export type { FindParent, FoundParent } from "./find-parent.js";
export { resolvePolicy } from "./resolve-policy.js";
export type { ResolvedPolicy } from "./resolved-policy.js";
