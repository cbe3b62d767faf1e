import {
  DIAGNOSTICS,
  type DiagnosticCode,
  type Diagnostics,
  type ParamsOf,
  type RelatedPlace,
} from "../diagnostics/index.js";
import type { SourceText } from "../source/index.js";
import type { DiagnosticWords, PolicyTextWords } from "../words/index.js";
import { MAX_LISTED } from "./read-limits.js";

const LONGEST_SHOWN = 80;

/** Reports into the diagnostics of one run about stretches of one text. */
export interface TextReport {
  readonly source: SourceText;
  readonly words: PolicyTextWords;
  readonly related: DiagnosticWords["related"];
  /** Whether an error, not only warnings, was reported here. */
  readonly hasErrors: boolean;
  report<C extends DiagnosticCode>(
    code: C,
    start: number,
    end: number,
    params: ParamsOf<C>,
    related?: readonly RelatedPlace[],
  ): void;
  /** Says how many mistakes were left out because there were too many. May add `read/more-mistakes`. */
  finish(): void;
}

export function createTextReport(source: SourceText, diagnostics: Diagnostics): TextReport {
  let hasErrors = false;
  let reported = 0;
  const { policyText: words, related } = diagnostics.words;
  return {
    source,
    words,
    related,
    get hasErrors() {
      return hasErrors;
    },
    report(code, start, end, params, places) {
      if (DIAGNOSTICS[code].severity === "error") hasErrors = true;
      reported++;
      if (reported <= MAX_LISTED) diagnostics.report(code, { source, span: { start, end } }, params, places);
    },
    finish() {
      const count = reported - MAX_LISTED;
      if (count > 0) diagnostics.report("read/more-mistakes", { source, span: { start: 0, end: 0 } }, { count });
    },
  };
}

/** The author's words as a message shows them: on one line, at most 80 characters. */
export function shortenText(text: string): string {
  const line = text
    .slice(0, LONGEST_SHOWN * 4)
    .replaceAll(/\s+/g, " ")
    .trim();
  return line.length <= LONGEST_SHOWN ? line : `${line.slice(0, LONGEST_SHOWN - 1)}…`;
}
