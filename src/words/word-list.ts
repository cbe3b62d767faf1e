/** Words in backticks with commas between them: "`refer`, `withdraw`". */
export function quoteWords(words: readonly string[]): string {
  return words.map((word) => `\`${word}\``).join(", ");
}

/** Words with commas between them and `last` before the last one: "`hold`, `match` or `timing`". */
export function joinWords(words: readonly string[], last: string): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
}
