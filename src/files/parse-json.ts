/** A JSON value, or what is wrong with its text and at which offset, where that is known. */
export type ParsedJson =
  | { readonly value: unknown }
  | { readonly problem: string; readonly offset: number | undefined };

const MOST_DEPTH = 512;

/**
 * Parses JSON and refuses what would hide evidence or exhaust the machine: a key that stands twice in one object, of which a
 * plain parser silently keeps the last, and nesting beyond 512 levels.
 */
export function parseJson(text: string): ParsedJson {
  const fault = scanStructure(text);
  if (fault !== undefined) return fault;
  try {
    const value: unknown = JSON.parse(text);
    return { value };
  } catch (error) {
    const message = error instanceof Error ? error.message : "";
    const offset = /position (\d+)/.exec(message)?.[1];
    const ends = text.trim() === "" || /end of JSON/i.test(message);
    return {
      problem: ends ? "the JSON text ends too early" : "this is no JSON",
      offset: ends ? text.length : offset === undefined ? undefined : Number(offset),
    };
  }
}

interface OpenThing {
  /** The keys so far; undefined for a list. */
  readonly keys: Set<string> | undefined;
  awaitsKey: boolean;
}

/** One pass over brackets and strings; what is no JSON is left for the parser to refuse. */
function scanStructure(text: string): Extract<ParsedJson, { problem: string }> | undefined {
  const open: OpenThing[] = [];
  for (let offset = 0; offset < text.length; offset += 1) {
    const character = text.charCodeAt(offset);
    const current = open[open.length - 1];
    if (character === 0x22) {
      const end = findStringEnd(text, offset);
      if (current?.keys !== undefined && current.awaitsKey) {
        const key = readKey(text.slice(offset, end + 1));
        if (current.keys.has(key)) return { problem: `the key \`${key}\` stands twice in one object`, offset };
        current.keys.add(key);
        current.awaitsKey = false;
      }
      offset = end;
    } else if (character === 0x7b || character === 0x5b) {
      if (open.length >= MOST_DEPTH) return { problem: `it nests more than ${MOST_DEPTH} levels deep`, offset };
      open.push({ keys: character === 0x7b ? new Set() : undefined, awaitsKey: character === 0x7b });
    } else if (character === 0x7d || character === 0x5d) open.pop();
    else if (character === 0x2c && current !== undefined) current.awaitsKey = current.keys !== undefined;
  }
  return undefined;
}

function findStringEnd(text: string, start: number): number {
  for (let offset = start + 1; offset < text.length; offset += 1) {
    const character = text.charCodeAt(offset);
    if (character === 0x5c) offset += 1;
    else if (character === 0x22) return offset;
  }
  return text.length;
}

/** Two spellings of one key, one of them with escapes, are the same key. */
function readKey(quoted: string): string {
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted;
  }
}
