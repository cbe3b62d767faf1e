import type { Diagnostics } from "../diagnostics/index.js";
import type { PolicyDocument } from "../model/index.js";
import type { SourceText } from "../source/index.js";
import { checkShape } from "./check-shape.js";
import type { DocumentWalk } from "./document-walk.js";
import { findSpan } from "./find-span.js";
import type { ParsedPolicy } from "./parsed-policy.js";
import { readTree } from "./read-tree.js";
import { createTextReport, type TextReport } from "./text-report.js";

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
  const tree = readTree(output);
  if (tree === undefined) return undefined;
  const { value, walk } = tree;
  checkShape(walk, value);
  warnCutTexts(walk);
  return output.hasErrors ? undefined : createParsedPolicy(output.source, value, walk);
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
