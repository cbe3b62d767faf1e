import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { ENGLISH_FILES, type FileWords } from "../words/index.js";
import { findPackage } from "./find-package.js";
import { decodeText, describeFileError } from "./read-text.js";

/** The text of a parent; or why it cannot be had, and the names by which parents can be had here. */
type FoundFile =
  | { readonly source: { readonly file: string; readonly text: string } }
  | { readonly problem: string; readonly known?: readonly string[] };

const MOST_BYTES = 1024 * 1024;
const POLICY_FILE = /\.(?:yaml|yml|json)$/;

/**
 * Finds parents of a policy in the file system: shipped ones by name in this package, others in the folder of the policy or below
 * it, links followed.
 *
 * @param root the folder that no parent may lie outside of
 */
export function createFileFinder(
  root: string,
  words: FileWords = ENGLISH_FILES,
): (reference: string, fromFile: string) => FoundFile {
  return (reference, fromFile) => {
    if (!reference.startsWith("./")) return readShipped(reference.replace(/@[0-9]+$/, ""), words);
    const path = resolve(dirname(fromFile), reference);
    try {
      const real = realpathSync(path);
      const below = relative(realpathSync(root), real);
      if (below.startsWith(`..${sep}`) || below === ".." || isAbsolute(below)) return { problem: words.outsideFolder };
      return readSmall(real, join(dirname(fromFile), reference), words);
    } catch (error) {
      return { problem: describeFileError(error, words), known: listBeside(path, reference) };
    }
  };
}

/** The policies in the folder that a reference names, as a reference names them; none where there is no such folder. */
function listBeside(path: string, reference: string): readonly string[] {
  try {
    const files = readdirSync(dirname(path)).filter((file) => POLICY_FILE.test(file));
    return files.sort().map((file) => `${reference.slice(0, reference.lastIndexOf("/"))}/${file}`);
  } catch {
    return [];
  }
}

function readShipped(name: string, words: FileWords): FoundFile {
  const folder = join(findPackage(), "policies");
  const path = join(folder, `${name}.yaml`);
  if (!existsSync(path)) return { problem: words.notShipped, known: listShipped(folder) };
  return readSmall(path, `${name}.yaml`, words);
}

function listShipped(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".yaml"))
    .map((file) => file.replaceAll("\\", "/").slice(0, -".yaml".length))
    .sort();
}

function readSmall(path: string, file: string, words: FileWords): FoundFile {
  const found = statSync(path);
  if (!found.isFile()) return { problem: found.isDirectory() ? words.errors.EISDIR : words.notOrdinary };
  if (found.size > MOST_BYTES) return { problem: words.tooLarge(MOST_BYTES) };
  const read = decodeText(readFileSync(path), words);
  return "problem" in read ? read : { source: { file, text: read.text } };
}
