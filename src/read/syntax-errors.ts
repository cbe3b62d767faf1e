import type { YAMLError } from "yaml";
import { findKeyWithoutSpace } from "./key-without-space.js";
import { lineStartOf, readContentLine } from "./text-lines.js";
import { shortenText, type TextReport } from "./text-report.js";

const LIST_MARKS = /^[ \t]*(?:-[ \t]+)*$/;

/** Errors that say nothing reliable about the lines after them. */
const LAST_RELIABLE: ReadonlySet<string> = new Set(["UNEXPECTED_TOKEN", "IMPOSSIBLE", "RESOURCE_EXHAUSTION"]);

/**
 * Puts the YAML library's errors into the author's terms: the first of each entry at the left margin, since one slip
 * brings several errors with it. May add `read/tab-indent`, `read/bad-indentation`, `read/no-space-behind-colon`,
 * `read/no-colon`, `read/colon-in-text`, `read/reserved-start`, `read/bad-escape`, `read/text-behind-quote` and
 * `read/bad-yaml`. Tells whether there was any.
 */
export function reportSyntaxErrors(
  errors: readonly YAMLError[],
  isExplained: (offset: number) => boolean,
  output: TextReport,
): boolean {
  const sorted = errors.filter(({ pos }) => !isExplained(pos[0])).sort(compareErrors);
  for (const error of chooseErrors(sorted, output.source.text)) reportError(error, output);
  return sorted.length > 0;
}

/** One error of each entry at the left margin. */
function chooseErrors(sorted: readonly YAMLError[], text: string): readonly YAMLError[] {
  const chosen: YAMLError[] = [];
  let blockEnd = -1;
  for (const error of sorted) {
    const last = chosen.at(-1);
    if (error.pos[0] >= blockEnd) {
      if (last !== undefined && LAST_RELIABLE.has(last.code)) break;
      chosen.push(error);
      blockEnd = findBlockEnd(text, error.pos[1]);
    } else if (error.code === "TAB_AS_INDENT" && last?.code !== "TAB_AS_INDENT") {
      // Why: a tab makes the lines around it look wrong too.
      chosen[chosen.length - 1] = error;
    }
  }
  return chosen;
}

/** Why: of two errors at one place the one about several lines knows more. */
function compareErrors(one: YAMLError, other: YAMLError): number {
  return one.pos[0] - other.pos[0] || rankError(one) - rankError(other);
}

function rankError({ code }: YAMLError): number {
  return code === "MULTILINE_IMPLICIT_KEY" ? 0 : 1;
}

/** The start of the next line that begins at the left margin with something other than a comment or a bracket. */
function findBlockEnd(text: string, from: number): number {
  const next = /\n(?=[^\s#\]}-])/g;
  next.lastIndex = from;
  const found = next.exec(text);
  return found === null ? text.length + 1 : found.index + 1;
}

function reportError(error: YAMLError, output: TextReport): void {
  const { text } = output.source;
  const [start, end] = error.pos;
  const line = readContentLine(text, start);
  const tab = findTab(text, lineStartOf(text, start), line.start);
  if (tab !== undefined) {
    output.report("read/tab-indent", tab, line.start, { found: output.words.found.tab });
    return;
  }
  switch (error.code) {
    case "TAB_AS_INDENT":
      output.report("read/tab-indent", start, Math.max(line.start, start + 1), { found: output.words.found.tab });
      break;
    case "BAD_INDENT":
      output.report("read/bad-indentation", line.start, line.end, { found: shortenText(line.text) });
      break;
    case "BAD_SCALAR_START":
      output.report("read/reserved-start", start, start + 1, {
        character: text.charAt(start),
        found: shortenText(text.slice(start, line.end)),
      });
      break;
    case "BAD_DQ_ESCAPE":
      output.report("read/bad-escape", start, start + 2, { found: text.slice(start, start + 2) });
      break;
    case "MULTILINE_IMPLICIT_KEY":
    case "MISSING_CHAR":
    case "BLOCK_AS_IMPLICIT_KEY":
      reportKeyError(error, output);
      break;
    default: {
      const found = shortenText(text.slice(start, Math.max(line.end, end)));
      const isBehindQuote = /["'][ \t]*$/.test(text.slice(lineStartOf(text, start), start));
      const code = isBehindQuote ? "read/text-behind-quote" : "read/bad-yaml";
      output.report(code, start, Math.max(end, start + 1), { found });
    }
  }
}

/** The first tab of an indentation. Why: YAML takes a tab behind blanks for a part of the text, and complains of what follows. */
function findTab(text: string, from: number, to: number): number | undefined {
  const tab = text.slice(from, to).indexOf("\t");
  return tab === -1 ? undefined : from + tab;
}

/** A key that YAML could not make out: a colon without a space, none at all, one too many, or a line indented wrongly. */
function reportKeyError(error: YAMLError, output: TextReport): void {
  const { text } = output.source;
  const [start, end] = error.pos;
  const line = readContentLine(text, start);
  const isAtLineStart = LIST_MARKS.test(text.slice(lineStartOf(text, start), start));
  const key = findKeyWithoutSpace(text.slice(start, line.end));
  if (isAtLineStart && key !== undefined) {
    output.report("read/no-space-behind-colon", start, line.end, { key, found: shortenText(line.text) });
  } else if (isAtLineStart && error.code !== "BLOCK_AS_IMPLICIT_KEY") {
    output.report("read/no-colon", start, line.end, { found: shortenText(text.slice(start, line.end)) });
  } else if (error.code === "MULTILINE_IMPLICIT_KEY") {
    const last = readContentLine(text, Math.max(end - 1, start));
    output.report("read/bad-indentation", last.start, last.end, { found: shortenText(last.text) });
  } else if (error.code === "BLOCK_AS_IMPLICIT_KEY") {
    output.report("read/colon-in-text", start, line.end, { found: shortenText(text.slice(start, line.end)) });
  } else {
    output.report("read/bad-yaml", start, Math.max(end, start + 1), {
      found: shortenText(text.slice(start, line.end)),
    });
  }
}
