import { describe, expect, it } from "vitest";
import {
  addSpan,
  compareDates,
  daysBetween,
  formatDate,
  parseCalendarSpan,
  parseDate,
} from "../../src/quantities/index.js";

function readDate(text: string) {
  const date = parseDate(text);
  if (date === undefined) throw new Error(`the test's own date \`${text}\` is not one`);
  return date;
}

describe("parseDate", () => {
  it.each([
    ["2026-03-20", { year: 2026, month: 3, day: 20, dayGiven: true }],
    ["2026-03", { year: 2026, month: 3, day: 1, dayGiven: false }],
    ["2024-02-29", { year: 2024, month: 2, day: 29, dayGiven: true }],
    ["2000-02-29", { year: 2000, month: 2, day: 29, dayGiven: true }],
    ["0001-01-01", { year: 1, month: 1, day: 1, dayGiven: true }],
    ["9999-12-31", { year: 9999, month: 12, day: 31, dayGiven: true }],
    ["2026-01-31", { year: 2026, month: 1, day: 31, dayGiven: true }],
    ["2026-04-30", { year: 2026, month: 4, day: 30, dayGiven: true }],
    ["2026-06-30", { year: 2026, month: 6, day: 30, dayGiven: true }],
    ["2026-09-30", { year: 2026, month: 9, day: 30, dayGiven: true }],
    ["2026-11-30", { year: 2026, month: 11, day: 30, dayGiven: true }],
  ])("reads %s", (text, date) => {
    expect(parseDate(text)).toEqual(date);
  });

  it.each([
    "2026-02-29",
    "1900-02-29",
    "2026-04-31",
    "2026-06-31",
    "2026-09-31",
    "2026-11-31",
    "2026-13-01",
    "2026-00-10",
    "2026-01-00",
    "2026-01-32",
    "0000-01-01",
    "2026",
    "2026-3-20",
    "20260320",
    "2026-03-20T00:00",
    " 2026-03-20",
    "2026-03-20\n",
    "-2026-03-20",
    "20.03.2026",
    "",
    "٢٠٢٦-٠٣-٢٠",
    null,
    undefined,
    20260320,
    new Date(0),
    ["2026-03-20"],
  ])("refuses %o", (value) => {
    expect(parseDate(value)).toBeUndefined();
  });
});

describe("parseCalendarSpan", () => {
  it.each([
    ["P1M", { years: 0, months: 1, weeks: 0, days: 0 }],
    ["P5Y", { years: 5, months: 0, weeks: 0, days: 0 }],
    ["P1Y2M3W4D", { years: 1, months: 2, weeks: 3, days: 4 }],
    ["P9999D", { years: 0, months: 0, weeks: 0, days: 9999 }],
    ["P0D", { years: 0, months: 0, weeks: 0, days: 0 }],
  ])("reads %s", (text, span) => {
    expect(parseCalendarSpan(text)).toEqual(span);
  });

  it.each([
    "P",
    "",
    "1M",
    "p1m",
    "P1M2Y",
    "P10000D",
    "-P1M",
    "+P1M",
    "P-1M",
    "P1.5M",
    "P1,5M",
    "PT1H",
    "P1DT2H",
    "P1MT",
    "P1S",
    "P1M ",
    "P1M1M",
    30,
    null,
    { months: 1 },
  ])("refuses %o", (value) => {
    expect(parseCalendarSpan(value)).toBeUndefined();
  });
});

describe("addSpan", () => {
  it("stops at the year 9999", () => {
    const day = parseCalendarSpan("P1D");
    const long = parseCalendarSpan("P9999Y9999M9999W9999D");
    if (day === undefined || long === undefined) throw new Error("the test's own spans are none");
    expect(addSpan(readDate("9999-12-31"), day)).toBeUndefined();
    expect(addSpan(readDate("9999-12-31"), long)).toBeUndefined();
    expect(addSpan(readDate("9999-12-30"), day)).toEqual(readDate("9999-12-31"));
  });

  it("counts a date without a day from the first of its month", () => {
    const span = parseCalendarSpan("P1M");
    if (span === undefined) throw new Error("the test's own span is none");
    expect(addSpan(readDate("2026-03"), span)).toEqual(readDate("2026-04-01"));
  });
});

describe("compareDates, daysBetween and formatDate", () => {
  it("order dates by the calendar", () => {
    const ordered = [
      "0001-01-01",
      "1999-12-31",
      "2000-01-01",
      "2026-01-31",
      "2026-02-01",
      "2026-02-28",
      "2026-03",
      "2026-03-02",
      "2026-12-31",
      "2027-01-01",
    ].map(readDate);
    ordered.forEach((left, leftAt) => {
      ordered.forEach((right, rightAt) => {
        expect(compareDates(left, right)).toBe(Math.sign(leftAt - rightAt));
        expect(Math.sign(daysBetween(right, left))).toBe(Math.sign(leftAt - rightAt));
      });
    });
    expect(compareDates(readDate("2026-03"), readDate("2026-03-01"))).toBe(0);
  });

  it("print the date in full", () => {
    expect(formatDate(readDate("0009-03"))).toBe("0009-03-01");
    expect(formatDate(readDate("2026-11-20"))).toBe("2026-11-20");
  });
});
