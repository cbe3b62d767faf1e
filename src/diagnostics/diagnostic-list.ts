import { ENGLISH_DIAGNOSTICS } from "../english/index.js";
import { createLineTable, frameOf, type LineTable, locatePlace, type Place, type SourceText } from "../source/index.js";
import type { DiagnosticCode, DiagnosticWords, ParamsOf, SharedParams, TextsByCode } from "../words/index.js";
import type { Diagnostic, Diagnostics, RelatedPlace } from "./diagnostic.js";
import { DIAGNOSTICS } from "./diagnostic-codes.js";

/** Values that a message speaks of; lists stay lists so that a program can use them. */
type DiagnosticParams = Readonly<Record<string, string | number | readonly string[] | undefined>>;
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
    message: text.message(params),
    ...locatePlace(place, table),
    frame: frameOf(place, table),
    ...(found === undefined ? {} : { found }),
    ...(wanted === undefined ? {} : { wanted }),
    ...(nearest === undefined ? {} : { nearest }),
    ...(mend === undefined ? {} : { mend }),
    params: keepDefined(params),
    ...(related.length === 0 ? {} : { related: related.map((one) => describeRelated(one, findTable)) }),
  };
}

function describeRelated({ message, place }: RelatedPlace, findTable: FindTable) {
  const { file, line, column } = locatePlace(place, findTable(place.source));
  return { message, file, line, column };
}

function keepDefined(params: DiagnosticParams): Diagnostic["params"] {
  const kept: Record<string, string | number | readonly string[]> = {};
  for (const [name, value] of Object.entries(params)) if (value !== undefined) kept[name] = value;
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
