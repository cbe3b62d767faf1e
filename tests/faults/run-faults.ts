// Plants each fault in a copy of the source and runs a quick part of the suite there: every fault must be caught, the copy
// without one must pass. `npm run test:faults`; it takes a few minutes.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { FAULTS, type Fault } from "./faults.js";

const COPIED = ["src", "tests", "policies", "examples", "schemas", "package.json", "vitest.config.ts", "tsconfig.json"];
const QUICK = [
  "tests/cases.test.ts",
  "tests/contract",
  "tests/evaluate/covering.test.ts",
  "tests/evaluate/language.test.ts",
  "tests/evaluate/several-orders.test.ts",
  "tests/evaluate/steps.test.ts",
  "tests/outside/boundary-vectors.test.ts",
  "tests/outside/quantities",
  "tests/quantities/band.test.ts",
];

const tree = mkdtempSync(join(tmpdir(), "faults-"));
try {
  for (const path of COPIED) cpSync(path, join(tree, path), { recursive: true });
  symlinkSync(resolve("node_modules"), join(tree, "node_modules"));
  process.exitCode = report();
} finally {
  rmSync(tree, { recursive: true });
}

function report(): number {
  if (!passes()) {
    process.stdout.write("the quick part of the suite fails without any fault\n");
    return 1;
  }
  const escaped = FAULTS.filter((fault) => {
    const caught = isCaught(fault);
    process.stdout.write(`${caught ? "caught " : "ESCAPED"} ${fault.name}\n`);
    return !caught;
  });
  process.stdout.write(`${FAULTS.length - escaped.length} caught, ${escaped.length} escaped\n`);
  return escaped.length === 0 ? 0 : 1;
}

function isCaught({ file, from, to, name }: Fault): boolean {
  const path = join(tree, file);
  const text = readFileSync(path, "utf8");
  if (text.split(from).length !== 2)
    throw new Error(`the place of the fault "${name}" does not stand exactly once in ${file}`);
  writeFileSync(
    path,
    text.replace(from, () => to),
  );
  const caught = !passes();
  writeFileSync(path, text);
  return caught;
}

function passes(): boolean {
  return spawnSync("npx", ["vitest", "run", "--bail", "1", ...QUICK], { cwd: tree, stdio: "ignore" }).status === 0;
}
