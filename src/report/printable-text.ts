/** Control characters, marks that turn the writing round, line and paragraph separators, half pairs. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]/gu;

/** Text of a record or a policy as it may be printed: it can neither drive the terminal nor turn the writing round. */
export function makePrintable(text: string): string {
  return text.replace(UNPRINTABLE, "\uFFFD");
}
