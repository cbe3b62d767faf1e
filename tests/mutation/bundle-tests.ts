import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { isReaderImport, QUICK_TREE } from "../read/quick-tree-plugin.js";

const JUDGING = ["tests/cases.test.ts", "tests/contract", "tests/outside", "tests/evaluate"];

/** The folders and files of tests that bear on each room, quick ones first: the first failure ends the run of a mutant. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  quantities: ["tests/quantities", "tests/outside/quantities"],
  rules: ["tests/rules"],
  steps: [
    ...JUDGING,
    "tests/compile",
    "tests/bad-input/typing-mistakes.test.ts",
    "tests/report/resolved-policy.test.ts",
    "tests/codes",
    "tests/laws",
  ],
  evaluate: [
    ...JUDGING,
    "tests/laws",
    "tests/rules/rule-truth.test.ts",
    "tests/evidence",
    "tests/bad-input/built-in-names.test.ts",
  ],
};

/** Laws that take seconds for each mutant: one that only they would find counts as survived. */
const SLOW = ["laws.test.ts", "record-schema-laws.test.ts", "tightening.test.ts", "rule-robustness.test.ts"];

function listTests(place: string): readonly string[] {
  if (place.endsWith(".test.ts")) return [place];
  return readdirSync(place)
    .filter((name) => name.endsWith(".test.ts") && !SLOW.includes(name))
    .map((name) => join(place, name));
}

const listed = (TESTS[process.env["TENBAR_ROOM"] ?? "quantities"] ?? []).flatMap(listTests);
// Why: laws take long, and a table that fails before them ends the run.
const isLaw = (file: string) => readFileSync(file, "utf8").includes("fast-check");
const tables = listed.filter((file) => !isLaw(file));
// Why: what no table finds can then be tried again with the laws, which cost the most.
const files = process.env["TENBAR_LAWS"] === "no" ? tables : [...tables, ...listed.filter(isLaw)];

// Why: one text holds a room's tests and sources, which the runner calls anew for each mutant (`room-runner.ts`).
await build({
  stdin: {
    contents: ["src/index.ts", "src/german.ts", "tests/fix-seed.ts", "tests/mutation/stop-at-first.ts", ...files]
      .map((file) => `import ${JSON.stringify(`mark:${file}`)};\nimport ${JSON.stringify(`./${file}`)};`)
      .join("\n"),
    resolveDir: process.cwd(),
  },
  outfile: ".mutation/room.bundle.cjs",
  bundle: true,
  format: "cjs",
  platform: "node",
  packages: "external",
  external: ["mark"],
  ignoreAnnotations: true,
  logLevel: "warning",
  plugins: [
    {
      name: "own-place",
      setup({ onLoad, onResolve }) {
        // Why: half the time of a mutant that survives is spent reading the policies of tests.
        onResolve({ filter: /\/read-tree\.js$/ }, ({ path, importer }) =>
          isReaderImport(path, importer) ? { path: QUICK_TREE } : undefined,
        );
        // Why: so that what a file of tests does as it is loaded is known for what its own tests rest on.
        onResolve({ filter: /^mark:/ }, ({ path }) => ({ path, namespace: "mark" }));
        onLoad({ filter: /./, namespace: "mark" }, ({ path }) => ({
          contents: `require("mark").mark(${JSON.stringify(path.endsWith(".test.ts") ? path : "")});`,
        }));
        // Why: what has no form for `require` goes into the bundle.
        onResolve({ filter: /^canonicalize$/ }, ({ path }) => ({ path: fileURLToPath(import.meta.resolve(path)) }));
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
