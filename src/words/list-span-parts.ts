import { parseCalendarSpan } from "../quantities/index.js";

const UNITS = ["years", "months", "weeks", "days"] as const;
export type SpanUnit = (typeof UNITS)[number];

/** How many of one unit a span counts. */
export interface SpanPart {
  readonly unit: SpanUnit;
  readonly count: number;
}

/** The parts of an ISO 8601 span, `P1Y6M`, from the largest unit on, `P0D` as no days; none where it is no such span. */
export function listSpanParts(text: string): readonly SpanPart[] {
  const span = parseCalendarSpan(text);
  if (span === undefined) return [];
  const parts = UNITS.map((unit) => ({ unit, count: span[unit] })).filter(({ count }) => count > 0);
  return parts.length > 0 ? parts : [{ unit: "days", count: 0 }];
}
