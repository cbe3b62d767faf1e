import { isAlias, isMap, isScalar, isSeq, type Pair, type ParsedNode, type YAMLMap } from "yaml";
import type { Span } from "../source/index.js";
import type { DocumentWalk } from "./document-walk.js";
import { extendPointer } from "./json-pointer.js";
import { MAX_DEPTH, MAX_NODES } from "./read-limits.js";
import { readScalar } from "./read-scalar.js";
import { shortenText } from "./text-report.js";
import { reportValueless } from "./valueless-keys.js";

type Walked = { readonly value: unknown; readonly end: number };
type MapNode = YAMLMap.Parsed;
type PairNode = Pair<ParsedNode, ParsedNode | null>;

/**
 * Makes plain values of a node and what is in it, and notes where each stands.
 * May add `read/duplicate-key`, `read/key-not-text`, `read/merge-key`, `read/too-deep`, `read/too-many-nodes` and the
 * codes of keys without a value and of single texts and numbers.
 */
export function walkNode(walk: DocumentWalk, node: ParsedNode, pointer: string, key?: Span, depth = 1): Walked {
  const [start, end] = node.range;
  if (!countNode(walk, node, depth)) return { value: null, end };
  const walked = readNode(walk, node, pointer, depth);
  walk.positions.set(pointer, { key, value: { start, end: walked.end } });
  return walked;
}

function readNode(walk: DocumentWalk, node: ParsedNode, pointer: string, depth: number): Walked {
  const [start, end] = node.range;
  if (isScalar(node)) {
    if (node.tag !== undefined) walk.silenced.add(pointer);
    return { value: readScalar(walk, node, pointer), end: trimEnd(walk, start, end) };
  }
  if (isMap(node)) return readMap(walk, node, pointer, depth);
  if (!isSeq(node)) {
    walk.silenced.add(pointer);
    return { value: null, end };
  }
  if (node.tag !== undefined) walk.silenced.add(pointer);
  let last = start;
  const value = node.items.map((item, index) => {
    const member = walkNode(walk, item, extendPointer(pointer, index), undefined, depth + 1);
    last = Math.max(last, member.end);
    return member.value;
  });
  return { value, end: node.flow === true ? end : last };
}

/** Keys by which an entry of a list is known; a second one in a map is that of an entry whose hyphen was left out. */
const ENTRY_KEYS: ReadonlySet<string> = new Set(["step", "rule", "id", "place"]);

function readMap(walk: DocumentWalk, node: MapNode, pointer: string, depth: number): Walked {
  if (node.tag !== undefined) walk.silenced.add(pointer);
  // Why: without a prototype no key can set one, and no name of a built-in method is found by accident.
  const value: Record<string, unknown> = Object.create(null);
  const keys = new Map<string, Span>();
  const valueless = node.flow === true ? reportValueless(walk, node.items, pointer) : new Set<PairNode>();
  let last = node.range[0];
  for (const pair of node.items) {
    last = Math.max(last, pair.value?.range[1] ?? 0, pair.key.range[1]);
    if (valueless.has(pair)) continue;
    const key = readKey(walk, pair, pointer, keys);
    // Why: what follows belongs to the entry that begins there, and would be reported key by key.
    if (key === "next-entry") break;
    if (key === undefined) continue;
    const child = extendPointer(pointer, key.text);
    if (pair.value === null)
      walk.positions.set(child, { key: key.span, value: { start: key.span.end, end: key.span.end } });
    const walked = pair.value === null ? undefined : walkNode(walk, pair.value, child, key.span, depth + 1);
    value[key.text] = walked?.value ?? null;
    last = Math.max(key.span.end, walked?.end ?? 0);
  }
  return { value, end: node.flow === true ? node.range[1] : last };
}

/** The key's text where it can be used; anything else is reported, and the map is noted as incomplete. */
function readKey(
  walk: DocumentWalk,
  pair: PairNode,
  pointer: string,
  keys: Map<string, Span>,
): { text: string; span: Span } | "next-entry" | undefined {
  const { output } = walk;
  const [start, end] = pair.key.range;
  const written = output.source.text.slice(start, end);
  if (!isScalar(pair.key) || typeof pair.key.value !== "string") {
    walk.incomplete.add(pointer);
    output.report("read/key-not-text", start, Math.max(end, start + 1), { found: shortenText(written) });
    return undefined;
  }
  const text = pair.key.value;
  const span = { start, end };
  if (written === "<<") {
    walk.incomplete.add(pointer);
    walk.merged.push({ start, end: pair.value?.range[1] ?? end });
    output.report("read/merge-key", start, end, { found: text });
    return undefined;
  }
  const first = keys.get(text);
  if (first !== undefined) {
    const place = { source: output.source, span: first };
    const beginsEntry = keys.keys().next().value === text && /\/\d+$/.test(pointer) && ENTRY_KEYS.has(text);
    const params = { key: shortenText(text), found: shortenText(text), ...(beginsEntry ? { entry: text } : {}) };
    output.report("read/duplicate-key", start, end, params, [{ message: output.related.first, place }]);
    if (!beginsEntry) return undefined;
    walk.incomplete.add(pointer);
    return "next-entry";
  }
  keys.set(text, span);
  walk.nodes++;
  return { text, span };
}

function countNode(walk: DocumentWalk, node: ParsedNode, depth: number): boolean {
  const [start] = node.range;
  if (walk.isOverLimit) return false;
  walk.nodes++;
  if (walk.nodes <= MAX_NODES && (depth <= MAX_DEPTH || isScalar(node) || isAlias(node))) return true;
  walk.isOverLimit = true;
  if (walk.nodes > MAX_NODES) walk.output.report("read/too-many-nodes", start, start, { most: MAX_NODES });
  else walk.output.report("read/too-deep", start, start, { most: MAX_DEPTH });
  return false;
}

/** Why: the range of a block text goes to the start of the next line. */
function trimEnd(walk: DocumentWalk, start: number, end: number): number {
  return start + walk.output.source.text.slice(start, end).trimEnd().length;
}
