import { describe, expect, it } from "vitest";
import { english } from "../../src/english/index.js";
import { german } from "../../src/german/index.js";

/** What an ISO 8601 span is to a person. */
const ROWS = [
  ["P30D", "30 days", "30 Tage", "every 30 days", "alle 30 Tage"],
  ["P1D", "1 day", "1 Tag", "every day", "jeden Tag"],
  ["P2W", "2 weeks", "2 Wochen", "every 2 weeks", "alle 2 Wochen"],
  ["P1W", "1 week", "1 Woche", "every week", "jede Woche"],
  ["P1M", "1 month", "1 Monat", "every month", "jeden Monat"],
  ["P6M", "6 months", "6 Monate", "every 6 months", "alle 6 Monate"],
  ["P1Y", "1 year", "1 Jahr", "every year", "jedes Jahr"],
  ["P5Y", "5 years", "5 Jahre", "every 5 years", "alle 5 Jahre"],
  ["P1Y6M", "1 year and 6 months", "1 Jahr und 6 Monate", "every 1 year and 6 months", "alle 1 Jahr und 6 Monate"],
  [
    "P2Y1M1D",
    "2 years, 1 month and 1 day",
    "2 Jahre, 1 Monat und 1 Tag",
    "every 2 years, 1 month and 1 day",
    "alle 2 Jahre, 1 Monat und 1 Tag",
  ],
  ["P0D", "0 days", "0 Tage", "every 0 days", "alle 0 Tage"],
  ["unreadable", "unreadable", "unreadable", "every unreadable", "alle unreadable"],
] as const;

describe("a span in words", () => {
  it.each(ROWS)("%s is %s, %s", (span, inEnglish, inGerman, every, alle) => {
    expect(english.limits.notOlder(span)).toBe(`at most ${inEnglish} old`);
    expect(german.limits.notOlder(span)).toBe(`höchstens ${inGerman} alt`);
    expect(english.resolved.interval("due", span)).toBe(`interval due: ${every}`);
    expect(german.resolved.interval("due", span)).toBe(`Frist due: ${alle}`);
  });
});

describe("the names of units", () => {
  const symbols = { year: "Y", month: "M", week: "W", day: "D" } as const;
  const counted = Object.entries(symbols).flatMap(([unit, symbol]) =>
    [1, 2, 30].map((count) => [`P${count}${symbol}`, unit, count] as const),
  );

  /** Source: the names of units of the Unicode CLDR, by the platform's own `Intl.NumberFormat`. */
  const sayByPlatform = (language: string, unit: string, count: number) =>
    new Intl.NumberFormat(language, { style: "unit", unit, unitDisplay: "long" }).format(count);

  it.each(counted)("%s is called as the platform calls it", (span, unit, count) => {
    expect(english.limits.notOlder(span)).toBe(`at most ${sayByPlatform("en", unit, count)} old`);
    expect(german.limits.notOlder(span)).toBe(`höchstens ${sayByPlatform("de", unit, count)} alt`);
  });
});
