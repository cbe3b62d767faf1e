export type { ParsedPolicy } from "./parsed-policy.js";
export { readPolicy } from "./read-policy.js";
