/** A span as printed, ends included or not. */
export interface SpanWords {
  readonly from: string;
  readonly to: string;
  readonly ends: "[]" | "[)" | "(]" | "()";
}

/**
 * What can be said of a row in words; each part only where there is something to say.
 *
 * Why every key is always there: words of one shape are read many times as fast as words of a dozen.
 */
export interface RowWords {
  readonly observed: string | undefined;
  readonly accept: string | undefined;
  readonly margin: string | undefined;
  readonly span: SpanWords | undefined;
  /** Probability that the true value conforms, 0 to 1, cut to four decimals. */
  readonly confidence: number | undefined;
}

/** Words of a row that has no quantity to speak of. */
export function sayPlainly(observed: string | undefined, accept: string | undefined): RowWords {
  return { observed, accept, margin: undefined, span: undefined, confidence: undefined };
}
