import { headPackage, listBundledPackages } from "./bundled-packages.js";

/** Files by their path inside the package. */
type Files = ReadonlyMap<string, Buffer>;

const CODE_FILE = /^dist\/.*\.(js|cjs|d\.ts|d\.cts)$/;
/** Where each file of a bundle begins, esbuild names it in a comment. */
const ORIGIN_COMMENT = /^ *\/\/ ((?:[^\s/]+\/)*node_modules\/\S+)$/gm;
/** A folder in which machines keep the work of their users. */
const USER_FOLDER = /(?<![\w.~-])(?:\/(?:home|Users|root|tmp|private|var\/folders)\/[\w.-]+|[A-Za-z]:\\+Users\\+)/;

/**
 * What is wrong with the files of a package by the list of what it must hold. A line of the list is a path; `<hash>` in it
 * stands for letters, digits, `-` and `_`, and `*` for anything but `/`. Every line must match some file, and every file
 * some line; empty lines and those that begin with `#` say nothing.
 */
export function compareWithList(paths: readonly string[], list: string): readonly string[] {
  const lines = list.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  const patterns = lines.map((line) => ({ line, pattern: makePattern(line) }));
  const missing = patterns.filter(({ pattern }) => !paths.some((path) => pattern.test(path)));
  const surplus = paths.filter((path) => !patterns.some(({ pattern }) => pattern.test(path)));
  return [
    ...missing.map(({ line }) => `the package lacks ${line}`),
    ...surplus.map((path) => `the package should not hold ${path}`),
  ];
}

function makePattern(line: string): RegExp {
  const literal = line.replace(/[.+?^$()[\]{}|\\]/g, "\\$&");
  return new RegExp(`^${literal.replaceAll("<hash>", "[\\w-]{8,}").replaceAll("*", "[^/]+")}$`);
}

/** The parts of a build, named by a hash, that no other file of the build mentions: left over from another build. */
export function findStrayParts(files: Files): readonly string[] {
  const code = [...files].filter(([path]) => CODE_FILE.test(path));
  const parts = code.filter(([path]) => /-[\w-]{8,}\.(js|cjs|d\.ts|d\.cts)$/.test(path)).map(([path]) => path);
  const isUsed = (part: string) => {
    const name = part.replace("dist/", "").replace(/\.d\.(c?)ts$/, ".$1js");
    return code.some(([path, bytes]) => path !== part && bytes.includes(`./${name}`));
  };
  return parts.filter((part) => !isUsed(part)).map((part) => `nothing in the package uses ${part}`);
}

/** The places that name a folder of the machine the package was made on; `folders` are those it is known to have. */
export function findMachinePaths(files: Files, folders: readonly string[]): readonly string[] {
  // Why: a folder of one letter or two, or the root, is found in any text.
  const known = folders
    .filter((folder) => folder.length > 3)
    .map((folder) => new RegExp(`(?<![\\w.])${escapeText(folder)}`));
  return [...files].flatMap(([path, bytes]) => {
    const found = [USER_FOLDER, ...known].flatMap((pattern) => pattern.exec(bytes.toString("utf8"))?.[0] ?? []);
    return [...new Set(found)].map((text) => `${path} names a folder of the machine it was made on: ${text}`);
  });
}

function escapeText(text: string): string {
  return text.replace(/[.*+?^$()[\]{}|\\]/g, "\\$&");
}

/** What the notice says too little or too much of; `folders` are the packages of which there is code in the package. */
export function compareNotice(notice: string, folders: readonly string[]): readonly string[] {
  const heads = new Set([...notice.matchAll(/^-{80}\n\n(.+)\n\n(?=\S)/gm)].map((match) => match[1] ?? ""));
  const due = new Set(folders.map(headPackage));
  return [
    ...[...due].filter((head) => !heads.has(head)).map((head) => `no licence text of what is bundled: ${head}`),
    ...[...heads].filter((head) => !due.has(head)).map((head) => `a licence text of what is not bundled: ${head}`),
  ];
}

/** The packages whose code the built files say they carry, by the comments of the bundler. */
export function listPackagesInComments(files: Files): readonly string[] {
  const origins = [...files]
    .filter(([path]) => CODE_FILE.test(path))
    .flatMap(([, bytes]) => [...bytes.toString("utf8").matchAll(ORIGIN_COMMENT)].map((match) => match[1] ?? ""));
  return listBundledPackages(origins);
}
