const BYTE_ORDER_MARK = 0xfeff;

/** Where the lines of one text begin. Lines count from 1 and end at a line feed, with or without a carriage return. */
export interface LineTable {
  readonly lineCount: number;
  /** The line that holds an offset; offsets outside the text count as its first or last. */
  lineAt(offset: number): number;
  /** The offset of a line's first character, behind a byte order mark. */
  startOf(line: number): number;
  /** The text of a line without its line break and byte order mark; empty for a line that is not there. */
  textOf(line: number): string;
}

/** Reads the text once; every question afterwards costs a binary search at most. */
export function createLineTable(text: string): LineTable {
  const starts = [text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : 0];
  for (let feed = text.indexOf("\n"); feed !== -1; feed = text.indexOf("\n", feed + 1)) starts.push(feed + 1);
  return {
    lineCount: starts.length,
    lineAt: (offset) => findLine(starts, offset),
    startOf: (line) => starts[line - 1] ?? text.length,
    textOf(line) {
      const start = starts[line - 1];
      if (start === undefined) return "";
      const next = starts[line];
      const whole = text.slice(start, next === undefined ? text.length : next - 1);
      return whole.endsWith("\r") ? whole.slice(0, -1) : whole;
    },
  };
}

function findLine(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low + 1;
}
