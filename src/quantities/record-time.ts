import { type CalendarDate, countEpochDays, makeDate } from "./calendar.js";

/** When something was recorded: an instant with offset, a local time without one, or a date. */
export interface RecordTime {
  /** The local date as written. */
  readonly date: CalendarDate;
  /** Set only where an offset is given. */
  readonly epochMilliseconds: number | undefined;
  /** The wall clock as if it were UTC; set for instants and local times. */
  readonly localMilliseconds: number | undefined;
  /** Whether digits beyond the millisecond were cut off. */
  readonly finerThanMillisecond: boolean;
}

const MILLISECONDS_PER_DAY = 86_400_000;
const TIME =
  /^(\d{4})-(\d{2})-(\d{2})(?:[Tt]([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d)(?:\.(\d{1,9}))?)?([Zz]|[+-](?:[01]\d|2[0-3]):[0-5]\d)?)?$/;

/** Milliseconds that an offset such as `+01:00` is ahead of UTC. */
function readOffset(text: string): number {
  if (text === "Z" || text === "z") return 0;
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6));
  return (text.startsWith("-") ? -minutes : minutes) * 60_000;
}

/**
 * Reads an RFC 3339 instant (section 5.6, seconds may be left out, up to 9 decimals), the same without an offset, or a
 * date.
 *
 * Refused: `24:00`, a leap second (`:60` has no place on a clock of equal days, and moving it would change a time by a
 * second), a blank for `T`, an offset beyond 23:59, a date that does not exist. Decimals beyond the millisecond are
 * cut, which `finerThanMillisecond` tells.
 */
export function parseRecordTime(text: unknown): RecordTime | undefined {
  if (typeof text !== "string") return undefined;
  const match = TIME.exec(text);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second = "0", fraction = "", offset] = match;
  const date = makeDate(Number(year), Number(month), Number(day), true);
  if (date === undefined) return undefined;
  if (hour === undefined) {
    return Object.freeze({
      date,
      epochMilliseconds: undefined,
      localMilliseconds: undefined,
      finerThanMillisecond: false,
    });
  }
  const seconds = (Number(hour) * 60 + Number(minute)) * 60 + Number(second);
  const milliseconds = seconds * 1000 + Number(fraction.padEnd(3, "0").slice(0, 3));
  const localMilliseconds = countEpochDays(date) * MILLISECONDS_PER_DAY + milliseconds;
  return Object.freeze({
    date,
    epochMilliseconds: offset === undefined ? undefined : localMilliseconds - readOffset(offset),
    localMilliseconds,
    finerThanMillisecond: /[1-9]/.test(fraction.slice(3)),
  });
}
