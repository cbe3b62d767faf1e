import type { Diagnostic } from "../diagnostics/index.js";
import { cropFrame } from "./crop-frame.js";
import { createPaint, type Paint, type ReportOptions } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

/** Diagnostics as text: what is wrong, where, the line itself, what was wanted and the mend; then how many there are. */
export function renderDiagnostics(diagnostics: readonly Diagnostic[], options: ReportOptions): string {
  const paint = createPaint(options);
  const blocks = diagnostics.map((diagnostic) => renderDiagnostic(diagnostic, options, paint));
  return `${[...blocks, countSeverities(diagnostics)].join("\n\n")}\n`;
}

function renderDiagnostic(diagnostic: Diagnostic, { width }: ReportOptions, paint: Paint): string {
  const { severity, code, file, line, column, message, frame, wanted, mend, related = [] } = diagnostic;
  const tone = severity === "error" ? "bad" : "warn";
  const spot = makePrintable(`${file}:${line}:${column}`);
  const gap = severity.length + code.length + spot.length + 2 > width ? "\n  " : " ";
  const lines = [
    `${paint(tone, severity)} ${paint("dim", code)}${gap}${paint("dim", spot)}`,
    ...wrapText(makePrintable(message), width, "  "),
    "",
    ...cropFrame(frame, width - 2).map((row, index, rows) => `  ${index === rows.length - 1 ? paint(tone, row) : row}`),
    "",
    ...(wanted === undefined ? [] : wrapText(`wanted: ${makePrintable(wanted)}`, width, "  ")),
    ...(mend === undefined ? [] : wrapText(`mend: ${makePrintable(mend)}`, width, "  ")),
    ...related.flatMap(({ file: other, line: row, column: place, message: why }) =>
      wrapText(makePrintable(`see also ${other}:${row}:${place}: ${why}`), width, "  "),
    ),
  ];
  return lines.join("\n").trimEnd();
}

function countSeverities(diagnostics: readonly Diagnostic[]): string {
  const errors = diagnostics.filter(({ severity }) => severity === "error").length;
  const warnings = diagnostics.length - errors;
  return `${countThings(errors, "error")}, ${countThings(warnings, "warning")}`;
}

/** `1 error`, `2 errors`. */
function countThings(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}
