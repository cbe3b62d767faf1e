import { existsSync, readFileSync, realpathSync, statSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { findPackage } from "./find-package.js";
import { decodeText, describeFileError } from "./read-text.js";

type FoundFile = { readonly source: { readonly file: string; readonly text: string } } | { readonly problem: string };

const MOST_BYTES = 1024 * 1024;

/**
 * Finds parents of a policy in the file system: shipped ones by name in this package, others in the folder of the policy or below
 * it, links followed.
 *
 * @param root the folder that no parent may lie outside of
 */
export function createFileFinder(root: string): (reference: string, fromFile: string) => FoundFile {
  return (reference, fromFile) => {
    if (!reference.startsWith("./")) return readShipped(reference.replace(/@[0-9]+$/, ""));
    const path = resolve(dirname(fromFile), reference);
    try {
      const real = realpathSync(path);
      const below = relative(realpathSync(root), real);
      if (below.startsWith(`..${sep}`) || below === ".." || isAbsolute(below)) {
        return { problem: "it lies outside the policy's folder" };
      }
      return readSmall(real, join(dirname(fromFile), reference));
    } catch (error) {
      return { problem: describeFileError(error) };
    }
  };
}

function readShipped(name: string): FoundFile {
  const path = join(findPackage(), "policies", `${name}.yaml`);
  if (!existsSync(path)) return { problem: "no policy of this name is shipped" };
  return readSmall(path, `${name}.yaml`);
}

function readSmall(path: string, file: string): FoundFile {
  const found = statSync(path);
  if (!found.isFile()) return { problem: found.isDirectory() ? "it is a folder" : "it is no ordinary file" };
  if (found.size > MOST_BYTES) return { problem: `it has more than ${MOST_BYTES} bytes` };
  const read = decodeText(readFileSync(path));
  return "problem" in read ? read : { source: { file, text: read.text } };
}
