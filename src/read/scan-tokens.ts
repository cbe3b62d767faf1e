import { CST, Lexer, Parser } from "yaml";
import { MAX_DEPTH, MAX_NODES } from "./read-limits.js";
import type { TextReport } from "./text-report.js";
import { trackOpenings } from "./track-openings.js";

/** Tokens beside the blanks for one key or value at most: its text, an indicator, a comma, a bracket. */
const TOKENS_PER_NODE = 4;

/** Something that is YAML and that policies do without. */
export interface Refusal {
  readonly code: "read/anchor" | "read/alias" | "read/tag" | "read/directive";
  readonly start: number;
  readonly text: string;
}

export interface TokenScan {
  readonly tokens: readonly CST.Token[];
  readonly refusals: readonly Refusal[];
  /** From here on the text belongs to a quote or bracket that is never closed; reported. */
  readonly unclosedFrom: number;
}

const REFUSED: Readonly<Record<string, Refusal["code"]>> = {
  anchor: "read/anchor",
  alias: "read/alias",
  tag: "read/tag",
  "directive-line": "read/directive",
};

/**
 * Cuts a text into tokens and counts levels and keys on the way, so that nothing too deep or too large is composed.
 * Why: the composer of yaml 2 can end the whole process on a thousand nested brackets.
 * Stops at once, and returns nothing, when a bound is passed. May add `read/too-deep`, `read/too-many-nodes`,
 * `read/unclosed-quote`, `read/stray-quote` and `read/unclosed-bracket`.
 */
export function scanTokens(output: TextReport): TokenScan | undefined {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  const refusals: Refusal[] = [];
  const openings = trackOpenings(output);
  let counted = 0;
  let isScalarNext = false;
  for (const lexeme of new Lexer().lex(output.source.text)) {
    const start = parser.offset;
    // Invariant: the lexer announces every plain text with a mark of its own, and only that mark is not part of the text.
    const type: string = isScalarNext ? "plain" : (CST.tokenType(lexeme) ?? "unknown");
    isScalarNext = type === "scalar";
    const code = REFUSED[type];
    if (code !== undefined) refusals.push({ code, start, text: lexeme });
    if (type !== "space" && type !== "newline" && type !== "comment") counted++;
    openings.take(type, lexeme, start);
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > MAX_DEPTH && countLevels(parser.stack) > MAX_DEPTH) {
      output.report("read/too-deep", start, start + lexeme.length, { most: MAX_DEPTH });
      return undefined;
    }
    if (counted > MAX_NODES * TOKENS_PER_NODE) {
      output.report("read/too-many-nodes", start, start + lexeme.length, { most: MAX_NODES });
      return undefined;
    }
  }
  for (const token of parser.end()) tokens.push(token);
  return { tokens, refusals, unclosedFrom: openings.finish() };
}

function countLevels(stack: readonly CST.Token[]): number {
  return stack.filter(({ type }) => type === "block-map" || type === "block-seq" || type === "flow-collection").length;
}
