import { parseJson } from "./parse-json.js";
import { describeFileError, openBytes } from "./read-text.js";

/** One record of an input, or a stretch of it that is none. */
export type ReadRecord =
  | { readonly value: unknown; readonly line: number; readonly isSingle: boolean }
  | { readonly problem: string; readonly line: number | undefined };

const MOST_LINE_CHARACTERS = 8 * 1024 * 1024;
const MOST_DOCUMENT_CHARACTERS = 64 * 1024 * 1024;

/**
 * Reads the records of one input: a JSON object over any number of lines, a JSON array of them, or one object a line (NDJSON),
 * told apart by content. Lines up to 8 MiB; blank ones are skipped. What cannot be read is a problem with its line, and the rest
 * is still read.
 */
export async function* readRecords(
  path: string,
  standardInput: AsyncIterable<Uint8Array>,
): AsyncGenerator<ReadRecord, void, undefined> {
  try {
    yield* readLines(splitLines(await openBytes(path, standardInput)));
  } catch (error) {
    const problem = error instanceof TypeError ? "it is not UTF-8 text" : describeFileError(error);
    yield { problem, line: undefined };
  }
}

/** Decodes UTF-8, strips a byte order mark, and cuts at line feeds. */
async function* splitLines(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string, void, undefined> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let rest = "";
  for await (const chunk of bytes) {
    rest += decoder.decode(chunk, { stream: true });
    let start = 0;
    for (let end = rest.indexOf("\n", start); end !== -1; end = rest.indexOf("\n", start)) {
      yield rest.slice(start, end);
      start = end + 1;
    }
    rest = rest.slice(start);
    if (rest.length > MOST_DOCUMENT_CHARACTERS) throw new Error("a line is longer than 64 MiB");
  }
  rest += decoder.decode();
  if (rest !== "") yield rest;
}

async function* readLines(lines: AsyncGenerator<string, void, undefined>): AsyncGenerator<ReadRecord, void, undefined> {
  let number = 0;
  let document: string[] | undefined;
  let isFirst = true;
  let waiting: ReadRecord | undefined;
  let size = 0;
  for await (const line of lines) {
    number += 1;
    if (document !== undefined) {
      size += line.length;
      if (size > MOST_DOCUMENT_CHARACTERS) {
        yield { problem: "a JSON document may have at most 64 MiB; write one record a line", line: number };
        return;
      }
      document.push(line);
      continue;
    }
    if (line.trim() === "") continue;
    const record = readLine(line, number);
    if (isFirst && ("problem" in record || Array.isArray(record.value))) {
      document = [...Array.from({ length: number - 1 }, () => ""), line];
      continue;
    }
    if (waiting !== undefined) yield { ...waiting, isSingle: false };
    waiting = undefined;
    // Why: a lone object on one line is a single record; that shows only when no other line follows.
    if (isFirst && !("problem" in record)) waiting = record;
    else yield "value" in record ? { ...record, isSingle: false } : record;
    isFirst = false;
  }
  if (waiting !== undefined) yield waiting;
  if (document !== undefined) yield* readDocument(document);
}

function readLine(line: string, number: number): ReadRecord {
  if (line.length > MOST_LINE_CHARACTERS) return { problem: "the line is longer than 8 MiB", line: number };
  const parsed = parseJson(line);
  if ("problem" in parsed) return { problem: parsed.problem, line: number };
  return { value: parsed.value, line: number, isSingle: true };
}

/** One JSON value over several lines; where that fails and a later line is an object, each line is a record of its own. */
function* readDocument(lines: readonly string[]): Generator<ReadRecord, void, undefined> {
  const text = lines.join("\n");
  const parsed = parseJson(text);
  if ("value" in parsed) {
    if (!Array.isArray(parsed.value)) yield { value: parsed.value, line: 1, isSingle: true };
    else for (const value of parsed.value) yield { value, line: 1, isSingle: false };
    return;
  }
  const records = lines.flatMap((line, index) => (line.trim() === "" ? [] : [readLine(line, index + 1)]));
  const isListed = records.some(
    (record) => "value" in record && typeof record.value === "object" && record.value !== null,
  );
  if (isListed && records.length > 1 && lines[0]?.trimStart().startsWith("{")) {
    for (const record of records) yield "value" in record ? { ...record, isSingle: false } : record;
    return;
  }
  const line = parsed.offset === undefined ? undefined : text.slice(0, parsed.offset).split("\n").length;
  yield { problem: parsed.problem, line };
}
