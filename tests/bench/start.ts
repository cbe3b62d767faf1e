// Whole processes: the command line against Node doing nothing.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { build as bundle } from "esbuild";
import { build } from "tsup";
import { BUILDS } from "../../src/workshop/build-options.js";
import { divideTimings, printRatios, printTable, summarize } from "./measure.js";

const SCRATCH = "node_modules/.cache";
const ROUNDS = 31;
const WARM_UP_ROUNDS = 3;
const POLICY = resolve("policies/common-practice/open-circuit.yaml");
const RECORD = resolve("examples/records/clean-single-cylinder.json");

interface Command {
  readonly name: string;
  readonly options: readonly string[];
  /** What must stand on standard output, so that the program is known to have done its work. */
  readonly says: string;
}

await measureStart();

async function measureStart(): Promise<void> {
  // Why: inside the project, so that the packages that stay outside the program are found.
  mkdirSync(SCRATCH, { recursive: true });
  const folder = mkdtempSync(join(SCRATCH, "tenbar-start-"));
  try {
    const program = await buildProgram(folder);
    const parser = await bundleParser(folder);
    const plan = join(folder, "plan.json");
    timeProcess({ name: "compile --out", options: [program, "compile", POLICY, "--out", plan], says: "" });
    const commands: readonly Command[] = [
      { name: "node -e 0", options: ["-e", "0"], says: "" },
      { name: "YAML alone", options: [parser, POLICY], says: "common-practice/open-circuit" },
      { name: "evaluate", options: [program, "evaluate", POLICY, RECORD], says: "lm1-s011-0202" },
      { name: "evaluate by a plan", options: [program, "evaluate", plan, RECORD], says: "lm1-s011-0202" },
      { name: "compile", options: [program, "compile", POLICY], says: "" },
      { name: "--help", options: [program, "--help"], says: "evaluate" },
    ];
    report(commands, timeInTurn(commands));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Builds the command line as the package has it, apart from the package. */
async function buildProgram(outDir: string): Promise<string> {
  const options = BUILDS.find(({ entry }) => typeof entry === "object" && "cli" in entry);
  if (options === undefined) throw new Error("the package has no build of the command line");
  await build({ ...options, outDir, metafile: false });
  // Why: without it Node has to find out by the text which kind of module each file is, as it need not in the package.
  writeFileSync(join(outDir, "package.json"), '{"type":"module"}\n');
  return join(outDir, "cli.js");
}

/** A program that does nothing but read the policy by the YAML library: what no reading of a policy can be quicker than. */
async function bundleParser(folder: string): Promise<string> {
  const outfile = join(folder, "parser.js");
  const contents =
    'import { readFileSync } from "node:fs"; import { parse } from "yaml"; console.log(parse(readFileSync(process.argv[2], "utf8")).policy.id);';
  const alias = { yaml: "./node_modules/yaml/browser/index.js" };
  await bundle({
    stdin: { contents, resolveDir: process.cwd() },
    outfile,
    alias,
    bundle: true,
    minify: true,
    platform: "node",
    format: "esm",
  });
  return outfile;
}

function timeInTurn(commands: readonly Command[]): readonly number[][] {
  const times = commands.map((): number[] => []);
  for (let round = -WARM_UP_ROUNDS; round < ROUNDS; round += 1) {
    commands.forEach((command, index) => {
      const took = timeProcess(command);
      if (round >= 0) times[index]?.push(took);
    });
  }
  return times;
}

/** Milliseconds of the clock from start to end of one process; one that fails or says something else throws. */
function timeProcess({ name, options, says }: Command): number {
  const from = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, options, { encoding: "utf8", env: { PATH: "" } });
  const took = performance.now() - from;
  if (status !== 0 || !stdout.includes(says)) throw new Error(`${name} ends with ${status}: ${stdout}${stderr}`);
  return took;
}

function report(commands: readonly Command[], times: readonly number[][]): void {
  const timings = commands.map(({ name }, index) => summarize(name, times[index] ?? []));
  printTable(
    ["process", "milliseconds, median", "least"],
    timings.map(({ name, median, least }) => [name, median.toFixed(1), least.toFixed(1)]),
  );
  const compare = (name: string, target: string) =>
    divideTimings("start", `${name} / node -e 0`, timings, [name, "node -e 0"], target);
  printRatios([
    compare("evaluate", "<= 3"),
    compare("evaluate by a plan", "<= 3"),
    compare("YAML alone", "shown"),
    compare("--help", "<= 1.5"),
    compare("compile", "shown"),
  ]);
}
