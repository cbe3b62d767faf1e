// Holds the packed package against the list of its files and against what the builds say they bundled.
// Usage: check-contents.ts ARCHIVE LISTS, the folder in which the builds left their lists of what they bundled
import { readdirSync, readFileSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { listBundledPackages, listInputs, readPackageList } from "./bundled-packages.js";
import {
  compareNotice,
  compareWithList,
  findMachinePaths,
  findStrayParts,
  listPackagesInComments,
} from "./package-contents.js";
import { readArchive } from "./read-archive.js";

const FILES = "tests/package/tarball-files.txt";
const NOTICE = "dist/THIRD-PARTY.txt";
const GENERATED = "src/read/generated";

checkContents(process.argv[2] ?? "", process.argv[3] ?? "");

function checkContents(archive: string, lists: string): void {
  const files = readArchive(archive);
  const bundled = listPackages(lists);
  const unlisted = listPackagesInComments(files).filter((folder) => !bundled.includes(folder));
  const problems = [
    ...compareWithList([...files.keys()], readFileSync(FILES, "utf8")),
    ...findStrayParts(files),
    ...findMachinePaths(files, [resolve("."), homedir(), tmpdir()]),
    ...compareNotice(files.get(NOTICE)?.toString("utf8") ?? "", bundled),
    ...unlisted.map((folder) => `bundled, but in no list of a build: ${folder}`),
    ...(files.get("LICENSE")?.equals(readFileSync("LICENSE")) === true ? [] : ["the package lacks its own licence"]),
  ];
  for (const problem of problems) process.stdout.write(`${problem}\n`);
  process.stdout.write(`${files.size} files, code of ${bundled.length} packages\n`);
  process.exitCode = problems.length === 0 ? 0 : 1;
}

function listPackages(lists: string): readonly string[] {
  const names = readdirSync(lists);
  if (names.length === 0) throw new Error(`the builds left no list in ${lists}`);
  const built = names.flatMap((name) => listBundledPackages(listInputs(readFileSync(join(lists, name), "utf8"))));
  const generated = readdirSync(GENERATED).filter((name) => name.endsWith("-packages.json"));
  return [...new Set([...built, ...generated.flatMap((name) => readPackageList(join(GENERATED, name)))])];
}
