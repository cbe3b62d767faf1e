// Runs what is run of the built package on other versions of Node, fetched from the npm registry; needs the network.
// Usage: run-on-nodes.ts; the fetched programs stay in the folder that TENBAR_NODES names, a temporary one otherwise.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { BUILT_TESTS, NO_EVAL } from "./check-stages.js";
import { completePackage, runNpm } from "./pack-folder.js";

/** The oldest version that the package promises to run on, and the newest of each even line since. */
const VERSIONS = ["20.19.0", "22", "24", "26"];

const scratch = mkdtempSync(join(tmpdir(), "tenbar-on-nodes-"));
try {
  packInto(scratch);
  const failures = VERSIONS.flatMap((version) => runOnNode(version, scratch));
  process.stdout.write(`${VERSIONS.length} versions of Node, ${failures.length} failures\n`);
  process.exitCode = failures.length === 0 ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

/** Builds and packs apart from `dist`, so that a run disturbs nothing. */
function packInto(folder: string): void {
  const source = join(folder, "package");
  runWorkshop("generate.ts", ["--validators"]);
  runWorkshop("build-package.ts", [join(source, "dist")]);
  completePackage(source);
  runWorkshop("pack-package.ts", [folder, source]);
}

function runWorkshop(file: string, args: readonly string[]): void {
  const tsx = resolve("node_modules/tsx/dist/cli.mjs");
  const run = spawnSync(process.execPath, [tsx, join("src/workshop", file), ...args], { stdio: "inherit" });
  if (run.status !== 0) throw new Error(`${file} failed`);
}

/** Runs every test on one version and returns the names of those that fail, or that of the version that is not to be had. */
function runOnNode(version: string, folder: string): readonly string[] {
  const program = fetchNode(version);
  if (program === undefined) return [version];
  const stated = spawnSync(program, ["--version"], { encoding: "utf8" }).stdout.trim();
  if (!stated.startsWith(`v${version}`)) throw new Error(`asked for Node ${version}, got ${stated}`);
  return BUILT_TESTS.flatMap(({ name, home, file }) => {
    const run = spawnSync(program, [NO_EVAL, file], { cwd: join(folder, home), encoding: "utf8" });
    process.stdout.write(`${run.status === 0 ? "ok    " : "FAILED"} ${stated} ${name}\n`);
    if (run.status === 0) return [];
    process.stdout.write(run.stderr);
    return [`${version} ${name}`];
  });
}

/** The path of the program; nothing where the registry has no such version for this machine, which is said. */
function fetchNode(version: string): string | undefined {
  const name = `node-${process.platform === "win32" ? "win" : process.platform}-${process.arch}`;
  const home = resolve(process.env["TENBAR_NODES"] ?? join(tmpdir(), "tenbar-nodes"), version);
  const program = join(home, "node_modules", name, "bin", process.platform === "win32" ? "node.exe" : "node");
  if (existsSync(program)) return program;
  mkdirSync(home, { recursive: true });
  try {
    runNpm(["install", "--prefix", home, "--no-save", "--no-audit", "--no-fund", `${name}@${version}`], home);
  } catch (error) {
    process.stdout.write(`FAILED ${name}@${version} is not to be had: ${String(error)}\n`);
    return undefined;
  }
  return program;
}
