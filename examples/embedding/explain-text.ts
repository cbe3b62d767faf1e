/** Why a text that was typed cannot be read, in words for whoever typed it; undefined where it can. */
export type ExplainText = (text: string) => string | undefined;

const FIGURE = /^-?(0|[1-9]\d*)(\.\d+)?$/;

/** What the record gets: a bare figure takes the usual unit, anything else stands as it was typed. */
export function recordQuantity(text: string, unit: string): string {
  return FIGURE.test(text) && unit !== "" ? `${text} ${unit}` : text;
}

/** @param units the units of the field, the usual one first */
export function explainQuantity(text: string, units: readonly string[]): string | undefined {
  const [figure = "", unit, ...rest] = text.split(" ");
  const usual = units[0] ?? "";
  if (text.includes(",")) {
    return "a comma cannot be read: write a decimal with a point, such as 57.5, and thousands without a mark";
  }
  if (/^-?0\d/.test(figure)) return "a figure does not begin with 0: write 5, not 05";
  if (!FIGURE.test(figure)) {
    return /^-?\d+(\.\d+)?[^\d.\s]+$/.test(figure)
      ? `a space stands between figure and unit, such as 5 ${usual}`
      : `this is not a figure: write digits alone, or with a unit, such as 5 ${usual}`;
  }
  if (unit === undefined || (rest.length === 0 && units.includes(unit))) return undefined;
  return `the unit is not one of ${units.join(", ")}`;
}

/** A day or a month that the calendar has. */
export function explainDate(text: string): string | undefined {
  const [, year, month, day = "01"] = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(text) ?? [];
  if (year === undefined || month === undefined) return "write year, month and day, such as 2026-04-14";
  const time = Date.parse(`${year}-${month}-${day}T00:00:00Z`);
  const isKept = !Number.isNaN(time) && new Date(time).toISOString().startsWith(`${year}-${month}-${day}`);
  return isKept ? undefined : "the calendar has no such day";
}

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,3})?$/;
const INSTANT = /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,3})?([Zz]|[+-]\d{2}:\d{2})$/;

/**
 * What the record gets: a time of the clock takes day and offset of the check.
 *
 * @param at the instant of the check, with its offset
 */
export function recordInstant(text: string, at: string): string {
  return CLOCK.test(text) ? `${at.slice(0, 10)}T${text}${/([Zz]|[+-]\d{2}:\d{2})$/.exec(at)?.[0] ?? ""}` : text;
}

/** Why: without seconds a time between two events would be made up. */
export function explainInstant(text: string): string | undefined {
  return CLOCK.test(text) || INSTANT.test(text)
    ? undefined
    : "write hours, minutes and seconds of the clock, such as 07:10:30";
}
