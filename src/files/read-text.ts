import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";

/** A text, or why it cannot be had, in words that name no path. */
export type ReadText = { readonly text: string } | { readonly problem: string };

/** Words for what the file system answers; anything else is given as it came. */
const FILE_PROBLEMS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  ENOTDIR: "part of its path is no folder",
  EACCES: "there is no permission to read it",
  EPERM: "there is no permission to read it",
  ELOOP: "its links go round in a circle",
  ENAMETOOLONG: "its name is too long",
  ENOSPC: "the disk is full",
  EROFS: "the disk can only be read",
};

/** Why a file could not be used, from the error that the file system gave. */
export function describeFileError(error: unknown): string {
  const code = typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
  return FILE_PROBLEMS[code] ?? (error instanceof Error ? error.message : String(error));
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
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let text = "";
  let bytes = 0;
  try {
    for await (const chunk of await openBytes(path, standardInput)) {
      bytes += chunk.byteLength;
      if (bytes > most) return { problem: `it has more than ${most} bytes` };
      text += decoder.decode(chunk, { stream: true });
    }
    return { text: text + decoder.decode() };
  } catch (error) {
    if (error instanceof TypeError) return { problem: "it is not UTF-8 text" };
    return { problem: describeFileError(error) };
  }
}
