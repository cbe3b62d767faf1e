/** A text and the name under which its author knows it; a byte order mark at its start stays in it. */
export interface SourceText {
  readonly file: string;
  readonly text: string;
}

/** A stretch of one text as UTF-16 offsets from 0: `start` is in it, `end` is the first offset behind it. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Place {
  readonly source: SourceText;
  readonly span: Span;
}
