import { ENGLISH_FILES, type FileWords } from "../words/index.js";
import { parseJson } from "./parse-json.js";
import { describeFileError, isFileError, noInput, openBytes } from "./read-text.js";
import { type InputLine, MOST_BYTES, splitLines } from "./split-lines.js";
import { splitList } from "./split-list.js";

/** One record of an input, or a stretch of it that is none; line and column count from 1, columns in UTF-16 units. */
export type ReadRecord =
  | { readonly value: unknown; readonly line: number; readonly isSingle: boolean }
  | { readonly problem: string; readonly line: number | undefined; readonly column: number | undefined };

interface NumberedLine extends InputLine {
  readonly number: number;
}

const MOST_LINE_BYTES = 8 * 1024 * 1024;
/** Why: lines of a document are held one by one, and twenty million short ones take all the memory that a process has. */
const MOST_LINES = 4_000_000;

/**
 * Reads the records of one input: a JSON object over any number of lines, a JSON array of them, or one object a line (NDJSON),
 * told apart by content. Lines up to 8 MiB, a document up to 64 MiB and 4 million lines; blank lines are skipped. What cannot be read is a problem
 * with its line, and the rest is still read: the other lines, and the other members of an array in which one says a key twice.
 *
 * @param path a file, a pipe or a device; `-` is the standard input given
 */
export async function* readRecords(
  path: string,
  standardInput: AsyncIterable<Uint8Array> = noInput(),
  words: FileWords = ENGLISH_FILES,
): AsyncGenerator<ReadRecord, void, undefined> {
  const lines = numberLines(openBytes(path, standardInput), words);
  try {
    yield* readLines(lines, words);
  } catch (error) {
    if (!isFileError(error)) throw error;
    yield { problem: describeFileError(error, words), line: undefined, column: undefined };
  }
}

async function* numberLines(
  bytes: Promise<AsyncIterable<Uint8Array>>,
  words: FileWords,
): AsyncGenerator<NumberedLine, void, undefined> {
  let number = 0;
  for await (const line of splitLines(await bytes, words)) {
    number += 1;
    if (line.problem !== undefined || line.text.trim() !== "") yield { ...line, number };
  }
}

/** Why: one object on the first line is a single record; that shows only when no other line follows. */
async function* readLines(
  lines: AsyncGenerator<NumberedLine, void, undefined>,
  words: FileWords,
): AsyncGenerator<ReadRecord, void, undefined> {
  const first = await lines.next();
  if (first.done === true) return;
  const record = readLine(first.value, words);
  if ("problem" in record || Array.isArray(record.value)) {
    yield* readDocument(first.value, lines, words);
    return;
  }
  const second = await lines.next();
  yield { ...record, isSingle: second.done === true };
  if (second.done === true) return;
  yield readLine(second.value, words);
  for await (const line of lines) yield readLine(line, words);
}

function readLine(line: NumberedLine, words: FileWords): ReadRecord {
  const { text, number, bytes, problem } = line;
  if (problem !== undefined) return { problem, line: number, column: undefined };
  if (bytes > MOST_LINE_BYTES) return { problem: words.records.lineTooLong(8), line: number, column: undefined };
  const parsed = parseJson(text, words.json);
  if ("value" in parsed) return { value: parsed.value, line: number, isSingle: false };
  return { problem: parsed.problem, line: number, column: parsed.offset === undefined ? undefined : parsed.offset + 1 };
}

/** One JSON value over several lines, or lines of which the first ones cannot be read: a whole record on a later line tells. */
async function* readDocument(
  first: NumberedLine,
  lines: AsyncGenerator<NumberedLine, void, undefined>,
  words: FileWords,
): AsyncGenerator<ReadRecord, void, undefined> {
  const held = [first];
  const isList = first.text.trimStart().startsWith("[");
  let bytes = first.bytes;
  for await (const line of lines) {
    if (!isList && isWholeRecord(line, words)) {
      for (const one of [...held, line]) yield readLine(one, words);
      for await (const one of lines) yield readLine(one, words);
      return;
    }
    held.push(line);
    bytes += line.bytes;
    if (bytes > MOST_BYTES || held.length > MOST_LINES) {
      const { documentTooLarge, documentTooLong } = words.records;
      const problem = bytes > MOST_BYTES ? documentTooLarge : documentTooLong;
      yield { problem, line: line.number, column: undefined };
      return;
    }
  }
  yield* parseDocument(held, words);
}

/** Whether a line is by itself what only a record is. Why: a line of one record that is printed over many is never that. */
function isWholeRecord(line: NumberedLine, words: FileWords): boolean {
  if (!line.text.startsWith("{") || !line.text.includes('"tenbar"')) return false;
  const record = readLine(line, words);
  return "value" in record && typeof record.value === "object" && record.value !== null && "tenbar" in record.value;
}

function* parseDocument(lines: readonly NumberedLine[], words: FileWords): Generator<ReadRecord, void, undefined> {
  const faulty = lines.find(({ problem }) => problem !== undefined);
  if (faulty?.problem !== undefined) {
    yield { problem: faulty.problem, line: faulty.number, column: undefined };
    return;
  }
  const text = lines.map((line) => line.text).join("\n");
  const line = lines[0]?.number ?? 1;
  const parsed = parseJson(text, words.json);
  if ("value" in parsed) {
    if (!Array.isArray(parsed.value)) yield { value: parsed.value, line, isSingle: true };
    else for (const value of parsed.value) yield { value, line, isSingle: false };
  } else if (parsed.refused === "repeated-key" && isSoundList(text)) yield* parseMembers(text, lines, words);
  else yield createPlacer(text, lines)(parsed.problem, parsed.offset);
}

function isSoundList(text: string): boolean {
  try {
    return Array.isArray(JSON.parse(text));
  } catch {
    return false;
  }
}

function* parseMembers(
  text: string,
  lines: readonly NumberedLine[],
  words: FileWords,
): Generator<ReadRecord, void, undefined> {
  const place = createPlacer(text, lines);
  for (const member of splitList(text)) {
    const parsed = parseJson(member.text, words.json);
    if ("value" in parsed) yield { value: parsed.value, line: lines[0]?.number ?? 1, isSingle: false };
    else yield place(parsed.problem, member.offset + (parsed.offset ?? 0));
  }
}

/**
 * Puts problems at their lines and columns; offsets never fall from one call to the next, so the text is gone over once.
 * Why: blank lines are left out of the text, so its lines are looked up and not counted.
 */
function createPlacer(text: string, lines: readonly NumberedLine[]) {
  let index = 0;
  let start = 0;
  return (problem: string, offset: number | undefined): ReadRecord => {
    if (offset === undefined) return { problem, line: lines[0]?.number, column: undefined };
    for (let feed = text.indexOf("\n", start); feed !== -1 && feed < offset; feed = text.indexOf("\n", start)) {
      index += 1;
      start = feed + 1;
    }
    return { problem, line: lines[index]?.number, column: offset - start + 1 };
  };
}
