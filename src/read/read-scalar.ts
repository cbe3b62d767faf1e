import { Scalar } from "yaml";
import { findUnwanted } from "./check-text.js";
import type { DocumentWalk } from "./document-walk.js";
import { findStrayQuote } from "./stray-quote.js";
import { shortenText } from "./text-report.js";

/** Behind a plain text: blanks and a `#` that is followed at once by something, as in `Set #4`. */
const COMMENT = /[ \t]*(#(?![\s#])[^\r\n]*)/y;
const SIGNIFICANT_DIGITS = 15;

/**
 * The value of a text, number, true, false or null. May add `read/control-character`, `read/lone-surrogate` (written
 * as an escape), `read/number-not-exact` and `read/stray-quote`; notes a text that a `#` may have cut short.
 */
export function readScalar(walk: DocumentWalk, node: Scalar.Parsed, pointer: string): unknown {
  const { value } = node;
  const [start, end] = node.range;
  if (typeof value === "string" && node.type === Scalar.QUOTE_DOUBLE) {
    const unwanted = findUnwanted(value);
    if (unwanted !== undefined) {
      walk.silenced.add(pointer);
      const code = unwanted.startsWith("U+D") ? "read/lone-surrogate" : "read/control-character";
      walk.output.report(code, start, end, { found: unwanted, count: 1 });
    }
  }
  if (typeof value === "number" && !isExact(value, node.source)) {
    walk.silenced.add(pointer);
    walk.output.report("read/number-not-exact", start, end, { found: shortenText(node.source) });
    return null;
  }
  if (node.type === Scalar.PLAIN && !reportStrayQuote(walk, node, pointer)) noteCutText(walk, node, pointer);
  return value;
}

/** Why silenced: a quantity or a name with a quote at its end is no other mistake. */
function reportStrayQuote(walk: DocumentWalk, { range: [start, end] }: Scalar.Parsed, pointer: string): boolean {
  const written = walk.output.source.text.slice(start, end);
  const at = findStrayQuote(written);
  if (at === undefined) return false;
  walk.silenced.add(pointer);
  const params = { quote: written.charAt(at), text: shortenText(written.slice(0, at)), found: shortenText(written) };
  walk.output.report("read/stray-quote", start + at, end, params);
  return true;
}

function isExact(value: number, source: string): boolean {
  if (Number.isInteger(value)) return Number.isSafeInteger(value);
  const mantissa = source.replace(/e.*$/i, "").replaceAll(/\D/g, "").replace(/^0+/, "");
  return Number.isFinite(value) && mantissa.length <= SIGNIFICANT_DIGITS;
}

function noteCutText(walk: DocumentWalk, node: Scalar.Parsed, pointer: string): void {
  const [start, end] = node.range;
  const { text } = walk.output.source;
  COMMENT.lastIndex = end;
  const comment = COMMENT.exec(text)?.[1];
  if (comment === undefined) return;
  const kept = text.slice(start, end);
  const whole = shortenText(`${kept} ${comment}`);
  const from = text.indexOf("#", end);
  walk.cutTexts.set(pointer, {
    span: { start: from, end: from + comment.trimEnd().length },
    kept: shortenText(kept),
    whole,
  });
}
