import type { DiagnosticCode, ParamsOf } from "../diagnostics/index.js";
import type { PolicyTextWords } from "../words/index.js";
import type { DocumentWalk } from "./document-walk.js";
import { findSpan } from "./find-span.js";
import { parentPointer } from "./json-pointer.js";
import type { EntryPart } from "./parsed-policy.js";

/** Reports about entries of a walked document, by pointer. */
export interface ShapeReport {
  readonly walk: DocumentWalk;
  readonly words: PolicyTextWords;
  /** Does nothing where the entry, or what holds it, has been reported before. */
  report<C extends DiagnosticCode>(code: C, pointer: string, part: EntryPart, params: ParamsOf<C>): void;
  /** The entry's value as its author wrote it; empty where there is none. */
  readWritten(pointer: string): string;
}

export function createShapeReport(walk: DocumentWalk): ShapeReport {
  const { output, positions } = walk;
  return {
    walk,
    words: output.words,
    report(code, pointer, part, params) {
      walk.reported.add(pointer);
      if (isSilenced(walk, pointer)) return;
      const { start, end } = findSpan(positions, pointer, part);
      output.report(code, start, end, params);
    },
    readWritten(pointer) {
      const value = positions.get(pointer)?.value;
      return value === undefined ? "" : output.source.text.slice(value.start, value.end);
    },
  };
}

function isSilenced({ silenced }: DocumentWalk, pointer: string): boolean {
  for (let part = pointer; ; part = parentPointer(part)) {
    if (silenced.has(part)) return true;
    if (part === "") return false;
  }
}
