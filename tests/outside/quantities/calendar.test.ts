import { Temporal } from "@js-temporal/polyfill";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addSpan,
  type CalendarDate,
  type CalendarSpan,
  compareDates,
  daysBetween,
  formatDate,
  parseCalendarSpan,
  parseDate,
  parseRecordTime,
} from "../../../src/quantities/index.js";
import { countQuickRuns } from "../../laws/run-count.js";
import { SEED } from "../../quantities/read-sample.js";

function readDate(text: string): CalendarDate {
  const date = parseDate(text);
  if (date === undefined) throw new Error(`the test's own date \`${text}\` is not one`);
  return date;
}

function readSpan(text: string): CalendarSpan {
  const span = parseCalendarSpan(text);
  if (span === undefined) throw new Error(`the test's own span \`${text}\` is not one`);
  return span;
}

/** Source: test262 (commit be13516f), Temporal/PlainDate/prototype/add: constrain-days, leap-year-arithmetic, basic-arithmetic. */
const MONTH_ENDS = [
  ["2019-01-31", "P1M", "2019-02-28"],
  ["2019-01-31", "P2M", "2019-03-31"],
  ["2019-01-31", "P3M", "2019-04-30"],
  ["2019-01-31", "P5M", "2019-06-30"],
  ["2020-01-31", "P1M", "2020-02-29"],
  ["2020-02-29", "P1Y", "2021-02-28"],
  ["2020-02-29", "P4Y", "2024-02-29"],
  ["2019-09-30", "P5M", "2020-02-29"],
  ["2021-12-31", "P1Y2M", "2023-02-28"],
  ["2022-12-29", "P1Y2M4D", "2024-03-04"],
  ["2022-12-30", "P1Y2M4D", "2024-03-04"],
  ["1997-12-01", "P3Y6M17D", "2001-06-18"],
] as const;

/** No published source: what two independent implementations of the Temporal proposal agree on. */
const AGREED = [
  ["2021-08-31", "P6M", "2022-02-28"],
  ["2023-08-31", "P6M", "2024-02-29"],
  ["2020-02-29", "P1Y1M", "2021-03-29"],
  ["2020-02-29", "P5Y", "2025-02-28"],
  ["2024-02-29", "P12M", "2025-02-28"],
  ["2024-02-29", "P36M", "2027-02-28"],
  ["2021-01-31", "P1M1D", "2021-03-01"],
  ["2021-02-28", "P1M1D", "2021-03-29"],
] as const;

/** Source: W3C XML Schema Part 2, appendix E (dates alone; the last two from memory). */
const SCHEMA_APPENDIX = [
  ["2000-01-12", "P1Y3M5D", "2001-04-17"],
  ["2000-03-31", "P1M", "2000-04-30"],
  ["2000-04-30", "P1D", "2000-05-01"],
] as const;

describe("published month ends", () => {
  it.each([...MONTH_ENDS, ...AGREED, ...SCHEMA_APPENDIX])("%s + %s = %s", (start, span, end) => {
    const later = addSpan(readDate(start), readSpan(span));
    expect(later && formatDate(later)).toBe(end);
  });

  it("drift when chained and not when anchored to the first date (31 January 2021)", () => {
    const first = readDate("2021-01-31");
    const february = addSpan(first, readSpan("P1M"));
    const chained = february && addSpan(february, readSpan("P1M"));
    const anchored = addSpan(first, readSpan("P2M"));
    expect([chained, anchored].map((date) => date && formatDate(date))).toEqual(["2021-03-28", "2021-03-31"]);
  });

  it("counts 18 262 days from 1969-07-24 to 2019-07-24 (test262, PlainDate/prototype/until)", () => {
    expect(daysBetween(readDate("1969-07-24"), readDate("2019-07-24"))).toBe(18_262);
    expect(daysBetween(readDate("2021-01-31"), readDate("2021-02-28"))).toBe(28);
  });
});

