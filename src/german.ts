export { german } from "./german/index.js";
export type { Catalogue } from "./words/index.js";
