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
export const NO_EVAL = "--disallow-code-generation-from-strings";

/** What is run of the built package, each in its home, in this order: the last judges by the plan that the one before leaves. */
export const BUILT_TESTS = [
  { name: "built-module", home: "with-yaml", file: "judge.mjs" },
  { name: "built-commonjs", home: "with-yaml", file: "judge.cjs" },
  { name: "built-program", home: "with-yaml", file: "run-program.mjs" },
  { name: "built-plan", home: "bare", file: "judge-by-plan.mjs" },
] as const;

/** The ways in which an empty project uses the installed package. */
const CONSUMERS = ["module", "commonjs", "node16", "nodenext", "bundler", "esbuild", "vite"] as const;

/** Every stage in order. `scratch` is an empty folder; `report` is where the tests leave their counts. */
export function listStages(scratch: string, report: string): readonly Stage[] {
  return [
    ...listSourceStages(report),
    {
      name: "build",
      program: "tsx",
      args: ["src/workshop/build-package.ts", "dist", join(scratch, "lists")],
      needs: ["generate"],
    },
    { name: "demo", program: "tsx", args: ["src/workshop/run-demo.ts"], needs: ["build"] },
    ...listPackageStages(scratch, join(scratch, "tenbar.tgz")),
    ...listInstalledStages(join(scratch, "tenbar.tgz"), join(scratch, "installed")),
  ];
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
  ];
}

function listPackageStages(scratch: string, archive: string): readonly Stage[] {
  const inWorkshop = (name: string, file: string, args: readonly string[]): Stage => ({
    name,
    program: "tsx",
    args: [`src/workshop/${file}`, ...args],
    needs: ["pack"],
  });
  return [
    { name: "pack", program: "tsx", args: ["src/workshop/pack-package.ts", scratch], needs: ["build"] },
    inWorkshop("contents", "check-contents.ts", [archive, join(scratch, "lists")]),
    inWorkshop("reproducible", "check-reproducible.ts", [archive, join(scratch, "again")]),
    { name: "publint", program: "publint", args: ["run", "--strict", archive], needs: ["pack"] },
    { name: "entry-types", program: "attw", args: [archive, "--profile", "strict", "--no-emoji"], needs: ["pack"] },
    { name: "consumer-types", program: "tsc", args: ["-p", join(scratch, "complete")], needs: ["pack"] },
    ...BUILT_TESTS.map(({ name, home, file }) => ({
      name,
      program: "node",
      args: [NO_EVAL, file],
      needs: name === "built-plan" ? ["built-program"] : ["pack"],
      folder: join(scratch, home),
    })),
    inWorkshop("browser", "check-browser.ts", [join(scratch, "with-yaml")]),
    inWorkshop("bundle-sizes", "check-bundle-sizes.ts", [join(scratch, "with-yaml")]),
  ];
}

function listInstalledStages(archive: string, project: string): readonly Stage[] {
  return [
    { name: "install", program: "tsx", args: ["src/workshop/install-package.ts", archive, project], needs: ["pack"] },
    ...CONSUMERS.map((way) => ({
      name: `installed-${way}`,
      program: "tsx",
      args: ["src/workshop/check-consumer.ts", project, way],
      needs: ["install"],
    })),
  ];
}
