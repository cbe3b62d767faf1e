import { measureText } from "./wrap-text.js";

/** Columns that stay in view before the marks where a frame is cut. */
const LEAD = 16;
const CUT = "...";

/** Cuts the lines of a code frame to a width, round the row of `^` that it ends with. */
export function cropFrame(frame: string, width: number): readonly string[] {
  const rows = frame.split("\n").map((row) => {
    const gutter = /^ *\d* \| ?/.exec(row)?.[0] ?? "";
    return { gutter, text: row.slice(gutter.length) };
  });
  const room = width - (rows[0]?.gutter.length ?? 0);
  const last = rows.at(-1)?.text ?? "";
  if (rows.every(({ text }) => measureText(text) <= room)) return rows.map(({ gutter, text }) => gutter + text);
  const marks = last.indexOf("^");
  const start = marks + Math.min(last.length - marks, room / 2) <= room - CUT.length ? 0 : marks - LEAD;
  return rows.map(({ gutter, text }, index) => {
    const isMarks = index === rows.length - 1;
    const lead = start === 0 ? "" : isMarks ? " ".repeat(CUT.length) : CUT;
    const shown = text.slice(start);
    const rest = room - lead.length;
    if (shown.length <= rest) return (gutter + lead + shown).trimEnd();
    return (gutter + lead + (isMarks ? shown.slice(0, rest) : shown.slice(0, rest - CUT.length) + CUT)).trimEnd();
  });
}
