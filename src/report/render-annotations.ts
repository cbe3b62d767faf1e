import type { Diagnostic } from "../diagnostics/index.js";
import { makePrintable } from "./printable-text.js";
import { tellDiagnostic } from "./tell-diagnostic.js";

/**
 * Diagnostics as workflow commands, one a line, which a build server shows beside the line of the file. Columns count from 1, the
 * end column stands just behind. The escapes are those of the documentation of workflow commands (from memory).
 */
export function renderAnnotations(diagnostics: readonly Diagnostic[]): string {
  return diagnostics.map(renderAnnotation).join("");
}

function renderAnnotation(diagnostic: Diagnostic): string {
  const { severity, code, file, line, column, endLine, endColumn, related = [] } = diagnostic;
  const properties = Object.entries({ file, line, col: column, endLine, endColumn, title: code });
  const head = properties.map(([name, value]) => `${name}=${escapeProperty(String(value))}`).join(",");
  const others = related.map((one) => `\nsee also ${one.file}:${one.line}:${one.column}: ${one.message}`);
  return makePrintable(`::${severity} ${head}::${escapeMessage(tellDiagnostic(diagnostic) + others.join(""))}`).concat(
    "\n",
  );
}

function escapeMessage(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

/** Why: in a property a colon could end the list of properties, and a comma the property. */
function escapeProperty(text: string): string {
  return escapeMessage(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
