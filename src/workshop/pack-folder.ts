import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";

/** Packs a package's folder as it would be published and returns the archive, `NAME.tgz` in the folder `into`. */
export function packFolder(source: string, into: string, name: string): string {
  mkdirSync(into, { recursive: true });
  const listing = runNpm(["pack", "--ignore-scripts", "--json", "--offline", "--pack-destination", into], source);
  // Why: npm prints a list of packages, in later versions an object with an entry for each.
  const printed: Record<string, { filename: string }> = JSON.parse(listing);
  const [packed] = Object.values(printed);
  if (packed === undefined) throw new Error("npm pack listed no package");
  const archive = join(into, `${name}.tgz`);
  renameSync(join(into, packed.filename), archive);
  return archive;
}

/** Copies what is published but not built beside a `dist` that was built elsewhere, so that it can be packed there. */
export function completePackage(folder: string): void {
  const manifest: { files: readonly string[] } = JSON.parse(readFileSync("package.json", "utf8"));
  const kept = ["package.json", "README.md", "LICENSE", ...manifest.files].filter((file) => file !== "dist");
  for (const file of kept) cpSync(file, join(folder, file), { recursive: true });
}

/** Runs npm in a folder and returns what it prints; anything but success is thrown with what it said. */
export function runNpm(args: readonly string[], folder: string): string {
  // Why: where npm is a script of the shell, as on Windows, it starts only through one.
  const shell = process.platform === "win32";
  const run = spawnSync("npm", args, { cwd: folder, encoding: "utf8", shell });
  if (run.error !== undefined) throw run.error;
  if (run.status !== 0) throw new Error(`npm ${args.join(" ")} failed: ${run.stderr || run.stdout}`);
  return run.stdout;
}
