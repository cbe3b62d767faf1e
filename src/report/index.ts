export type { ReportOptions } from "./palette.js";
export { makePrintable } from "./printable-text.js";
export { renderAssessment } from "./render-assessment.js";
export { countVerdict, NO_VERDICTS, renderClosing, renderPolicyHead, type VerdictCounts } from "./render-closing.js";
export { renderDiagnostics } from "./render-diagnostics.js";
export { renderResolved } from "./render-resolved.js";
export { wrapText } from "./wrap-text.js";
