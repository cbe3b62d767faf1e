import { ENGLISH_FILES, type JsonWords, type WantedInJson } from "../words/index.js";

/** Where a text stops being JSON, and why, in words. */
export interface JsonFault {
  readonly problem: string;
  /** In UTF-16 units from the start of the text. */
  readonly offset: number;
}

type Awaited = WantedInJson | "comma-or-end";

interface Scan {
  readonly words: JsonWords;
  readonly text: string;
  offset: number;
  awaited: Awaited;
  /** The closing bracket of everything that is open. */
  readonly closers: ("}" | "]")[];
  /** Why: an expression that keeps its place belongs to one scan, and a new one for each token would take minutes for a large text. */
  readonly number: RegExp;
  readonly name: RegExp;
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const NAME = /true|false|null/y;
const WORD = /[^\s,:[\]{}"]{1,20}|./suy;
const HEX = /[0-9a-fA-F]{4}/y;

/** Finds the first place where a text breaks the grammar of JSON (RFC 8259); undefined where it does not. */
export function findJsonFault(text: string, words: JsonWords = ENGLISH_FILES.json): JsonFault | undefined {
  const [number, name] = [new RegExp(NUMBER), new RegExp(NAME)];
  const scan: Scan = { words, text, offset: 0, awaited: "value", closers: [], number, name };
  for (;;) {
    while (isBlank(text.charCodeAt(scan.offset))) scan.offset += 1;
    if (scan.offset >= text.length) {
      return scan.awaited === "nothing" ? undefined : { problem: words.endsEarly, offset: scan.offset };
    }
    const start = scan.offset;
    const problem = takeToken(scan, text.charAt(start));
    if (problem !== undefined) return { problem, offset: scan.offset };
    if (scan.offset === start) return { problem: describeUnwanted(scan), offset: start };
  }
}

/** Takes one token where it is the one awaited and leaves the scan where it is otherwise; a fault inside it has words of its own. */
function takeToken(scan: Scan, character: string): string | undefined {
  const { awaited, closers } = scan;
  const awaitsValue = awaited === "value" || awaited === "value-or-end";
  const awaitsKey = awaited === "key" || awaited === "key-or-end";
  if (character === '"' && (awaitsValue || awaitsKey)) {
    scan.awaited = awaitsKey ? "colon" : nextOf(closers);
    return takeString(scan);
  }
  if ((character === "{" || character === "[") && awaitsValue) {
    closers.push(character === "{" ? "}" : "]");
    step(scan, 1, character === "{" ? "key-or-end" : "value-or-end");
  } else if (character === closers.at(-1) && awaited.endsWith("-or-end")) {
    closers.pop();
    step(scan, 1, nextOf(closers));
  } else if (character === ":" && awaited === "colon") step(scan, 1, "value");
  else if (character === "," && awaited === "comma-or-end") step(scan, 1, closers.at(-1) === "}" ? "key" : "value");
  else if (awaitsValue) step(scan, match(scan.number, scan) || match(scan.name, scan), nextOf(closers));
  return undefined;
}

function step(scan: Scan, length: number, awaited: Awaited): void {
  if (length > 0) scan.awaited = awaited;
  scan.offset += length;
}

function nextOf(closers: readonly string[]): Awaited {
  return closers.length === 0 ? "nothing" : "comma-or-end";
}

/** Blank, tab, line feed or carriage return. Source: RFC 8259, section 2. */
function isBlank(code: number): boolean {
  return code === 0x20 || code === 0x09 || code === 0x0a || code === 0x0d;
}

/** How many characters of the text a sticky expression takes at this offset. */
function match(expression: RegExp, { text, offset }: Pick<Scan, "text" | "offset">): number {
  expression.lastIndex = offset;
  return expression.test(text) ? expression.lastIndex - offset : 0;
}

/** Takes a string with its quotes; a fault leaves the offset on what is wrong. */
function takeString(scan: Scan): string | undefined {
  const { text, words } = scan;
  const start = scan.offset;
  for (let offset = start + 1; offset < text.length; offset += 1) {
    const code = text.charCodeAt(offset);
    if (code === 0x22) {
      scan.offset = offset + 1;
      return undefined;
    }
    if (code < 0x20) {
      scan.offset = offset;
      return code === 0x0a || code === 0x0d ? words.endlessText : words.controlCharacter;
    }
    if (code !== 0x5c) continue;
    offset += 1;
    const isSequence = text.charAt(offset) === "u";
    const isKnown = isSequence
      ? match(new RegExp(HEX), { text, offset: offset + 1 }) === 4
      : /^["\\/bfnrt]$/.test(text.charAt(offset));
    if (!isKnown && offset < text.length) {
      scan.offset = offset - 1;
      return words.badEscape(text.slice(offset - 1, offset + 1));
    }
  }
  scan.offset = text.length;
  return words.endsEarly;
}

function describeUnwanted({ words, text, offset, awaited, closers }: Scan): string {
  const character = text.charAt(offset);
  if (
    character === closers.at(-1) &&
    (awaited === "key" || awaited === "value") &&
    /,\s*$/.test(text.slice(Math.max(0, offset - 200), offset))
  ) {
    return words.commaBefore(character);
  }
  if (character === "'") return words.singleQuote;
  const found = text.slice(offset, offset + Math.max(1, match(new RegExp(WORD), { text, offset })));
  const wanted = awaited === "comma-or-end" ? words.commaOr(closers.at(-1) ?? "") : words.wanted[awaited];
  return words.unwanted(found, wanted);
}
