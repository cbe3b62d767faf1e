/**
 * A text that is made once for each catalogue in turn: a run speaks one language, so the last one is enough.
 *
 * @param make makes the text; must give the same for the same words
 */
export function rememberWords<W extends object>(make: (words: W) => string): (words: W) => string {
  let last: { readonly words: W; readonly text: string } | undefined;
  return (words) => {
    if (last?.words !== words) last = { words, text: make(words) };
    return last.text;
  };
}
