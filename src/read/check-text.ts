import { MAX_BYTES } from "./read-limits.js";
import type { TextReport } from "./text-report.js";

/** Controls but tab, line feed and a carriage return before one; halves of a pair; the two noncharacters of the basic plane. */
const UNWANTED = /(?![\t\n\r])\p{Cc}|\r(?!\n)|\p{Cs}|[\ufffe\uffff]/gu;
const HALF = /\p{Cs}/u;

/**
 * Tells whether a text may be looked at as YAML at all. May add `read/too-large`, `read/control-character` and
 * `read/lone-surrogate`, the last two once with the number of places.
 * Source: YAML 1.2.2, production [1] c-printable.
 */
export function checkText({ source, report }: TextReport): boolean {
  const bytes = countBytes(source.text);
  if (bytes > MAX_BYTES) {
    report("read/too-large", 0, 0, { bytes, most: MAX_BYTES });
    return false;
  }
  const unwanted = [...source.text.matchAll(UNWANTED)];
  const halves = unwanted.filter(([character]) => HALF.test(character));
  const controls = unwanted.filter(([character]) => !HALF.test(character));
  for (const [code, list] of [
    ["read/control-character", controls] as const,
    ["read/lone-surrogate", halves] as const,
  ]) {
    const first = list[0];
    if (first === undefined) continue;
    report(code, first.index, first.index + 1, { found: nameCharacter(first[0]), count: list.length });
  }
  return unwanted.length === 0;
}

/** The first character of a value that no policy text may hold, even written as an escape. */
export function findUnwanted(value: string): string | undefined {
  const found = value.match(UNWANTED)?.[0];
  return found === undefined ? undefined : nameCharacter(found);
}

function nameCharacter(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  return `U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
}

/** UTF-8 bytes; half a pair counts as the three bytes of its replacement. */
function countBytes(text: string): number {
  if (text.length > MAX_BYTES) return text.length;
  let bytes = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}
