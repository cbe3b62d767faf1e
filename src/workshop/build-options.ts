import type { Options } from "tsup";

// Why: these are ES modules only, so a CommonJS build cannot require them; the package carries their code instead.
const BUNDLED_PACKAGES = ["@noble/hashes", "canonicalize", "temporal-polyfill", "temporal-utils"];

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

/** The command line: a program of its own for Node. */
const CLI_OPTIONS: Options = {
  ...SHARED_OPTIONS,
  entry: { cli: "src/cli/main.ts" },
  // Why: only the program writes XML and tables, so an installation need not fetch what they are written with.
  noExternal: [...BUNDLED_PACKAGES, "csv-stringify", "fast-xml-parser"],
  format: ["esm"],
  platform: "node",
  splitting: false,
};

/** The builds of the package, in the order they are made. */
export const BUILDS: readonly Options[] = [LIBRARY_OPTIONS, CLI_OPTIONS];
