import type { Diagnostic } from "../diagnostics/index.js";
import type { ReportWords } from "../words/index.js";
import { cropFrame } from "./crop-frame.js";
import { createPaint, type Paint, type ReportOptions, wordsOf } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

/** Diagnostics as text: what is wrong, where, the line itself, what was wanted and the mend; then how many there are. */
export function renderDiagnostics(diagnostics: readonly Diagnostic[], options: ReportOptions): string {
  const paint = createPaint(options);
  const blocks = diagnostics.map((diagnostic) => renderDiagnostic(diagnostic, options, paint));
  return `${[...blocks, countSeverities(diagnostics, wordsOf(options))].join("\n\n")}\n`;
}

function renderDiagnostic(diagnostic: Diagnostic, options: ReportOptions, paint: Paint): string {
  const { width } = options;
  const { severities, listing } = wordsOf(options);
  const { severity, code, file, line, column, message, frame, wanted, mend, related = [] } = diagnostic;
  const tone = severity === "error" ? "bad" : "warn";
  const spot = makePrintable(`${file}:${line}:${column}`);
  const word = severities[severity];
  const gap = word.length + code.length + spot.length + 2 > width ? "\n  " : " ";
  const lines = [
    `${paint(tone, word)} ${paint("dim", code)}${gap}${paint("dim", spot)}`,
    ...wrapText(makePrintable(message), width, "  "),
    "",
    ...cropFrame(frame, width - 2).map((row, index, rows) => `  ${index === rows.length - 1 ? paint(tone, row) : row}`),
    "",
    ...(wanted === undefined ? [] : wrapText(listing.wanted(makePrintable(wanted)), width, "  ")),
    ...(mend === undefined ? [] : wrapText(listing.mend(makePrintable(mend)), width, "  ")),
    ...related.flatMap(({ file: other, line: row, column: place, message: why }) =>
      wrapText(makePrintable(listing.seeAlso(`${other}:${row}:${place}`, why)), width, "  "),
    ),
  ];
  return lines.join("\n").trimEnd();
}

function countSeverities(diagnostics: readonly Diagnostic[], { listing }: ReportWords): string {
  const errors = diagnostics.filter(({ severity }) => severity === "error").length;
  return listing.counts(errors, diagnostics.length - errors);
}
