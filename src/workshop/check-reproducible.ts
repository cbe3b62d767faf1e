// Builds and packs a second time, elsewhere; the archive must be the same to the byte.
// Usage: check-reproducible.ts ARCHIVE FOLDER
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { completePackage, packFolder } from "./pack-folder.js";
import { readArchive } from "./read-archive.js";

checkReproducible(process.argv[2] ?? "", process.argv[3] ?? "");

function checkReproducible(archive: string, folder: string): void {
  const source = join(folder, "package");
  const tsx = resolve("node_modules/tsx/dist/cli.mjs");
  const built = spawnSync(process.execPath, [tsx, "src/workshop/build-package.ts", join(source, "dist")], {
    stdio: "inherit",
  });
  if (built.status !== 0) throw new Error("the second build failed");
  completePackage(source);
  const again = packFolder(source, folder, "tenbar");
  const digests = [archive, again].map((path) => createHash("sha256").update(readFileSync(path)).digest("hex"));
  process.stdout.write(`${digests.join("\n")}\n`);
  if (digests[0] === digests[1]) return;
  for (const path of listDifferences(archive, again)) process.stdout.write(`not the same twice: ${path}\n`);
  process.exitCode = 1;
}

function listDifferences(first: string, second: string): readonly string[] {
  const [before, after] = [readArchive(first), readArchive(second)];
  const paths = new Set([...before.keys(), ...after.keys()]);
  return [...paths].filter((path) => before.get(path)?.equals(after.get(path) ?? Buffer.alloc(0)) !== true);
}
