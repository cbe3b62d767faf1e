import { shortenText, type TextReport } from "./text-report.js";

const CLOSINGS: Readonly<Record<string, string>> = { "{": "}", "[": "]" };

/** Behind a bracket or a quote nothing can begin, so a quote there with nothing but brackets after it closes a text. */
const BEFORE_STRAY = /[}\]"'][ \t]*$/;
const STRAY = /^["'][\s,}\]]*$/;

interface Opening {
  readonly bracket: string;
  readonly closing: string;
  readonly start: number;
}

/** Watches quotes and brackets go by, token for token. */
export interface OpeningTracker {
  take(type: string, lexeme: string, start: number): void;
  /** Reports the first quote, else the first bracket, that is never closed; gives its offset, or infinity. */
  finish(): number;
}

/** May add `read/unclosed-quote`, `read/stray-quote` or `read/unclosed-bracket`, one of them once: whatever follows is a consequence. */
export function trackOpenings({ source, report }: TextReport): OpeningTracker {
  const open: Opening[] = [];
  let quote: number | undefined;
  let unclosed: Opening | undefined;
  return {
    take(type, lexeme, start) {
      if (type.endsWith("-quoted-scalar")) {
        if (!isQuoteClosed(lexeme)) quote ??= start;
        return;
      }
      const closing = type === "flow-map-start" || type === "flow-seq-start" ? CLOSINGS[lexeme] : undefined;
      if (closing !== undefined) open.push({ bracket: lexeme, closing, start });
      else if (type === "flow-error-end") unclosed ??= open.splice(0).at(-1);
      else if (type === "flow-map-end" || type === "flow-seq-end") {
        const last = open.pop();
        if (last !== undefined && last.closing !== lexeme) unclosed ??= last;
      }
    },
    finish() {
      unclosed ??= open.at(-1);
      if (quote !== undefined) {
        const end = findLineEnd(source.text, quote);
        const found = shortenText(source.text.slice(quote, end));
        const sign = source.text.charAt(quote);
        if (STRAY.test(found) && BEFORE_STRAY.test(source.text.slice(findLineStart(source.text, quote), quote))) {
          report("read/stray-quote", quote, quote + 1, { quote: sign, found: sign });
        } else report("read/unclosed-quote", quote, end, { quote: sign, found });
        return quote;
      }
      if (unclosed === undefined) return Number.POSITIVE_INFINITY;
      const { bracket, closing, start } = unclosed;
      report("read/unclosed-bracket", start, start + 1, { bracket, closing, found: bracket });
      return start;
    },
  };
}

/** A quote inside single quotes is written twice, one inside double quotes behind a backslash. */
function isQuoteClosed(lexeme: string): boolean {
  const inner = lexeme.slice(1);
  if (lexeme.startsWith("'")) return inner.endsWith("'") && (/'+$/.exec(inner)?.[0].length ?? 0) % 2 === 1;
  return inner.endsWith('"') && (/\\*(?="$)/.exec(inner)?.[0].length ?? 0) % 2 === 0;
}

function findLineStart(text: string, from: number): number {
  return text.lastIndexOf("\n", from) + 1;
}

function findLineEnd(text: string, from: number): number {
  const end = text.slice(from).search(/\r?\n/);
  return end === -1 ? text.length : from + end;
}
