/** All but the characters of XML 1.0, section 2.2 (Char); half a pair is none of them either. */
const FORBIDDEN = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

/** The text with U+FFFD for each character that XML 1.0 has no way to write, and that a table has no use for. */
export function replaceForbidden(text: string): string {
  return text.replace(FORBIDDEN, "\uFFFD");
}
