import { addSpan, type CalendarDate, type CalendarSpan, formatDate, parseDate } from "../quantities/index.js";

/** A date as recorded, and the last day on which it still counts, as a date and as text; none beyond the calendar's end. */
export interface DueDate {
  readonly on: CalendarDate;
  readonly due: CalendarDate | undefined;
  readonly dueText: string | undefined;
}

/** Twenty years of days; a hostile history must not fill the memory. */
const MOST_REMEMBERED = 8192;

/**
 * Makes a reader of dates that count for one span, or without a span up to the day itself; undefined for what is no date.
 *
 * Each reader owns its memory of the dates it has met, emptied when full. Results are shared, so nobody may change them.
 */
export function createDueReader(span: CalendarSpan | undefined): (value: unknown) => DueDate | undefined {
  const remembered = new Map<unknown, DueDate>();
  return (value) => {
    const known = remembered.get(value);
    if (known !== undefined) return known;
    const on = parseDate(value);
    if (on === undefined) return undefined;
    const due = span === undefined ? on : addSpan(on, span);
    const read = { on, due, dueText: due && formatDate(due) };
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    remembered.set(value, read);
    return read;
  };
}
