import { createLineTable, type LineTable } from "./line-table.js";
import { locatePlace } from "./location.js";
import type { Place } from "./place.js";

/** Characters of a line that a frame shows at most. */
const WINDOW_WIDTH = 120;
/** Characters kept in view before the place when a long line is cut. */
const WINDOW_LEAD = 40;
const HIDDEN = "\u{fffd}";
const CUT = "…";

// Characters that draw nothing or move the cursor: controls but the tab, line separators, direction marks, halves of a pair.
const UNPRINTABLE = /[^\P{C}\t]|[\u2028\u2029]/gu;

/**
 * The line of a place with the line before it, numbered, and a row of `^` under the place (to the end of its first line).
 * Long lines are cut to a window around the place, tabs stay so that the row lines up, and characters that
 * could disturb a terminal are shown as U+FFFD.
 */
export function frameOf(place: Place, table: LineTable = createLineTable(place.source.text)): string {
  const location = locatePlace(place, table);
  const text = table.textOf(location.line);
  const from = Math.min(location.column - 1, text.length);
  const to = location.endLine === location.line ? Math.min(location.endColumn - 1, text.length) : text.length;
  const shift = text.length <= WINDOW_WIDTH ? 0 : Math.max(from - WINDOW_LEAD, 0);
  const width = String(location.line).length;
  const lead = text.slice(shift, from).replaceAll(/[^\t]/g, " ");
  const marks = "^".repeat(Math.max(Math.min(to, shift + WINDOW_WIDTH) - from, 1));
  const rows = [
    `${location.line} | ${showWindow(text, shift)}`,
    `${" ".repeat(width)} | ${shift > 0 ? " " : ""}${lead}${marks}`,
  ];
  if (location.line === 1) return rows.join("\n");
  const before = location.line - 1;
  return [`${String(before).padStart(width)} | ${showWindow(table.textOf(before), shift)}`, ...rows].join("\n");
}

function showWindow(text: string, shift: number): string {
  const shown = text.slice(shift, shift + WINDOW_WIDTH).replaceAll(UNPRINTABLE, hideUnits);
  return `${shift > 0 ? CUT : ""}${shown}${text.length > shift + WINDOW_WIDTH ? CUT : ""}`.trimEnd();
}

/** Why: one mark for each UTF-16 unit keeps the columns of what follows. */
function hideUnits(character: string): string {
  return HIDDEN.repeat(character.length);
}
