/** Where a text stops being JSON, and why, in words. */
export interface JsonFault {
  readonly problem: string;
  /** In UTF-16 units from the start of the text. */
  readonly offset: number;
}

type Awaited = "value" | "value-or-end" | "key" | "key-or-end" | "colon" | "comma-or-end" | "nothing";

interface Scan {
  readonly text: string;
  offset: number;
  awaited: Awaited;
  /** The closing bracket of everything that is open. */
  readonly closers: ("}" | "]")[];
  /** Why: an expression that keeps its place belongs to one scan, and a new one for each token would take minutes for a large text. */
  readonly number: RegExp;
  readonly name: RegExp;
}

const WANTED: Readonly<Record<Exclude<Awaited, "comma-or-end">, string>> = {
  value: "a value",
  "value-or-end": "a value or `]`",
  key: "a key in double quotes",
  "key-or-end": "a key in double quotes or `}`",
  colon: "`:`",
  nothing: "the end of the text",
};

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const NAME = /true|false|null/y;
const WORD = /[^\s,:[\]{}"]{1,20}|./suy;
const HEX = /[0-9a-fA-F]{4}/y;

/** Finds the first place where a text breaks the grammar of JSON (RFC 8259); undefined where it does not. */
export function findJsonFault(text: string): JsonFault | undefined {
  const [number, name] = [new RegExp(NUMBER), new RegExp(NAME)];
  const scan: Scan = { text, offset: 0, awaited: "value", closers: [], number, name };
  for (;;) {
    while (isBlank(text.charCodeAt(scan.offset))) scan.offset += 1;
    if (scan.offset >= text.length) {
      return scan.awaited === "nothing" ? undefined : { problem: "the JSON text ends too early", offset: scan.offset };
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
  const { text } = scan;
  const start = scan.offset;
  for (let offset = start + 1; offset < text.length; offset += 1) {
    const code = text.charCodeAt(offset);
    if (code === 0x22) {
      scan.offset = offset + 1;
      return undefined;
    }
    if (code < 0x20) {
      scan.offset = offset;
      return code === 0x0a || code === 0x0d
        ? "a text in quotes does not end on its line"
        : "a control character stands in a text";
    }
    if (code !== 0x5c) continue;
    offset += 1;
    const isSequence = text.charAt(offset) === "u";
    const isKnown = isSequence
      ? match(new RegExp(HEX), { text, offset: offset + 1 }) === 4
      : /^["\\/bfnrt]$/.test(text.charAt(offset));
    if (!isKnown && offset < text.length) {
      scan.offset = offset - 1;
      return `\`${text.slice(offset - 1, offset + 1)}\` begins no character in JSON; a backslash itself is \`\\\\\``;
    }
  }
  scan.offset = text.length;
  return "the JSON text ends too early";
}

function describeUnwanted({ text, offset, awaited, closers }: Scan): string {
  const character = text.charAt(offset);
  if (
    character === closers.at(-1) &&
    (awaited === "key" || awaited === "value") &&
    /,\s*$/.test(text.slice(Math.max(0, offset - 200), offset))
  ) {
    return `a comma stands before the closing \`${character}\``;
  }
  if (character === "'") return "a text is quoted with `'`; JSON wants `\"`";
  const found = text.slice(offset, offset + Math.max(1, match(new RegExp(WORD), { text, offset })));
  const wanted = awaited === "comma-or-end" ? `\`,\` or \`${closers.at(-1)}\`` : WANTED[awaited];
  return `\`${found}\` stands where ${wanted} is wanted`;
}
