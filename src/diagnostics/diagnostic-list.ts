import { ENGLISH_DIAGNOSTICS } from "../english/index.js";
import { createLineTable, frameOf, type LineTable, locatePlace, type Place, type SourceText } from "../source/index.js";
import type { DiagnosticCode, DiagnosticWords, ParamsOf, SharedParams, TextsByCode } from "../words/index.js";
import type { Diagnostic, Diagnostics, RelatedPlace } from "./diagnostic.js";
import { DIAGNOSTICS } from "./diagnostic-codes.js";

/** Values that a message speaks of; lists stay lists so that a program can use them. */
type DiagnosticParams = Readonly<Record<string, string | number | readonly string[] | undefined>>;
/** UTF-16 units of one text in a diagnostic; a policy may hold a name as long as itself. */
const LONGEST_TEXT = 2000;

type FindTable = (source: SourceText) => LineTable;

/** An empty list that stages report into; each text is cut into lines once, however many mistakes it has. */
export function createDiagnostics(words: DiagnosticWords = ENGLISH_DIAGNOSTICS): Diagnostics {
  const texts: TextsByCode = words.diagnostics;
  const reported = new Map<string, Diagnostic>();
  const tables = new Map<SourceText, LineTable>();
  let hasErrors = false;
  const findTable: FindTable = (source) => {
    const known = tables.get(source);
    if (known !== undefined) return known;
    const table = createLineTable(source.text);
    tables.set(source, table);
    return table;
  };
  return {
    words,
    get hasErrors() {
      return hasErrors;
    },
    report(code, place, params, related = []) {
      const diagnostic = describeDiagnostic(texts, code, place, params, related, findTable);
      if (diagnostic.severity === "error") hasErrors = true;
      const key = JSON.stringify(diagnostic);
      if (!reported.has(key)) reported.set(key, diagnostic);
    },
    list: () => [...reported.values()].sort(comparePositions),
  };
}

function describeDiagnostic<C extends DiagnosticCode>(
  texts: TextsByCode,
  code: C,
  place: Place,
  params: ParamsOf<C>,
  related: readonly RelatedPlace[],
  findTable: FindTable,
): Diagnostic {
  const text = texts[code];
  const table = findTable(place.source);
  const { found, nearest }: SharedParams = params;
  const wanted = text.wanted?.(params);
  const mend = text.mend?.(params);
  return {
    code,
    severity: DIAGNOSTICS[code].severity,
    message: shortenText(text.message(params)),
    ...locatePlace(place, table),
    frame: frameOf(place, table),
    ...(found === undefined ? {} : { found: shortenText(found) }),
    ...(wanted === undefined ? {} : { wanted: shortenText(wanted) }),
    ...(nearest === undefined ? {} : { nearest: shortenText(nearest) }),
    ...(mend === undefined ? {} : { mend: shortenText(mend) }),
    params: keepDefined(params),
    ...(related.length === 0 ? {} : { related: related.map((one) => describeRelated(one, findTable)) }),
  };
}

function shortenText(text: string): string {
  return text.length <= LONGEST_TEXT ? text : `${text.slice(0, LONGEST_TEXT - 1)}…`;
}

function describeRelated({ message, place }: RelatedPlace, findTable: FindTable) {
  const { file, line, column } = locatePlace(place, findTable(place.source));
  return { message, file, line, column };
}

function keepDefined(params: DiagnosticParams): Diagnostic["params"] {
  const kept: Record<string, string | number | readonly string[]> = {};
  for (const [name, value] of Object.entries(params)) {
    if (value !== undefined) kept[name] = typeof value === "string" ? shortenText(value) : value;
  }
  return kept;
}

function comparePositions(one: Diagnostic, other: Diagnostic): number {
  return (
    compareTexts(one.file, other.file) ||
    one.line - other.line ||
    one.column - other.column ||
    compareTexts(one.code, other.code) ||
    compareTexts(one.message, other.message)
  );
}

function compareTexts(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
