import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";

// The layout of a tar header: POSIX.1-2017, pax, "ustar Interchange Format".
const BLOCK = 512;
const NAME = { from: 0, to: 100 };
const SIZE = { from: 124, to: 136 };
const TYPE = { from: 156, to: 157 };
const PREFIX = { from: 345, to: 500 };

/** The files of a packed package with their bytes, by the path inside it; read from the archive itself. */
export function readArchive(archive: string): ReadonlyMap<string, Buffer> {
  const bytes = gunzipSync(readFileSync(archive));
  const files = new Map<string, Buffer>();
  let longPath: string | undefined;
  let at = 0;
  while (at + BLOCK <= bytes.length && bytes[at] !== 0) {
    const header = bytes.subarray(at, at + BLOCK);
    const size = Number.parseInt(readField(header, SIZE), 8);
    const content = bytes.subarray(at + BLOCK, at + BLOCK + size);
    const type = readField(header, TYPE);
    if (type === "x") longPath = /^\d+ path=(.*)$/m.exec(content.toString("utf8"))?.[1];
    else if (type === "0" || type === "") {
      const path =
        longPath ?? [readField(header, PREFIX), readField(header, NAME)].filter((part) => part !== "").join("/");
      files.set(path.replace(/^package\//, ""), content);
      longPath = undefined;
    } else throw new Error(`the package holds an entry that is no file, of type ${type}`);
    at += BLOCK + Math.ceil(size / BLOCK) * BLOCK;
  }
  return files;
}

function readField(header: Buffer, { from, to }: { from: number; to: number }): string {
  return header.subarray(from, to).toString("utf8").split("\0")[0]?.trim() ?? "";
}
