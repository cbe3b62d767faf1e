// Bundles each bench to one file and runs it by itself: `run-benches.ts`, or with the names of those that are wanted.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

const BENCHES = ["kernel", "compile", "start", "sizes"] as const;
const SCRATCH = "node_modules/.cache";

process.exitCode = await runBenches(process.argv.slice(2));

async function runBenches(wanted: readonly string[]): Promise<number> {
  const unknown = wanted.find((name) => !BENCHES.some((bench) => bench === name));
  if (unknown !== undefined) {
    console.error(`there is no bench \`${unknown}\`; there are ${BENCHES.join(", ")}`);
    return 2;
  }
  mkdirSync(SCRATCH, { recursive: true });
  // Why: inside the project, so that packages that stay outside a bundle are found.
  const folder = mkdtempSync(join(SCRATCH, "tenbar-bench-"));
  try {
    let failed = 0;
    for (const bench of BENCHES.filter((name) => wanted.length === 0 || wanted.includes(name))) {
      console.log(`\n${bench}\n${"=".repeat(bench.length)}`);
      failed += await runBench(bench, folder);
    }
    return failed === 0 ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** 1 where the bench failed: its sides did not agree, or one of them could not run. */
async function runBench(bench: string, folder: string): Promise<number> {
  const outfile = join(folder, `${bench}.mjs`);
  await build({
    entryPoints: [`tests/bench/${bench}.ts`],
    outfile,
    bundle: true,
    minify: false,
    platform: "node",
    format: "esm",
    target: "node20",
    external: ["esbuild", "tsup"],
    // Why: the YAML library is CommonJS and asks for built-in modules by `require`.
    banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
    logLevel: "warning",
  });
  // Why: garbage is collected in one thread, so that the time of the processor is that of the work.
  const options = ["--expose-gc", "--single-threaded-gc", outfile];
  return spawnSync(process.execPath, options, { stdio: "inherit" }).status === 0 ? 0 : 1;
}
