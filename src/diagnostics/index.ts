export type { Severity } from "./define-code.js";
export type { Diagnostic, Diagnostics, RelatedPlace } from "./diagnostic.js";
export { DIAGNOSTICS, type DiagnosticCode, type ParamsOf } from "./diagnostic-codes.js";
export { createDiagnostics } from "./diagnostic-list.js";
export { findNearest } from "./nearest-word.js";
