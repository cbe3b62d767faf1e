import type { PolicyDocument } from "../model/index.js";
import type { Place, SourceText, Span } from "../source/index.js";

/** Which stretch of an entry is meant: its key, its value, or from the one to the end of the other. */
export type EntryPart = "key" | "value" | "both";

/** A policy text that has the shape of a policy; names, quantities, dates and spans in it are still texts. */
export interface ParsedPolicy {
  /** Maps in it have no prototype, so a key like `constructor` is found only where the author wrote it. */
  readonly document: PolicyDocument;
  readonly source: SourceText;
  /**
   * Where a JSON Pointer's entry stands, its value unless `part` says otherwise. The place of a member without a key
   * is its value, of a value that is not there its key, and of an unknown pointer its nearest known holder's.
   */
  place(pointer: string, part?: EntryPart): Place;
}

/** An entry's key, where it has one, and its value without the blanks and comments around it. */
export interface Position {
  readonly key?: Span | undefined;
  readonly value: Span;
}
