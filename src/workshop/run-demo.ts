// Shows the program at work on the records of Lowmere; builds it first where the build is older than its source.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const PROGRAM = "dist/cli.js";
const POLICY = "policies/common-practice/open-circuit.yaml";
const RECORDS = "examples/records";
const EVALUATE = [PROGRAM, "evaluate", POLICY] as const;

process.exitCode = runDemo();

function runDemo(): number {
  if (!isBuilt() && runCommand("npm", ["run", "--silent", "build"]) !== 0) return 1;
  const records = readdirSync(RECORDS).filter((file) => file.endsWith(".json"));
  const paths = records.sort().map((file) => join(RECORDS, file));
  // Why: a shell puts the names in for the pattern, which is all that anyone would type.
  const shown = [join(RECORDS, "*.json"), "--fail-on", "never"];
  return runCommand(process.execPath, [...EVALUATE, ...paths, "--fail-on", "never"], ["node", ...EVALUATE, ...shown]);
}

function isBuilt(): boolean {
  if (!existsSync(PROGRAM)) return false;
  const built = statSync(PROGRAM).mtimeMs;
  const sources = readdirSync("src", { recursive: true, encoding: "utf8" }).map((file) => join("src", file));
  return sources.every((file) => statSync(file).mtimeMs <= built);
}

/** Runs a program and prints its line before, as one would type it. */
function runCommand(program: string, args: readonly string[], shown = [program, ...args]): number {
  process.stderr.write(`$ ${shown.join(" ")}\n`);
  return spawnSync(program, args, { stdio: "inherit" }).status ?? 1;
}
