import type { Options } from "tsup";

// Why: these are ES modules only, so a CommonJS build cannot require them; the package carries their code instead.
const BUNDLED_PACKAGES = ["@noble/hashes", "canonicalize", "date-fns", "@date-fns/utc"];

const SHARED_OPTIONS: Options = {
  config: false,
  target: "es2022",
  noExternal: BUNDLED_PACKAGES,
  // Why: without its prefix a built-in module may be mistaken for a package.
  removeNodeProtocol: false,
  metafile: true,
  silent: true,
};

/** The library: four entry points, both module systems, no platform. */
const LIBRARY_OPTIONS: Options = {
  ...SHARED_OPTIONS,
  entry: { index: "src/index.ts", plan: "src/plan-entry.ts", node: "src/node.ts", german: "src/german.ts" },
  format: ["esm", "cjs"],
  platform: "neutral",
  external: [/^node:/],
  splitting: true,
  shims: true,
  dts: true,
};

/** Parts of the command line that it loads when it needs them, each a file of its own by this name. */
const CLI_PARTS = {
  program: "src/cli/program.ts",
  "machine-formats": "src/cli/machine-formats.ts",
  "german-words": "src/cli/german-words.ts",
} as const;

/** The command line: a program for Node, whose start knows of nothing but help, version and what was mistyped. */
const CLI_OPTIONS: Options = {
  ...SHARED_OPTIONS,
  entry: { cli: "src/cli/main.ts", ...CLI_PARTS },
  external: Object.keys(CLI_PARTS).map((part) => `./${part}.js`),
  // Why: only the program writes XML and tables, so an installation need not fetch what they are written with; and the
  // YAML library, some seventy files, is there in a tenth of the time as part of one.
  noExternal: [...BUNDLED_PACKAGES, "csv-stringify", "fast-xml-parser", "yaml"],
  format: ["esm"],
  platform: "node",
  // Why: every process reads its files anew, and many small ones take longer than one.
  splitting: false,
  minify: true,
  esbuildOptions: (options) => {
    // Why: the same library offers CommonJS to Node and modules to all others, and of modules only what is used stays.
    options.alias = { yaml: "./node_modules/yaml/browser/index.js" };
  },
};

/** The builds of the package, in the order they are made. */
export const BUILDS: readonly Options[] = [LIBRARY_OPTIONS, CLI_OPTIONS];
