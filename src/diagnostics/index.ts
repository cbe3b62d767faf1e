export type { Diagnostic, DiagnosticCode, Diagnostics, ParamsOf, RelatedPlace, Severity } from "./diagnostic.js";
export { DIAGNOSTICS } from "./diagnostic-codes.js";
export { createDiagnostics } from "./diagnostic-list.js";
