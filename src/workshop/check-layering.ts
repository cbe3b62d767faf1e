// Checks the imports of every file in src against the table of rooms, as written and as loaded.
import { spawnSync } from "node:child_process";

const RULE_FILES = [".dependency-cruiser.cjs", ".dependency-cruiser-runtime.cjs"];

const failed = RULE_FILES.filter((file) => {
  const run = spawnSync("npx", ["--no-install", "depcruise", "--config", file, "src"], { stdio: "inherit" });
  return run.status !== 0;
});
process.exitCode = failed.length === 0 ? 0 : 1;
