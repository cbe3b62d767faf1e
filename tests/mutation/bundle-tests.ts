import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { isReaderImport, QUICK_TREE } from "../read/quick-tree-plugin.js";

const JUDGING = ["tests/cases.test.ts", "tests/contract", "tests/outside", "tests/evaluate"];

/** The folders and files of tests that bear on each room, quick ones first: the first failure ends the run of a mutant. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  quantities: ["tests/quantities", "tests/outside/quantities"],
  rules: ["tests/rules"],
  steps: [...JUDGING, "tests/compile", "tests/bad-input/typing-mistakes.test.ts", "tests/laws"],
  evaluate: [
    ...JUDGING,
    "tests/laws",
    "tests/rules/rule-truth.test.ts",
    "tests/evidence",
    "tests/bad-input/built-in-names.test.ts",
  ],
};

/** Laws that take seconds for each mutant: one that only they would find counts as survived. */
const SLOW = ["laws.test.ts", "record-schema.test.ts", "tightening.test.ts", "rule-robustness.test.ts"];

function listTests(place: string): readonly string[] {
  if (place.endsWith(".test.ts")) return [place];
  return readdirSync(place)
    .filter((name) => name.endsWith(".test.ts") && !SLOW.includes(name))
    .map((name) => join(place, name));
}

// Why: one file holds a room's tests and the sources, since loading some 300 modules anew takes longer than the tests of most mutants.
const listed = (TESTS[process.env["TENBAR_ROOM"] ?? "quantities"] ?? []).flatMap(listTests);
// Why: laws take long, and a table that fails before them ends the run.
const isLaw = (file: string) => readFileSync(file, "utf8").includes("fast-check");
const files = [...listed.filter((file) => !isLaw(file)), ...listed.filter(isLaw)];
await build({
  stdin: {
    contents: files.map((file) => `import ${JSON.stringify(`./${file}`)};`).join("\n"),
    resolveDir: process.cwd(),
  },
  outfile: ".mutation/room.bundle.js",
  bundle: true,
  format: "esm",
  platform: "node",
  packages: "external",
  ignoreAnnotations: true,
  logLevel: "warning",
  plugins: [
    {
      name: "own-place",
      setup({ onLoad, onResolve }) {
        onResolve({ filter: /^vitest$/ }, ({ importer }) =>
          importer.endsWith("guarded-vitest.ts") ? undefined : { path: resolve("tests/mutation/guarded-vitest.ts") },
        );
        // Why: half the time of a mutant that survives is spent reading the policies of tests.
        onResolve({ filter: /\/read-tree\.js$/ }, ({ path, importer }) =>
          isReaderImport(path, importer) ? { path: QUICK_TREE } : undefined,
        );
        onLoad({ filter: /\/(src|tests)\/.*\.ts$/ }, ({ path }) => {
          const text = readFileSync(path, "utf8");
          return {
            contents: text.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href)),
            loader: "ts",
          };
        });
      },
    },
  ],
});
