// Makes dist: both builds, and the notice about the packages whose code they carry.
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "tsup";
import { BUILDS } from "./build-options.js";
import { listBundledPackages, readPackageList, renderNotice } from "./bundled-packages.js";

const GENERATED = "src/read/generated";

await buildPackage();

async function buildPackage(): Promise<void> {
  rmSync("dist", { recursive: true, force: true });
  const packages: string[] = [];
  for (const options of BUILDS) {
    await build(options);
    packages.push(...takeBundledPackages("dist"));
  }
  for (const file of readdirSync(GENERATED).filter((name) => name.endsWith("-packages.json"))) {
    packages.push(...readPackageList(join(GENERATED, file)));
  }
  writeFileSync("dist/THIRD-PARTY.txt", renderNotice(packages));
}

/** The packages that a build's own list of inputs names; the list itself does not stay in the package. */
function takeBundledPackages(folder: string): readonly string[] {
  const files = readdirSync(folder).filter((name) => name.startsWith("metafile-"));
  if (files.length === 0) throw new Error("the build left no list of its inputs");
  return files.flatMap((name) => {
    const metafile: { inputs: Record<string, unknown> } = JSON.parse(readFileSync(join(folder, name), "utf8"));
    rmSync(join(folder, name));
    return listBundledPackages(Object.keys(metafile.inputs));
  });
}
