/** How many columns a text takes: most characters one, wide East Asian ones two, combining marks none. */
export function measureText(text: string): number {
  let columns = 0;
  for (const character of text) {
    if (/\p{Mark}/u.test(character)) continue;
    columns +=
      /[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]|\p{Extended_Pictographic}/u.test(
        character,
      )
        ? 2
        : 1;
  }
  return columns;
}

/** Breaks a text at blanks into lines of at most `width` columns, each behind `indent`; a longer word stands alone. */
export function wrapText(text: string, width: number, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((one) => one !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && measureText(indent) + measureText(longer) > width) {
      lines.push(indent + line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(indent + line);
  return lines;
}
