import { createLineTable, type LineTable } from "./line-table.js";
import type { Place } from "./place.js";

/** A place as editors count it: lines and columns from 1, columns in UTF-16 units, the end column just behind. */
export interface Location {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** Offsets outside the text are moved to its edge. `table` saves reading the text again for each of many places. */
export function locatePlace(place: Place, table: LineTable = createLineTable(place.source.text)): Location {
  const last = place.source.text.length;
  const start = Math.min(Math.max(place.span.start, 0), last);
  const end = Math.min(Math.max(place.span.end, start), last);
  const line = table.lineAt(start);
  const endLine = table.lineAt(end);
  return {
    file: place.source.file,
    line,
    column: Math.max(start - table.startOf(line), 0) + 1,
    endLine,
    endColumn: Math.max(end - table.startOf(endLine), 0) + 1,
  };
}
