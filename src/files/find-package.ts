import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder of this package: the nearest one above this module that holds the shipped policies. */
export function findPackage(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "policies", "common-practice")) && dirname(folder) !== folder)
    folder = dirname(folder);
  return folder;
}
