import { ENGLISH_FILES, type JsonWords } from "../words/index.js";
import { findJsonFault } from "./find-json-fault.js";

/** Why a text is not taken: `repeated-key` and `too-deep` may stand in JSON that is sound otherwise. */
export interface RefusedJson {
  readonly refused: "syntax" | "repeated-key" | "too-deep";
  readonly problem: string;
  /** In UTF-16 units from the start of the text; undefined where it is not known. */
  readonly offset: number | undefined;
}

/** A JSON value, or what is wrong with its text. */
export type ParsedJson = { readonly value: unknown } | RefusedJson;

const MOST_DEPTH = 512;
/** Characters of a key that a message shows. */
const MOST_SHOWN = 60;

/**
 * Parses JSON and refuses what would hide evidence or exhaust the machine: a key that stands twice in one object, of which a
 * plain parser silently keeps the last, and nesting beyond 512 levels.
 */
export function parseJson(text: string, words: JsonWords = ENGLISH_FILES.json): ParsedJson {
  const refusal = scanStructure(text, words);
  if (refusal !== undefined) return refusal;
  try {
    const value: unknown = JSON.parse(text);
    return { value };
  } catch {
    return { refused: "syntax", ...(findJsonFault(text, words) ?? { problem: words.noJson, offset: undefined }) };
  }
}

interface OpenThing {
  /** The keys so far; undefined for a list. */
  readonly keys: Set<string> | undefined;
  awaitsKey: boolean;
}

/** One pass over brackets and strings; what is no JSON is left for the parser to refuse. */
function scanStructure(text: string, words: JsonWords): RefusedJson | undefined {
  const open: OpenThing[] = [];
  for (let offset = 0; offset < text.length; offset += 1) {
    const character = text.charCodeAt(offset);
    const current = open[open.length - 1];
    if (character === 0x22) {
      const end = findStringEnd(text, offset);
      if (current?.keys !== undefined && current.awaitsKey) {
        const key = readKey(text.slice(offset, end + 1));
        if (current.keys.has(key)) return refuseKey(key, offset, words);
        current.keys.add(key);
        current.awaitsKey = false;
      }
      offset = end;
    } else if (character === 0x7b || character === 0x5b) {
      if (open.length >= MOST_DEPTH) {
        return { refused: "too-deep", problem: words.tooDeep(MOST_DEPTH), offset };
      }
      open.push({ keys: character === 0x7b ? new Set() : undefined, awaitsKey: character === 0x7b });
    } else if (character === 0x7d || character === 0x5d) open.pop();
    else if (character === 0x2c && current !== undefined) current.awaitsKey = current.keys !== undefined;
  }
  return undefined;
}

function refuseKey(key: string, offset: number, words: JsonWords): RefusedJson {
  const shown = key.length > MOST_SHOWN ? `${key.slice(0, MOST_SHOWN)}…` : key;
  return { refused: "repeated-key", problem: words.repeatedKey(shown), offset };
}

/** The offset of the quote that ends a string, else of the end of the text. */
export function findStringEnd(text: string, start: number): number {
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
