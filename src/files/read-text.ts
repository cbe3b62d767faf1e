import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";

/** A text, or why it cannot be had, in words that name no path. */
export type ReadText = { readonly text: string } | { readonly problem: string };

/** Words for what the file system answers; anything else is given as it came. */
const FILE_PROBLEMS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  ENOTDIR: "part of its path is no folder",
  EACCES: "there is no permission to use it",
  EPERM: "there is no permission to use it",
  ELOOP: "its links go round in a circle",
  ENAMETOOLONG: "its name is too long",
  ENOSPC: "the disk is full",
  EROFS: "the disk can only be read",
};

/** Whether an error is an answer of the file system; anything else is a fault of this program. */
export function isFileError(error: unknown): boolean {
  return typeof error === "object" && error !== null && "code" in error;
}

/** Why a file could not be used, from the error that the file system gave. */
export function describeFileError(error: unknown): string {
  const code = typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
  const known = Object.hasOwn(FILE_PROBLEMS, code) ? FILE_PROBLEMS[code] : undefined;
  return known ?? (error instanceof Error ? error.message : String(error));
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

/** Reads a whole text of at most `most` bytes, UTF-8, without a byte order mark. */
export async function readText(
  path: string,
  standardInput: AsyncIterable<Uint8Array>,
  most: number,
): Promise<ReadText> {
  const parts: Uint8Array[] = [];
  let bytes = 0;
  try {
    for await (const chunk of await openBytes(path, standardInput)) {
      bytes += chunk.byteLength;
      if (bytes > most) return { problem: `it has more than ${most} bytes` };
      parts.push(chunk);
    }
  } catch (error) {
    if (!isFileError(error)) throw error;
    return { problem: describeFileError(error) };
  }
  return decodeText(Buffer.concat(parts));
}

/** Bytes as UTF-8 text without a byte order mark. */
export function decodeText(bytes: Uint8Array): ReadText {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { problem: "it is not UTF-8 text" };
  }
}

/** What standard input holds where none is given. */
export async function* noInput(): AsyncGenerator<Uint8Array, void, undefined> {
  // Nothing is given.
}