describe("against another implementation of the Temporal proposal", () => {
  const DAY = fc
    .tuple(
      fc.integer({ min: 1, max: 9999 }),
      fc.integer({ min: 1, max: 12 }),
      fc.oneof(fc.integer({ min: 1, max: 31 }), fc.integer({ min: 28, max: 31 })),
    )
    .map(([year, month, day]) => Temporal.PlainDate.from({ year, month, day }).toString());
  const PART = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 9999 }));

  it("adds spans alike", () => {
    let beyond = 0;
    fc.assert(
      fc.property(DAY, PART, PART, PART, PART, (start, years, months, weeks, days) => {
        const oracle = Temporal.PlainDate.from(start).add({ years, months, weeks, days });
        const later = addSpan(readDate(start), readSpan(`P${years}Y${months}M${weeks}W${days}D`));
        if (oracle.year > 9999) beyond += 1;
        expect(later && formatDate(later)).toBe(oracle.year > 9999 ? undefined : oracle.toString());
      }),
      { seed: SEED, numRuns: countQuickRuns(20_000) },
    );
    expect(beyond).toBeGreaterThan(100);
    expect(beyond).toBeLessThan(countQuickRuns(20_000) * 0.95);
  });

  it("compares and counts days between alike", () => {
    fc.assert(
      fc.property(DAY, DAY, (left, right) => {
        const [from, to] = [Temporal.PlainDate.from(left), Temporal.PlainDate.from(right)];
        expect(daysBetween(readDate(left), readDate(right))).toBe(from.until(to, { largestUnit: "day" }).days);
        expect(compareDates(readDate(left), readDate(right))).toBe(Temporal.PlainDate.compare(from, to));
      }),
      { seed: SEED, numRuns: countQuickRuns(5000) },
    );
  });

  it("takes texts for a date alike", () => {
    const number = (size: number, max: number) =>
      fc.integer({ min: 0, max }).map((value) => String(value).padStart(size, "0"));
    let real = 0;
    fc.assert(
      fc.property(number(4, 9999), number(2, 14), number(2, 33), (year, month, day) => {
        const text = `${year}-${month}-${day}`;
        const isReal = isRealDate(text) && year !== "0000";
        if (isReal) real += 1;
        expect(parseDate(text) !== undefined).toBe(isReal);
      }),
      { seed: SEED, numRuns: countQuickRuns(20_000) },
    );
    expect(real).toBeGreaterThan(countQuickRuns(20_000) / 2);
    expect(real).toBeLessThan(countQuickRuns(20_000) * 0.95);
  });

  it("reads instants alike", () => {
    const instant = fc
      .tuple(
        DAY,
        fc.integer({ min: 0, max: 86_399 }),
        fc.integer({ min: -1439, max: 1439 }),
        fc.integer({ min: 0, max: 999 }),
      )
      .map(([day, second, offset, millisecond]) => {
        const pad = (value: number, size = 2) => String(value).padStart(size, "0");
        const clock = `${pad(Math.floor(second / 3600))}:${pad(Math.floor(second / 60) % 60)}:${pad(second % 60)}.${pad(millisecond, 3)}`;
        const size = Math.abs(offset);
        return `${day}T${clock}${offset < 0 ? "-" : "+"}${pad(Math.floor(size / 60))}:${pad(size % 60)}`;
      });
    fc.assert(
      fc.property(instant, (text) => {
        const time = parseRecordTime(text);
        expect(time?.epochMilliseconds).toBe(Temporal.Instant.from(text).epochMilliseconds);
        expect(time && formatDate(time.date)).toBe(text.slice(0, 10));
      }),
      { seed: SEED, numRuns: countQuickRuns(5000) },
    );
  });
});

function isRealDate(text: string): boolean {
  try {
    Temporal.PlainDate.from(text, { overflow: "reject" });
    return true;
  } catch {
    return false;
  }
}

/** Source: RFC 3339, section 5.8 (from memory), the instants in UTC beside them. */
const STAMPS = [
  ["1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.520Z"],
  ["1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57.000Z"],
  ["1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.870Z"],
] as const;

describe("RFC 3339, section 5.8", () => {
  it.each(STAMPS)("%s is %s", (text, utc) => {
    const time = parseRecordTime(text);
    expect(time?.epochMilliseconds).toBe(Date.parse(utc));
  });

  it.each(["1990-12-31T23:59:60Z", "1990-12-31T15:59:60-08:00"])("refuses the leap second %s by choice", (text) => {
    expect(parseRecordTime(text)).toBeUndefined();
  });
});
