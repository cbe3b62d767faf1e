export type SpanUnit = "years" | "months" | "weeks" | "days";

/** How many of one unit a span counts. */
export interface SpanPart {
  readonly unit: SpanUnit;
  readonly count: number;
}

const SPAN = /^P(?=\d)(?:(\d+)Y)?(?:(\d+)M)?(?:(\d+)W)?(?:(\d+)D)?$/;
const UNITS: readonly SpanUnit[] = ["years", "months", "weeks", "days"];

/** The parts of an ISO 8601 span as it is written, `P1Y6M`, from the largest unit on; none where it is no such span. */
export function listSpanParts(span: string): readonly SpanPart[] {
  const [, ...counts] = SPAN.exec(span) ?? [];
  return UNITS.flatMap((unit, index) => {
    const text = counts[index];
    return text === undefined ? [] : [{ unit, count: Number(text) }];
  });
}
