// Installs the packed package into an empty project by npm, without network and without a cache, and runs its program.
// Usage: install-package.ts ARCHIVE PROJECT, a folder that is made
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { packFolder, runNpm } from "./pack-folder.js";

const SAMPLES = "tests/package/built";
const PROGRAM = "tenbar";
const DEPENDENCIES = ["yaml", "zod"];
const EMPTY_PROJECT = { name: "lowmere-station", version: "1.0.0", private: true };

installPackage(process.argv[2] ?? "", resolve(process.argv[3] ?? ""));

function installPackage(archive: string, project: string): void {
  mkdirSync(project);
  writeFileSync(join(project, "package.json"), JSON.stringify(EMPTY_PROJECT));
  cpSync(archive, join(project, "tenbar.tgz"));
  for (const name of DEPENDENCIES) packFolder(resolve("node_modules", name), project, name);
  const archives = ["./tenbar.tgz", ...DEPENDENCIES.map((name) => `./${name}.tgz`)];
  // Invariant: the cache is empty and npm asks no registry, so all that is installed lies in the project's folder.
  const cache = ["--cache", join(project, "npm-cache")];
  runNpm(["install", "--offline", "--no-audit", "--no-fund", ...cache, ...archives], project);
  expectEqual("what npm installed", listInstalled(project), ["tenbar", ...DEPENDENCIES]);
  runProgram(project);
  for (const file of readdirSync(join(SAMPLES, "consumers")))
    cpSync(join(SAMPLES, "consumers", file), join(project, file));
}

function listInstalled(project: string): readonly string[] {
  return readdirSync(join(project, "node_modules")).filter((name) => !name.startsWith("."));
}

/** Runs the program by its name; it leaves `plan.json`, the plan of the sample policy. */
function runProgram(project: string): void {
  cpSync(join(SAMPLES, "case.json"), join(project, "case.json"));
  const { policy, records }: { policy: string; records: unknown[] } = JSON.parse(
    readFileSync(join(project, "case.json"), "utf8"),
  );
  writeFileSync(join(project, "case.yaml"), policy);
  const { version }: { version: string } = JSON.parse(readFileSync("package.json", "utf8"));
  expectEqual("the version", runTenbar(project, ["--version"]).stdout.trim(), version);
  const answers = records.map((record, index) => {
    writeFileSync(join(project, `record-${index}.json`), JSON.stringify(record));
    const { status, stdout } = runTenbar(project, [
      "evaluate",
      "case.yaml",
      `record-${index}.json`,
      "--format",
      "json",
    ]);
    const { verdict }: { verdict: unknown } = JSON.parse(stdout);
    return { status, verdict };
  });
  expectEqual("exit codes and verdicts", answers, [
    { status: 0, verdict: "meets" },
    { status: 1, verdict: "withdraw" },
  ]);
  expectEqual("the exit code of compile", runTenbar(project, ["compile", "case.yaml", "--out", "plan.json"]).status, 0);
}

function runTenbar(project: string, args: readonly string[]): { status: number | null; stdout: string } {
  const shell = process.platform === "win32";
  return spawnSync("npx", ["--no-install", PROGRAM, ...args], { cwd: project, encoding: "utf8", shell });
}

function expectEqual(what: string, found: unknown, expected: unknown): void {
  const [is, should] = [JSON.stringify(found), JSON.stringify(expected)];
  process.stdout.write(`${what}: ${is}\n`);
  if (is !== should) throw new Error(`${what}: ${is}, not ${should}`);
}
