// Shows the program at work on the records of Lowmere; builds it first where the build is older than its source.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const PROGRAM = "dist/cli.js";
const POLICY = "policies/common-practice/open-circuit.yaml";
const RECORDS = "examples/records";

process.exitCode = runDemo();

function runDemo(): number {
  if (!isBuilt() && runCommand("npm", ["run", "--silent", "build"]) !== 0) return 1;
  const records = readdirSync(RECORDS).filter((file) => file.endsWith(".json"));
  const paths = records.sort().map((file) => join(RECORDS, file));
  return runCommand(process.execPath, [PROGRAM, "evaluate", POLICY, ...paths, "--fail-on", "never"]);
}

function isBuilt(): boolean {
  if (!existsSync(PROGRAM)) return false;
  const built = statSync(PROGRAM).mtimeMs;
  const sources = readdirSync("src", { recursive: true, encoding: "utf8" }).map((file) => join("src", file));
  return sources.every((file) => statSync(file).mtimeMs <= built);
}

function runCommand(program: string, args: readonly string[]): number {
  const words = [program === process.execPath ? "node" : program, ...args];
  process.stderr.write(`$ ${words.join(" ")}\n`);
  return spawnSync(program, args, { stdio: "inherit" }).status ?? 1;
}
