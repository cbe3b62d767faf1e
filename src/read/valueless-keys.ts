import { isScalar, type Pair, type ParsedNode, Scalar } from "yaml";
import type { DocumentWalk } from "./document-walk.js";
import { extendPointer } from "./json-pointer.js";
import { findKeyWithoutSpace } from "./key-without-space.js";
import { mendComparison, mendDecimalCommas } from "./mend-slip.js";
import { findStrayQuote } from "./stray-quote.js";
import { shortenText } from "./text-report.js";

type PairNode = Pair<ParsedNode, ParsedNode | null>;

/** Pieces without a value that follow each other, and the entry before them. */
interface Run {
  readonly before: PairNode | undefined;
  readonly start: number;
  end: number;
}

/**
 * Reports what stands between the commas of a `{ }` map without a colon and a space, and returns those pairs. May add
 * `read/no-space-behind-colon`, `read/text-cut-by-comma` (once for all pieces of a text), `read/bad-text` (a decimal comma, a
 * comparison sign for a key) and `read/no-value`.
 */
export function reportValueless(walk: DocumentWalk, pairs: readonly PairNode[], pointer: string): Set<PairNode> {
  const { report, source } = walk.output;
  const valueless = new Set(pairs.filter(({ value }) => value === null));
  let run: Run | undefined;
  let before: PairNode | undefined;
  for (const pair of pairs) {
    const [start, end] = pair.key.range;
    const written = source.text.slice(start, end);
    const key = findKeyWithoutSpace(written);
    if (valueless.has(pair) && key === undefined) {
      if (run === undefined) run = { before, start, end };
      else run.end = end;
      continue;
    }
    if (run !== undefined) reportRun(walk, run, pointer);
    run = undefined;
    before = valueless.has(pair) ? undefined : pair;
    if (!valueless.has(pair) || key === undefined) continue;
    walk.incomplete.add(pointer);
    report("read/no-space-behind-colon", start, end, { key, found: shortenText(written) });
  }
  if (run !== undefined) reportRun(walk, run, pointer);
  return valueless;
}

function reportRun(walk: DocumentWalk, { before, start, end }: Run, pointer: string): void {
  const { report, source, words } = walk.output;
  const found = shortenText(source.text.slice(start, end));
  const compared = mendComparison(found);
  if (compared !== undefined) {
    walk.incomplete.add(pointer);
    report("read/bad-text", start, end, { text: found, found, expected: words.keyAndValue, nearest: compared });
    return;
  }
  if (before === undefined || !isScalar(before.key) || !isScalar(before.value) || before.value.type !== Scalar.PLAIN) {
    walk.incomplete.add(pointer);
    report("read/no-value", start, Math.max(end, start + 1), {
      key: found,
      found,
      expected: words.keyAndValue,
    });
    return;
  }
  const key = String(before.key.value);
  const [valueStart] = before.value.range;
  const written = source.text.slice(valueStart, end);
  const whole = shortenText(written.slice(0, findStrayQuote(written)));
  walk.silenced.add(extendPointer(pointer, key));
  const pointed = mendDecimalCommas(whole);
  if (pointed !== undefined && !pointed.includes(",")) {
    report("read/bad-text", valueStart, end, {
      text: whole,
      found: whole,
      expected: words.quantityWithPoint,
      nearest: pointed,
    });
    return;
  }
  report("read/text-cut-by-comma", start, end, { found, key: shortenText(key), whole });
}
