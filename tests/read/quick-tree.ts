import { createWalk, type DocumentWalk } from "../../src/read/document-walk.js";
import { extendPointer } from "../../src/read/json-pointer.js";
import { type ReadTree, readTree as readAnyTree } from "../../src/read/read-tree.js";
import type { TextReport } from "../../src/read/text-report.js";
import type { Span } from "../../src/source/index.js";

/** What every text, key and number of a generated policy is made of; anything else is left to the reader. */
const PLAIN_TEXT = /^[ !#-[\]-~°±µ–]*$/;
const MOST_CHARACTERS = 200_000;
const MOST_LEVELS = 30;

/**
 * What `readTree` of the library gives, and sooner, where the text is what `JSON.stringify` wrote of texts, whole
 * numbers, booleans, lists and maps. Why: half the time of a law is spent reading the policies that it writes as YAML.
 */
export function readTree(output: TextReport): ReadTree | undefined {
  return readWrittenJson(output) ?? readAnyTree(output);
}

/** Nothing, and nothing reported, where the text is anything else. */
export function readWrittenJson(output: TextReport): ReadTree | undefined {
  const { text } = output.source;
  if (!text.startsWith("{") || text.length > MOST_CHARACTERS) return undefined;
  const parsed = parse(text);
  // Why: a key given twice, a blank, an escape or a number written another way shows here.
  if (parsed === undefined || JSON.stringify(parsed) !== text) return undefined;
  const walk = createWalk(output);
  const walked = walkValue(walk, parsed, "", { start: 0, depth: 1 });
  return walked === undefined ? undefined : { value: walked.value, walk };
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

interface Standing {
  readonly start: number;
  readonly depth: number;
  readonly key?: Span;
}

type Walked = { readonly value: unknown; readonly end: number };

function walkValue(walk: DocumentWalk, given: unknown, pointer: string, standing: Standing): Walked | undefined {
  const walked = readValue(walk, given, pointer, standing);
  if (walked === undefined) return undefined;
  walk.nodes++;
  walk.positions.set(pointer, { key: standing.key, value: { start: standing.start, end: walked.end } });
  return walked;
}

function readValue(walk: DocumentWalk, given: unknown, pointer: string, standing: Standing): Walked | undefined {
  const { start, depth } = standing;
  if (typeof given === "string") {
    return PLAIN_TEXT.test(given) ? { value: given, end: start + given.length + 2 } : undefined;
  }
  if (typeof given === "boolean" || Number.isSafeInteger(given))
    return { value: given, end: start + `${given}`.length };
  if (typeof given !== "object" || given === null || depth > MOST_LEVELS) return undefined;
  return Array.isArray(given) ? readList(walk, given, pointer, standing) : readMap(walk, given, pointer, standing);
}

function readList(
  walk: DocumentWalk,
  given: readonly unknown[],
  pointer: string,
  { start, depth }: Standing,
): Walked | undefined {
  const value: unknown[] = [];
  let next = start + 1;
  for (const [index, one] of given.entries()) {
    const walked = walkValue(walk, one, extendPointer(pointer, index), { start: next, depth: depth + 1 });
    if (walked === undefined) return undefined;
    value.push(walked.value);
    next = walked.end + 1;
  }
  return { value, end: given.length === 0 ? start + 2 : next };
}

function readMap(walk: DocumentWalk, given: object, pointer: string, { start, depth }: Standing): Walked | undefined {
  const value: Record<string, unknown> = Object.create(null);
  let next = start + 1;
  for (const [name, one] of Object.entries(given)) {
    // Why: `<<` is a merge key.
    if (!PLAIN_TEXT.test(name) || name === "<<") return undefined;
    const key = { start: next, end: next + name.length + 2 };
    const standing = { start: key.end + 1, depth: depth + 1, key };
    const walked = walkValue(walk, one, extendPointer(pointer, name), standing);
    if (walked === undefined) return undefined;
    walk.nodes++;
    value[name] = walked.value;
    next = walked.end + 1;
  }
  return { value, end: next === start + 1 ? start + 2 : next };
}
