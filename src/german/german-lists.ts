import { quoteWords } from "../words/index.js";

/** What would have been accepted where one of several words is: nothing to say when there are none. */
export function wantOneOf(words: readonly string[]): string | undefined {
  const [first, ...others] = words;
  if (first === undefined) return undefined;
  return others.length === 0 ? `\`${first}\`` : `eines von ${quoteWords(words)}`;
}

/** What to do where a close word is known, or else. */
export function writeNearest(nearest: string | undefined, otherwise: string): string {
  return nearest === undefined ? otherwise : `\`${nearest}\` schreiben`;
}
