/** Behind these letters an apostrophe ends a word, as in `all the sets'` or `Max'`. */
const POSSESSIVE = /[szxß]'$/i;

/**
 * The offset in an unquoted text of a closing quote at its end that no other in it opens; undefined where there is none.
 * Why at the end only: further inside, a quote may be a sign of the text, as in `3/4" hose`.
 */
export function findStrayQuote(written: string): number | undefined {
  const last = written.length - 1;
  const quote = written.charAt(last);
  if ((quote !== '"' && quote !== "'") || POSSESSIVE.test(written)) return undefined;
  return written.split(quote).length % 2 === 0 ? last : undefined;
}
