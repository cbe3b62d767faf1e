import { UTCDateMini } from "@date-fns/utc/date/mini";
import { add } from "date-fns/add";

/** A real date of the years 0001 to 9999; one written without a day counts from the first of its month. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly dayGiven: boolean;
}

/** A span of calendar units, each 0 to 9999. Never converted to days. */
export interface CalendarSpan {
  readonly years: number;
  readonly months: number;
  readonly weeks: number;
  readonly days: number;
}

const LAST_YEAR = 9999;
const MILLISECONDS_PER_DAY = 86_400_000;
/** The Gregorian calendar repeats after 400 years of 146 097 days (ISO 8601-1, 4.2.1). */
const CYCLE_YEARS = 400;
const CYCLE_DAYS = 146_097;

function countDaysOfMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** Makes a date of the years 0001 to 9999; undefined where the calendar has no such day. */
export function makeDate(year: number, month: number, day: number, dayGiven: boolean): CalendarDate | undefined {
  if (year < 1 || year > LAST_YEAR || month < 1 || month > 12) return undefined;
  if (day < 1 || day > countDaysOfMonth(year, month)) return undefined;
  return Object.freeze({ year, month, day, dayGiven });
}

/** Reads `2026-03-20`, or `2026-03` which counts from its first (ISO 8601-1 extended form). */
export function parseDate(text: unknown): CalendarDate | undefined {
  if (typeof text !== "string") return undefined;
  const match = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(text);
  if (match === null) return undefined;
  const [, year, month, day] = match;
  return makeDate(Number(year), Number(month), day === undefined ? 1 : Number(day), day !== undefined);
}

/** Reads `2026-03-20` and no date without a day, which one reads as the first of its month and another as the last. */
export function parseDay(text: unknown): CalendarDate | undefined {
  const date = parseDate(text);
  return date?.dayGiven === true ? date : undefined;
}

/**
 * Reads an ISO 8601 duration of years, months, weeks and days, in that order, at least one, each of at most four
 * digits: `P1Y6M`.
 *
 * No sign, no fraction, no time part.
 */
export function parseCalendarSpan(text: unknown): CalendarSpan | undefined {
  if (typeof text !== "string") return undefined;
  const match = /^P(?=\d)(?:(\d{1,4})Y)?(?:(\d{1,4})M)?(?:(\d{1,4})W)?(?:(\d{1,4})D)?$/.exec(text);
  if (match === null) return undefined;
  const [, years = "0", months = "0", weeks = "0", days = "0"] = match;
  return Object.freeze({ years: Number(years), months: Number(months), weeks: Number(weeks), days: Number(days) });
}

/**
 * The date one span later: years and months together, a day past the month's end becoming its last, then weeks and
 * days.
 *
 * Undefined beyond the year 9999. Anchor every due date to the first one: chained spans drift (31 January, 28
 * February, 28 March).
 */
export function addSpan(date: CalendarDate, span: CalendarSpan): CalendarDate | undefined {
  // Why: one cycle later, since a platform's date takes the years 0 to 99 for 1900 to 1999; in UTC no day is lost to a clock.
  const later = add(new UTCDateMini(date.year + CYCLE_YEARS, date.month - 1, date.day), span);
  return makeDate(later.getUTCFullYear() - CYCLE_YEARS, later.getUTCMonth() + 1, later.getUTCDate(), true);
}

/** Days from 1970-01-01 to a date; negative before it. */
export function countEpochDays(date: CalendarDate): number {
  // Why: one cycle later, since Date.UTC takes the years 0 to 99 for 1900 to 1999.
  return Date.UTC(date.year + CYCLE_YEARS, date.month - 1, date.day) / MILLISECONDS_PER_DAY - CYCLE_DAYS;
}

export function compareDates(left: CalendarDate, right: CalendarDate): -1 | 0 | 1 {
  const difference = (left.year - right.year) * 372 + (left.month - right.month) * 31 + (left.day - right.day);
  if (difference === 0) return 0;
  return difference < 0 ? -1 : 1;
}

/** Days from `from` to `to`; negative where `to` is the earlier one. */
export function daysBetween(from: CalendarDate, to: CalendarDate): number {
  return countEpochDays(to) - countEpochDays(from);
}

/** Prints `YYYY-MM-DD`, the first of the month for a date without a day. */
export function formatDate(date: CalendarDate): string {
  const year = String(date.year).padStart(4, "0");
  return `${year}-${String(date.month).padStart(2, "0")}-${String(date.day).padStart(2, "0")}`;
}
