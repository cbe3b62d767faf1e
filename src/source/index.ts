export { frameOf } from "./code-frame.js";
export { createLineTable, type LineTable } from "./line-table.js";
export { type Location, locatePlace } from "./location.js";
export type { Place, SourceText, Span } from "./place.js";
