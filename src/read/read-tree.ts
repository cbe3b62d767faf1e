import { createLineTable } from "../source/index.js";
import { checkText } from "./check-text.js";
import { type ComposedText, composeDocument } from "./compose-document.js";
import { createWalk, type DocumentWalk } from "./document-walk.js";
import { type Refusal, scanTokens, type TokenScan } from "./scan-tokens.js";
import { reportSyntaxErrors } from "./syntax-errors.js";
import { shortenText, type TextReport } from "./text-report.js";
import { walkNode } from "./walk-document.js";

/** Plain values of a text and where each stands. */
export interface ReadTree {
  readonly value: unknown;
  readonly walk: DocumentWalk;
}

/**
 * Reads a text as YAML, whatever shape it has. Nothing where its structure cannot be told; where a value is given beside errors,
 * its shape is still worth a look. Maps have no prototype.
 */
export function readTree(output: TextReport): ReadTree | undefined {
  if (!checkText(output)) return undefined;
  const scan = scanTokens(output);
  const composed = scan && composeDocument(scan.tokens, output.source.text.length);
  if (scan === undefined || composed === undefined) return undefined;
  const walk = createWalk(output);
  const value = readDocument(walk, scan, composed);
  reportRefusals(walk, scan.refusals);
  return value === undefined || walk.isOverLimit ? undefined : { value, walk };
}

/** The first document's value; nothing where YAML itself is broken or nothing is there. */
function readDocument(walk: DocumentWalk, scan: TokenScan, { document, secondStart }: ComposedText): unknown {
  const { output } = walk;
  const { text } = output.source;
  if (secondStart !== undefined) output.report("read/several-documents", secondStart, secondStart + 3, {});
  const lines = createLineTable(text);
  const refusedLines = new Set(scan.refusals.map(({ start }) => lines.lineAt(start)));
  const isExplained = (offset: number) => offset >= scan.unclosedFrom || refusedLines.has(lines.lineAt(offset));
  if (reportSyntaxErrors(document.errors, isExplained, output) || Number.isFinite(scan.unclosedFrom)) return undefined;
  const root = document.contents;
  const isEmpty = root === null || (root.range[0] === root.range[1] && scan.refusals.length === 0);
  if (!isEmpty) return walkNode(walk, root, "").value;
  output.report("read/empty", 0, 0, {});
  return undefined;
}

function reportRefusals({ output, merged }: DocumentWalk, refusals: readonly Refusal[]): void {
  // Invariant: both lists are in the order of the text.
  let next = 0;
  for (const { code, start, text } of refusals) {
    while ((merged[next]?.end ?? Number.POSITIVE_INFINITY) <= start) next++;
    const isMerged = (merged[next]?.start ?? Number.POSITIVE_INFINITY) <= start;
    if (!isMerged) output.report(code, start, start + text.length, { found: shortenText(text) });
  }
}
