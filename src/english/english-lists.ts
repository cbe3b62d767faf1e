import { quoteWords } from "../words/index.js";

/** What would have been accepted where one of several words is: nothing to say when there are none. */
export function wantOneOf(words: readonly string[]): string | undefined {
  const [first, ...others] = words;
  if (first === undefined) return undefined;
  return others.length === 0 ? `\`${first}\`` : `one of ${quoteWords(words)}`;
}
