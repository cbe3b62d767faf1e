/** Invariant: different words make different ids, and no id holds a space, which would part it into two in a list of ids. */
export function makeId(...words: readonly string[]): string {
  return words
    .map((word) => word.replace(/[^A-Za-z0-9-]/gu, (letter) => `_${letter.codePointAt(0)?.toString(16) ?? ""}_`))
    .join("/");
}
