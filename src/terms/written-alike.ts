const LETTER = /(?!\p{Default_Ignorable_Code_Point})[\p{L}\p{N}]/u;
/** Blanks and marks, but for a plus, which tells `A+` from `A`. */
const MARKS = /[^\p{L}\p{N}\p{M}+]|\p{Default_Ignorable_Code_Point}|\u02bc/gu;
const BETWEEN_DIGITS = /(?<=\p{N})[^\p{L}\p{N}\p{M}]+(?=\p{N})/gu;
/** Before a number and behind a letter it tells one word from another. */
const MINUS = /^-(?=\p{N})|(?<=\p{L})-$/gu;
const PLAIN = /^[a-z0-9]/i;

/** Whether a text has a letter or a digit in it; a dash, a question mark or a blank that is not seen states nothing. */
export function saysAnything(text: string): boolean {
  return PLAIN.test(text) || LETTER.test(text);
}

/**
 * Whether two different texts are one word but for capitals, blanks and marks, as `Open Circuit` and `open-circuit` are. Numbers that
 * something stands between stay apart: `1/11` is not `11/1`.
 */
export function areWrittenAlike(one: string, other: string): boolean {
  // Why: nearly all words differ in their first letter, and judging asks this of every record.
  if (PLAIN.test(one) && PLAIN.test(other) && one.charAt(0).toLowerCase() !== other.charAt(0).toLowerCase())
    return false;
  return one !== other && saysAnything(one) && bareWord(one) === bareWord(other);
}

/** Capitals last, since `ß` has none but `SS`, and small letters have two forms of sigma. */
function bareWord(word: string): string {
  const apart = word.normalize("NFKC").replaceAll(BETWEEN_DIGITS, "+").replaceAll(MINUS, "+-+");
  return apart.replaceAll(MARKS, "").toLowerCase().toUpperCase();
}
