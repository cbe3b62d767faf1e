import type { Span } from "../source/index.js";
import type { Position } from "./parsed-policy.js";
import type { TextReport } from "./text-report.js";

/** A text that a `#` may have cut short. */
export interface CutText {
  readonly span: Span;
  /** Empty where the comment begins right behind the colon. */
  readonly kept: string;
  readonly whole: string;
}

/** What one walk over a document collects. */
export interface DocumentWalk {
  readonly output: TextReport;
  readonly positions: Map<string, Position>;
  /** Entries that something was said about already: nothing in them is reported again. */
  readonly silenced: Set<string>;
  /** Maps that lost a key to a reported mistake: what seems to be missing there may be that key. */
  readonly incomplete: Set<string>;
  /** Entries that the schema found fault with. */
  readonly reported: Set<string>;
  readonly cutTexts: Map<string, CutText>;
  /** Stretches behind merge keys. */
  readonly merged: Span[];
  nodes: number;
  isOverLimit: boolean;
}

export function createWalk(output: TextReport): DocumentWalk {
  return {
    output,
    positions: new Map(),
    silenced: new Set(),
    incomplete: new Set(),
    reported: new Set(),
    cutTexts: new Map(),
    merged: [],
    nodes: 0,
    isOverLimit: false,
  };
}
