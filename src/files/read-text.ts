import { createReadStream, fstatSync } from "node:fs";
import { stat } from "node:fs/promises";
import { ENGLISH_FILES, type FileErrorCode, type FileWords } from "../words/index.js";

/** A text, or why it cannot be had, in words that name no path. */
export type ReadText = { readonly text: string } | { readonly problem: string };

/** Whether an error is an answer of the file system; anything else is a fault of this program. */
export function isFileError(error: unknown): boolean {
  return typeof error === "object" && error !== null && "code" in error;
}

/** Why a file could not be used, from the error that the file system gave; a rare one is given as it came. */
export function describeFileError(error: unknown, { errors }: FileWords = ENGLISH_FILES): string {
  const code = typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
  if (isKnown(code, errors)) return errors[code];
  return error instanceof Error ? error.message : String(error);
}

function isKnown(code: string, errors: FileWords["errors"]): code is FileErrorCode {
  return Object.hasOwn(errors, code);
}

/** Opens a path as a stream of bytes; `-` is the given standard input. A folder is a problem. */
export async function openBytes(
  path: string,
  standardInput: AsyncIterable<Uint8Array>,
): Promise<AsyncIterable<Uint8Array>> {
  if (path === "-") return standardInput;
  const found = await stat(path);
  if (found.isDirectory()) throw Object.assign(new Error("it is a folder"), { code: "EISDIR" });
  return createReadStream(path);
}

/** Standard input as a stream of bytes. Why: a folder given as standard input reads as an empty file. */
export async function* openStandardInput(
  input: AsyncIterable<Uint8Array>,
  descriptor = 0,
): AsyncGenerator<Uint8Array, void, undefined> {
  if (isFolder(descriptor)) throw Object.assign(new Error("it is a folder"), { code: "EISDIR" });
  yield* input;
}

/** Why: of a descriptor that is closed nothing is known, and reading it tells. */
function isFolder(descriptor: number): boolean {
  try {
    return fstatSync(descriptor).isDirectory();
  } catch {
    return false;
  }
}

/** Reads a whole text of at most `most` bytes, UTF-8, without a byte order mark. */
export async function readText(
  path: string,
  standardInput: AsyncIterable<Uint8Array>,
  most: number,
  words: FileWords = ENGLISH_FILES,
): Promise<ReadText> {
  const parts: Uint8Array[] = [];
  let bytes = 0;
  try {
    for await (const chunk of await openBytes(path, standardInput)) {
      bytes += chunk.byteLength;
      if (bytes > most) return { problem: words.tooLarge(most) };
      parts.push(chunk);
    }
  } catch (error) {
    if (!isFileError(error)) throw error;
    return { problem: describeFileError(error, words) };
  }
  return decodeText(Buffer.concat(parts), words);
}

/** Bytes as UTF-8 text without a byte order mark. */
export function decodeText(bytes: Uint8Array, words: FileWords): ReadText {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { problem: words.notUtf8 };
  }
}

/** What standard input holds where none is given. */
export async function* noInput(): AsyncGenerator<Uint8Array, void, undefined> {
  // Nothing is given.
}
