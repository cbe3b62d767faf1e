/** Everything that draws nothing or acts on the terminal, but for the joiners that some scripts are written with. */
const UNPRINTABLE = /[^\P{C}\u200C\u200D]|[\u2028\u2029]/gu;

/** Text of a record or a policy as it may be printed: it can neither drive the terminal nor turn the writing round. */
export function makePrintable(text: string): string {
  return text.replace(UNPRINTABLE, "\uFFFD");
}

/** The same for one word or sentence: blanks run together, and what is longer than `most` columns or so is cut. */
export function clipText(text: string, most: number): string {
  const line = makePrintable(text.slice(0, 2 * most + 2).replaceAll(/\s+/g, " ")).trim();
  const characters = [...line];
  return characters.length <= most && text.length <= 2 * most + 2 ? line : `${characters.slice(0, most).join("")}...`;
}
