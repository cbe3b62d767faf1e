import type { Diagnostics } from "../diagnostics/index.js";
import type { PolicyDocument } from "../model/index.js";
import { createLineTable, type SourceText } from "../source/index.js";
import { checkShape } from "./check-shape.js";
import { checkText } from "./check-text.js";
import { type ComposedText, composeDocument } from "./compose-document.js";
import { createWalk, type DocumentWalk } from "./document-walk.js";
import { findSpan } from "./find-span.js";
import type { ParsedPolicy } from "./parsed-policy.js";
import { type Refusal, scanTokens, type TokenScan } from "./scan-tokens.js";
import { reportSyntaxErrors } from "./syntax-errors.js";
import { createTextReport, shortenText, type TextReport } from "./text-report.js";
import { walkNode } from "./walk-document.js";

/**
 * Reads a policy text, YAML or JSON, into a document with a place for every entry. Reports every mistake that can be
 * told apart in one run; mistakes of YAML itself hide those of the policy's shape. Returns nothing when there is an error.
 * Bounds (inclusive): 1 MiB of UTF-8, 64 levels, 100,000 keys and values. Never throws on any text.
 * Adds the codes `read/…`.
 */
export function readPolicy(source: SourceText, diagnostics: Diagnostics): ParsedPolicy | undefined {
  const output = createTextReport(source, diagnostics);
  const policy = readSource(output);
  output.finish();
  return policy;
}

function readSource(output: TextReport): ParsedPolicy | undefined {
  const { source } = output;
  if (!checkText(output)) return undefined;
  const scan = scanTokens(output);
  const composed = scan && composeDocument(scan.tokens, source.text.length);
  if (scan === undefined || composed === undefined) return undefined;
  const walk = createWalk(output);
  const value = readDocument(walk, scan, composed);
  reportRefusals(walk, scan.refusals);
  if (value === undefined || walk.isOverLimit) return undefined;
  checkShape(walk, value);
  warnCutTexts(walk);
  return output.hasErrors ? undefined : createParsedPolicy(source, value, walk);
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

function warnCutTexts({ output, cutTexts, reported, silenced }: DocumentWalk): void {
  for (const [pointer, { span, kept, whole }] of cutTexts) {
    if (kept === "" || reported.has(pointer) || silenced.has(pointer)) continue;
    output.report("read/text-cut-by-comment", span.start, span.end, { found: kept, whole });
  }
}

function createParsedPolicy(source: SourceText, value: unknown, { positions }: DocumentWalk): ParsedPolicy {
  return {
    // Boundary: the validator generated from the policy model has accepted this very value.
    document: value as PolicyDocument,
    source,
    place: (pointer, part) => ({ source, span: findSpan(positions, pointer, part) }),
  };
}
