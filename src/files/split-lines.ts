import type { FileWords } from "../words/index.js";

/** One line of an input without its line feed, or why its text cannot be had. */
export interface InputLine {
  readonly text: string;
  readonly bytes: number;
  readonly problem?: string;
}

const LINE_FEED = 0x0a;
/** Bytes of a line that are kept; a JSON document on one line may be as long. */
export const MOST_BYTES = 64 * 1024 * 1024;
/** Bytes of an overlong line that are passed over in search of its end, so that an endless input ends. */
const MOST_SKIPPED_BYTES = 1024 * 1024 * 1024;

/**
 * Cuts bytes at line feeds and decodes each line as UTF-8 by itself, so that one line that is none spoils no other.
 *
 * A byte order mark is left out. At most 64 MiB of a line are held; of a longer one nothing is kept.
 */
export async function* splitLines(
  bytes: AsyncIterable<Uint8Array>,
  words: FileWords,
): AsyncGenerator<InputLine, void, undefined> {
  let parts: Uint8Array[] = [];
  let size = 0;
  const add = (part: Uint8Array): void => {
    size += part.byteLength;
    if (size > MOST_BYTES) parts = [];
    else parts.push(part);
  };
  const finish = (): InputLine => {
    const isTooLong = size > MOST_BYTES;
    const line = isTooLong ? refuseLine(size, words.records.lineTooLong(64)) : decodeLine(parts, size, words);
    parts = [];
    size = 0;
    return line;
  };
  for await (const chunk of bytes) {
    let start = 0;
    for (let end = chunk.indexOf(LINE_FEED); end !== -1; end = chunk.indexOf(LINE_FEED, start)) {
      add(chunk.subarray(start, end));
      yield finish();
      start = end + 1;
    }
    add(chunk.subarray(start));
    if (size > MOST_SKIPPED_BYTES) {
      yield refuseLine(size, words.records.endlessLine);
      return;
    }
  }
  if (size > 0) yield finish();
}

function decodeLine(parts: readonly Uint8Array[], bytes: number, { notUtf8 }: FileWords): InputLine {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(Buffer.concat(parts)), bytes };
  } catch {
    return refuseLine(bytes, notUtf8);
  }
}

function refuseLine(bytes: number, problem: string): InputLine {
  return { text: "", bytes, problem };
}
