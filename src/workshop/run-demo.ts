// Shows the program at work on a few records of Lowmere; builds it first where the build is older than its source.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const PROGRAM = "dist/cli.js";
const POLICY = "policies/common-practice/open-circuit.yaml";
const RECORDS = "examples/records";
/** One of each that an officer meets: all is well, close to a limit, beyond it, without a unit, not done. */
const SHOWN = [
  "clean-single-cylinder",
  "charge-in-caution-band",
  "late-whistle",
  "charge-without-unit",
  "bypass-not-done",
];

process.exitCode = runDemo();

function runDemo(): number {
  if (!isBuilt() && runCommand("npm", ["run", "--silent", "build"]) !== 0) return 1;
  const records = SHOWN.map((name) => join(RECORDS, `${name}.json`));
  const status = runCommand(process.execPath, [PROGRAM, "evaluate", POLICY, ...records, "--fail-on", "never"], "node");
  process.stderr.write(`More records, with one thing wrong in each: ${RECORDS}\n`);
  return status;
}

function isBuilt(): boolean {
  if (!existsSync(PROGRAM)) return false;
  const built = statSync(PROGRAM).mtimeMs;
  const sources = readdirSync("src", { recursive: true, encoding: "utf8" }).map((file) => join("src", file));
  return sources.every((file) => statSync(file).mtimeMs <= built);
}

/** Runs a program and prints its line before, as one would type it. */
function runCommand(program: string, args: readonly string[], name = program): number {
  process.stderr.write(`$ ${[name, ...args].join(" ")}\n`);
  return spawnSync(program, args, { stdio: "inherit" }).status ?? 1;
}
