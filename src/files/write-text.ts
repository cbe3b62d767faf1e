import { rename, rm, writeFile } from "node:fs/promises";
import { describeFileError } from "./read-text.js";

/** Writes a whole file or nothing: a new file beside it takes its place. Gives the problem where it could not. */
export async function writeText(path: string, text: string): Promise<string | undefined> {
  const draft = `${path}.draft`;
  try {
    await writeFile(draft, text);
    await rename(draft, path);
    return undefined;
  } catch (error) {
    await rm(draft, { force: true }).catch(() => undefined);
    return describeFileError(error);
  }
}
