// Makes both builds, and the notice about the packages whose code they carry.
// Usage: build-package.ts [FOLDER [LISTS]], into `dist` where no folder is named; the builds' own lists of what they
// bundled are kept in LISTS, or not at all.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "tsup";
import { BUILDS } from "./build-options.js";
import { listBundledPackages, listInputs, readPackageList, renderNotice } from "./bundled-packages.js";

const GENERATED = "src/read/generated";

await buildPackage(process.argv[2] ?? "dist", process.argv[3]);

async function buildPackage(folder: string, lists: string | undefined): Promise<void> {
  rmSync(folder, { recursive: true, force: true });
  const packages: string[] = [];
  for (const options of BUILDS) {
    await build({ ...options, outDir: folder });
    packages.push(...takeBundledPackages(folder, lists));
  }
  for (const file of readdirSync(GENERATED).filter((name) => name.endsWith("-packages.json"))) {
    packages.push(...readPackageList(join(GENERATED, file)));
  }
  writeFileSync(join(folder, "THIRD-PARTY.txt"), renderNotice(packages));
}

/** The packages whose code a build's own lists say is in its outputs; the lists do not stay in the package. */
function takeBundledPackages(folder: string, lists: string | undefined): readonly string[] {
  const files = readdirSync(folder).filter((name) => name.startsWith("metafile-"));
  if (files.length === 0) throw new Error("the build left no list of its inputs");
  return files.flatMap((name) => {
    const text = readFileSync(join(folder, name), "utf8");
    rmSync(join(folder, name));
    if (lists !== undefined) keepList(lists, text);
    return listBundledPackages(listInputs(text));
  });
}

function keepList(lists: string, text: string): void {
  mkdirSync(lists, { recursive: true });
  writeFileSync(join(lists, `${readdirSync(lists).length + 1}.json`), text);
}
