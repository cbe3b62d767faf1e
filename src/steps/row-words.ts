/** A span as printed, ends included or not. */
export interface SpanWords {
  readonly from: string;
  readonly to: string;
  readonly ends: "[]" | "[)" | "(]" | "()";
}

/** What can be said of a row in words; each part only where there is something to say. */
export interface RowWords {
  readonly observed?: string;
  readonly accept?: string;
  readonly margin?: string;
  readonly span?: SpanWords;
  /** Probability that the true value conforms, 0 to 1, cut to four decimals. */
  readonly confidence?: number;
}
