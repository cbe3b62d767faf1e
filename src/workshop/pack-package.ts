// Packs the package as it would be published and unpacks it into homes that hold nothing else but what they name.
// Usage: pack-package.ts FOLDER [SOURCE], the folder that holds the built package, the project where none is named
import { cpSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { packFolder } from "./pack-folder.js";
import { readArchive } from "./read-archive.js";

/** The homes, and the dependencies that are installed beside the package in each. */
const HOMES = { bare: [], "with-yaml": ["yaml"], complete: ["yaml", "zod"] } as const;

packPackage(process.argv[2] ?? "", process.argv[3] ?? ".");

/** Makes `tenbar.tgz` in the folder, and the homes. */
function packPackage(folder: string, source: string): void {
  if (folder === "") throw new Error("no folder to pack into");
  const files = readArchive(packFolder(source, folder, "tenbar"));
  for (const [name, dependencies] of Object.entries(HOMES)) furnishHome(join(folder, name), files, dependencies);
}

function furnishHome(home: string, files: ReadonlyMap<string, Buffer>, dependencies: readonly string[]): void {
  const modules = join(home, "node_modules");
  for (const [path, bytes] of files) {
    mkdirSync(dirname(join(modules, "tenbar", path)), { recursive: true });
    writeFileSync(join(modules, "tenbar", path), bytes);
  }
  for (const dependency of dependencies) symlinkSync(resolve("node_modules", dependency), join(modules, dependency));
  const uses = readdirSync("tests/package/built", { withFileTypes: true }).filter((entry) => entry.isFile());
  for (const { name } of uses) cpSync(join("tests/package/built", name), join(home, name));
}
