import { lstat, open, realpath, rename, rm, stat } from "node:fs/promises";
import { dirname } from "node:path";
import { ENGLISH_FILES, type FileWords } from "../words/index.js";
import { describeFileError } from "./read-text.js";

/**
 * Writes a whole file or nothing: a new file beside it takes its place. Gives the problem where it could not.
 *
 * What is no ordinary file is left alone, and so is a link that leads nowhere, and each of the files named to be kept.
 */
export async function writeText(
  path: string,
  text: string,
  kept: readonly string[],
  words: FileWords = ENGLISH_FILES,
): Promise<string | undefined> {
  const standing = await stat(path).catch(() => undefined);
  if (standing !== undefined && !standing.isFile()) {
    return standing.isDirectory() ? words.errors.EISDIR : words.notOrdinary;
  }
  if (standing === undefined && (await isLink(path))) return words.linkToNothing;
  if (standing === undefined && (await stat(dirname(path)).catch(() => undefined)) === undefined) {
    return words.noFolder;
  }
  for (const one of kept) if (await isSameFile(path, one)) return words.wouldReplace(one);
  // Why: a link stays a link, and what it leads to is replaced.
  const target = standing === undefined ? path : await realpath(path);
  return replaceFile(target, text, words);
}

async function isLink(path: string): Promise<boolean> {
  return (await lstat(path).catch(() => undefined))?.isSymbolicLink() === true;
}

async function isSameFile(path: string, other: string): Promise<boolean> {
  const [one, two] = await Promise.all([path, other].map((each) => realpath(each).catch(() => undefined)));
  return one !== undefined && one === two;
}

async function replaceFile(target: string, text: string, words: FileWords): Promise<string | undefined> {
  const draft = `${target}.${crypto.randomUUID()}.draft`;
  try {
    const file = await open(draft, "wx");
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(draft, target);
    return undefined;
  } catch (error) {
    await rm(draft, { force: true }).catch(() => undefined);
    return describeFileError(error, words);
  }
}
