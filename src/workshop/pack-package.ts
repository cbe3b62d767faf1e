// Packs the package as it would be published and unpacks it into homes that hold nothing else but what they name.
// Usage: pack-package.ts FOLDER
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, renameSync, symlinkSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

/** The homes, and the dependencies that are installed beside the package in each. */
const HOMES = { bare: [], "with-yaml": ["yaml"], complete: ["yaml", "zod"] } as const;
const REQUIRED_FILES = [
  "package.json",
  "README.md",
  "LICENSE",
  "CHANGELOG.md",
  "dist/THIRD-PARTY.txt",
  "dist/index.js",
  "dist/index.cjs",
  "dist/plan.js",
  "dist/node.js",
  "dist/cli.js",
  "schemas/policy.schema.json",
];
/** Every file in the package lies here, so that nothing gets in by accident. */
const ALLOWED_FILES = /^(dist|schemas|policies|docs)\/|^(package\.json|README\.md|LICENSE|CHANGELOG\.md)$/;

packPackage(process.argv[2] ?? "");

function packPackage(folder: string): void {
  if (folder === "") throw new Error("no folder to pack into");
  const files = runPack(folder);
  const missing = REQUIRED_FILES.filter((file) => !files.includes(file));
  const surplus = files.filter((file) => !ALLOWED_FILES.test(file) || file.includes("metafile"));
  for (const file of missing) process.stdout.write(`the package lacks ${file}\n`);
  for (const file of surplus) process.stdout.write(`the package should not hold ${file}\n`);
  for (const [name, dependencies] of Object.entries(HOMES)) furnishHome(join(folder, name), files, dependencies);
  process.exitCode = missing.length + surplus.length === 0 ? 0 : 1;
}

/** Makes `tenbar.tgz` in the folder and returns the paths inside it. */
function runPack(folder: string): readonly string[] {
  const args = ["pack", "--ignore-scripts", "--json", "--pack-destination", folder];
  const run = spawnSync("npm", args, { encoding: "utf8" });
  if (run.status !== 0) throw new Error(`npm pack failed: ${run.stderr}`);
  // Why: npm prints a list of packages, in later versions an object with an entry for each.
  const printed: Record<string, { filename: string; files: { path: string }[] }> = JSON.parse(run.stdout);
  const [listing] = Object.values(printed);
  if (listing === undefined) throw new Error("npm pack listed no package");
  renameSync(join(folder, listing.filename), join(folder, "tenbar.tgz"));
  return listing.files.map(({ path }) => path);
}

function furnishHome(home: string, files: readonly string[], dependencies: readonly string[]): void {
  const modules = join(home, "node_modules");
  for (const file of files) {
    mkdirSync(dirname(join(modules, "tenbar", file)), { recursive: true });
    cpSync(file, join(modules, "tenbar", file));
  }
  for (const dependency of dependencies) symlinkSync(resolve("node_modules", dependency), join(modules, dependency));
  for (const file of readdirSync("tests/package/built")) cpSync(join("tests/package/built", file), join(home, file));
}
