import { parse } from "csv-parse/sync";
import * as z from "zod";
import { renderCsvHead } from "../../src/report/index.js";

const tableModel = z.array(z.record(z.string(), z.string()));

/** The rows of a table with its header, each by the names of its columns. */
export function readTable(text: string): readonly Readonly<Record<string, string>>[] {
  return tableModel.parse(parse(text, { columns: true, record_delimiter: "\r\n" }));
}

/** The rows of one piece of a table. */
export function readRows(rows: string): readonly Readonly<Record<string, string>>[] {
  return readTable(renderCsvHead() + rows);
}

/** A cell as it was before it was guarded against spreadsheets. */
export function unguardCell(cell: string): string {
  return /^'+[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/.test(cell) ? cell.slice(1) : cell;
}
