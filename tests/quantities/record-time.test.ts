import { describe, expect, it } from "vitest";
import { parseRecordTime } from "../../src/quantities/index.js";

describe("parseRecordTime", () => {
  it("reads an instant with its local date and clock", () => {
    expect(parseRecordTime("2026-04-12T23:30:00-02:00")).toEqual({
      date: { year: 2026, month: 4, day: 12, dayGiven: true },
      epochMilliseconds: Date.UTC(2026, 3, 13, 1, 30),
      localMilliseconds: Date.UTC(2026, 3, 12, 23, 30),
      finerThanMillisecond: false,
    });
  });

  it("reads a local time without an instant, and a date without a clock", () => {
    const local = parseRecordTime("2026-04-12T07:04");
    expect([local?.epochMilliseconds, local?.localMilliseconds]).toEqual([undefined, Date.UTC(2026, 3, 12, 7, 4)]);
    const date = parseRecordTime("2026-04-12");
    expect(date).toEqual({
      date: { year: 2026, month: 4, day: 12, dayGiven: true },
      epochMilliseconds: undefined,
      localMilliseconds: undefined,
      finerThanMillisecond: false,
    });
  });

  it.each([
    ["2026-04-12T07:04:05.5Z", 500, false],
    ["2026-04-12T07:04:05.123Z", 123, false],
    ["2026-04-12T07:04:05.123000000Z", 123, false],
    ["2026-04-12T07:04:05.1239Z", 123, true],
    ["2026-04-12T07:04:05.000000001Z", 0, true],
  ] as const)("cuts %s to the millisecond and says so", (text, milliseconds, isFiner) => {
    const time = parseRecordTime(text);
    expect(time?.epochMilliseconds).toBe(Date.UTC(2026, 3, 12, 7, 4, 5, milliseconds));
    expect(time?.finerThanMillisecond).toBe(isFiner);
  });

  it.each([
    "2026-04-12T24:00:00Z",
    "2026-04-12T23:60:00Z",
    "2016-12-31T23:59:60Z",
    "2026-02-29T10:00:00Z",
    "2026-04-12T10:00:00+24:00",
    "2026-04-12T10:00:00+01:60",
    "2026-04-12T10:00:00+01",
    "2026-04-12T10Z",
    "2026-04-12 10:00:00Z",
    "2026-04-12T10:00:00.Z",
    "2026-04-12T10:00:00.1234567890Z",
    "2026-04-12T10:00:00,5Z",
    "2026-04-12Z",
    "2026-04",
    "2026-04-12T10:00:00Z ",
    " 2026-04-12T10:00:00Z",
    "12026-04-12",
    "2026-04-12T10:00:00[Europe/London]",
    "12.04.2026",
    "",
    null,
    undefined,
    1775977440000,
    {},
  ])("refuses %o", (value) => {
    expect(parseRecordTime(value)).toBeUndefined();
  });
});
