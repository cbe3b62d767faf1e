// Uses the installed package in one way, and compares the verdicts that are printed.
// Usage: check-consumer.ts PROJECT WAY
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { build as buildByEsbuild } from "esbuild";
import { build as buildByVite } from "vite";

/** By the text of the policy and then by its plan: a drop of 10 bar meets the sample policy, one of 20 bar does not. */
const EXPECTED = "meets withdraw meets withdraw\n";
/** Why: the library promises to work where text is never run as code. */
const NO_EVAL = "--disallow-code-generation-from-strings";

/** What every way compiles with; the types of the package and of its dependencies are checked too. */
const STRICT = { target: "ES2022", lib: ["ES2022", "DOM"], types: [], strict: true, skipLibCheck: false };

/** The ways, each with what it makes in the project; it returns the files to run, by their paths in the project. */
const WAYS: Readonly<Record<string, (project: string) => Promise<readonly string[]> | readonly string[]>> = {
  module: () => ["judge.mjs"],
  commonjs: () => ["judge.cjs"],
  node16: (project) => compileTypes(project, "node16"),
  nodenext: (project) => compileTypes(project, "nodenext"),
  bundler: (project) => checkTypes(project),
  esbuild: (project) => bundleByEsbuild(project),
  vite: (project) => bundleByVite(project),
};

await checkConsumer(resolve(process.argv[2] ?? ""), process.argv[3] ?? "");

async function checkConsumer(project: string, way: string): Promise<void> {
  const prepare = WAYS[way];
  if (prepare === undefined) throw new Error(`no way to use the package: ${way}`);
  const files = await prepare(project);
  for (const file of files) {
    const run = spawnSync(process.execPath, [NO_EVAL, file], { cwd: project, encoding: "utf8" });
    process.stdout.write(`${file}: ${run.stdout}${run.stderr}`);
    if (run.status !== 0 || run.stdout !== EXPECTED) process.exitCode = 1;
  }
}

function compileTypes(project: string, resolution: "node16" | "nodenext"): readonly string[] {
  const outDir = `out-${resolution}`;
  runCompiler(project, resolution, ["typed-judge.mts", "typed-judge.cts"], {
    module: resolution,
    moduleResolution: resolution,
    noEmitOnError: true,
    outDir,
  });
  return [join(outDir, "typed-judge.mjs"), join(outDir, "typed-judge.cjs")];
}

/** Under `bundler` the compiler only checks; what it checked is then bundled and run. */
async function checkTypes(project: string): Promise<readonly string[]> {
  const options = { module: "ESNext", moduleResolution: "bundler", noEmit: true };
  runCompiler(project, "bundler", ["bundled-judge.mts"], options);
  return bundleByEsbuild(project);
}

function runCompiler(project: string, name: string, files: readonly string[], options: object): void {
  const config = `tsconfig.${name}.json`;
  const compilerOptions = { ...STRICT, exactOptionalPropertyTypes: true, resolveJsonModule: true, ...options };
  writeFileSync(join(project, config), JSON.stringify({ compilerOptions, files }));
  const run = spawnSync(process.execPath, [resolve("node_modules/typescript/bin/tsc"), "-p", config], {
    cwd: project,
    encoding: "utf8",
  });
  if (run.status !== 0) throw new Error(`the types do not fit under ${name}:\n${run.stdout}`);
}

async function bundleByEsbuild(project: string): Promise<readonly string[]> {
  const outfile = join(project, "out-esbuild", "judge.mjs");
  const entryPoints = [join(project, "bundled-judge.mts")];
  await buildByEsbuild({ entryPoints, outfile, bundle: true, format: "esm", platform: "browser", minify: true });
  return [join("out-esbuild", "judge.mjs")];
}

async function bundleByVite(project: string): Promise<readonly string[]> {
  await buildByVite({
    root: project,
    configFile: false,
    mode: "production",
    logLevel: "error",
    build: {
      outDir: "out-vite",
      // Why: the output runs without a page, which the preloading of modules asks for.
      modulePreload: false,
      rolldownOptions: { input: join(project, "bundled-judge.mts"), output: { entryFileNames: "judge.mjs" } },
    },
  });
  return [join("out-vite", "judge.mjs")];
}
