const PLAIN = /^[\x20-\x7E]*$/;
/** Unicode TR 11: what terminals draw two columns wide. */
const WIDE =
  /[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{20000}-\u{3FFFD}]|\p{Emoji_Presentation}/u;
const NO_WIDTH = /[\p{Mark}\u200C\u200D]/u;

/** How many columns a text takes: most characters one, wide East Asian ones and emoji two, combining marks none. */
export function measureText(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let columns = 0;
  for (const character of text) {
    if (!NO_WIDTH.test(character)) columns += WIDE.test(character) ? 2 : 1;
  }
  return columns;
}

/**
 * Breaks a text at blanks into lines of at most `width` columns; a longer word stands alone.
 *
 * @param indent stands before every line
 * @param lead stands before the first line instead, as wide as `indent`
 */
export function wrapText(text: string, width: number, indent: string, lead = indent): readonly string[] {
  const lines: string[] = [];
  let line = "";
  const margin = measureText(indent);
  const finish = (): void => {
    lines.push((lines.length === 0 ? lead : indent) + line);
  };
  for (const word of text.split(/\s+/).filter((one) => one !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && margin + measureText(longer) > width) {
      finish();
      line = word;
    } else line = longer;
  }
  if (line !== "") finish();
  return lines;
}
