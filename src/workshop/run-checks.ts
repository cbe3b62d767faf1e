// Runs every check of the project and ends with one line: how many passed, how many failed.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { listStages, type Stage } from "./check-stages.js";

const LINES_OF_A_FAILURE = 60;

interface Counts {
  readonly passed: number;
  readonly failed: number;
}

const scratch = mkdtempSync(join(tmpdir(), "tenbar-checks-"));
try {
  const report = join(scratch, "tests.json");
  const stages = await runStages(listStages(scratch, report));
  const tests = countTests(report);
  process.stdout.write(`${stages.passed + tests.passed} passed, ${stages.failed + tests.failed} failed\n`);
  process.exitCode = stages.failed + tests.failed === 0 ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

/** Runs the stages one after the other; a stage that fails stops only those that need it. */
async function runStages(stages: readonly Stage[]): Promise<Counts> {
  const failed = new Set<string>();
  for (const stage of stages) {
    const lacking = stage.needs.filter((name) => failed.has(name));
    const isSound = lacking.length === 0 ? await runStage(stage) : reportUnrun(stage, lacking);
    if (!isSound) failed.add(stage.name);
  }
  return { passed: stages.length - failed.size, failed: failed.size };
}

function reportUnrun(stage: Stage, lacking: readonly string[]): false {
  process.stdout.write(`FAILED ${stage.name}: not run, it needs ${lacking.join(", ")}\n`);
  return false;
}

async function runStage({ name, program, args, folder }: Stage): Promise<boolean> {
  const began = performance.now();
  const path = program === "node" ? process.execPath : resolve("node_modules/.bin", program);
  const { status, output } = await runProgram(path, args, folder ?? ".");
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  process.stdout.write(`${status === 0 ? "ok    " : "FAILED"} ${name} (${seconds} s)\n`);
  if (status !== 0) process.stdout.write(`${output.trim().split("\n").slice(-LINES_OF_A_FAILURE).join("\n")}\n`);
  return status === 0;
}

function runProgram(path: string, args: readonly string[], cwd: string): Promise<{ status: number; output: string }> {
  return new Promise((settle) => {
    const child = spawn(path, args, { cwd, stdio: ["ignore", "pipe", "pipe"], env: { ...process.env, NO_COLOR: "1" } });
    const chunks: string[] = [];
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (chunk: string) => chunks.push(chunk));
    }
    child.on("error", (error) => settle({ status: 1, output: `${path}: ${error.message}` }));
    child.on("close", (status) => settle({ status: status ?? 1, output: chunks.join("") }));
  });
}

/** The tests by themselves; none where the run left no report, and then the stage itself has failed. */
function countTests(report: string): Counts {
  if (!existsSync(report)) return { passed: 0, failed: 0 };
  const counts: { numPassedTests: number; numFailedTests: number; numPendingTests: number } = JSON.parse(
    readFileSync(report, "utf8"),
  );
  process.stdout.write(
    `tests: ${counts.numPassedTests} passed, ${counts.numFailedTests} failed, ${counts.numPendingTests} skipped\n`,
  );
  return { passed: counts.numPassedTests, failed: counts.numFailedTests };
}
