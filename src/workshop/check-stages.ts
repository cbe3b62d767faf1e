import { join } from "node:path";

/** One stage of the checks: a program of `node_modules/.bin`, or `node` itself, and what it is given. */
export interface Stage {
  readonly name: string;
  readonly program: string;
  readonly args: readonly string[];
  /** Stages without which this one would say nothing; where one of them failed, this one fails unrun. */
  readonly needs: readonly string[];
  /** The folder it runs in, the project where it is left out. */
  readonly folder?: string;
}

/** Why: the library promises to work where text is never run as code. */
const NO_EVAL = "--disallow-code-generation-from-strings";

/** Every stage in order. `scratch` is an empty folder; `report` is where the tests leave their counts. */
export function listStages(scratch: string, report: string): readonly Stage[] {
  return [...listSourceStages(report), ...listPackageStages(scratch)];
}

function listSourceStages(report: string): readonly Stage[] {
  return [
    { name: "generate", program: "tsx", args: ["src/workshop/generate.ts", "--validators"], needs: [] },
    { name: "types", program: "tsc", args: ["--noEmit"], needs: ["generate"] },
    { name: "lint", program: "biome", args: ["ci", "--colors=off", "."], needs: [] },
    { name: "layering", program: "tsx", args: ["src/workshop/check-layering.ts"], needs: ["generate"] },
    { name: "unused", program: "knip", args: ["--no-progress"], needs: ["generate"] },
    {
      name: "tests",
      program: "vitest",
      args: ["run", "--reporter=dot", "--reporter=json", `--outputFile.json=${report}`],
      needs: ["generate"],
    },
    { name: "build", program: "tsx", args: ["src/workshop/build-package.ts"], needs: ["generate"] },
  ];
}

function listPackageStages(scratch: string): readonly Stage[] {
  const archive = join(scratch, "tenbar.tgz");
  const inHome = (name: string, home: string, file: string, needs = ["pack"]): Stage => ({
    name,
    program: "node",
    args: [NO_EVAL, file],
    needs,
    folder: join(scratch, home),
  });
  return [
    { name: "pack", program: "tsx", args: ["src/workshop/pack-package.ts", scratch], needs: ["build"] },
    { name: "publint", program: "publint", args: ["run", "--strict", archive], needs: ["pack"] },
    { name: "entry-types", program: "attw", args: [archive, "--profile", "strict", "--no-emoji"], needs: ["pack"] },
    { name: "consumer-types", program: "tsc", args: ["-p", join(scratch, "complete")], needs: ["pack"] },
    inHome("built-module", "with-yaml", "judge.mjs"),
    inHome("built-commonjs", "with-yaml", "judge.cjs"),
    inHome("built-program", "with-yaml", "run-program.mjs"),
    inHome("built-plan", "bare", "judge-by-plan.mjs", ["built-program"]),
    {
      name: "browser",
      program: "tsx",
      args: ["src/workshop/check-browser.ts", join(scratch, "with-yaml")],
      needs: ["pack"],
    },
  ];
}
