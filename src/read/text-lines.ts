/** A line without its indentation and trailing blanks; offsets in the whole text. */
export interface ContentLine {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The line that holds an offset. */
export function readContentLine(text: string, offset: number): ContentLine {
  const lineStart = lineStartOf(text, offset);
  const feed = text.indexOf("\n", offset);
  const whole = text.slice(lineStart, feed === -1 ? text.length : feed);
  const end = lineStart + whole.trimEnd().length;
  const start = Math.min(lineStart + (whole.length - whole.trimStart().length), end);
  return { start, end, text: text.slice(start, end) };
}

export function lineStartOf(text: string, offset: number): number {
  return offset === 0 ? 0 : text.lastIndexOf("\n", offset - 1) + 1;
}
