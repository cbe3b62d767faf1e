// Shows by the sizes of bundles that the package has no side effects: a bundle holds what is used, and nothing else.
// Usage: check-bundle-sizes.ts PROJECT, a folder in whose `node_modules` the package is installed
import { build } from "esbuild";

/** A bundle of one function is smaller than this share of a bundle of everything. */
const SHARE_OF_ONE_FUNCTION = 0.35;
/** What a bundler writes around nothing, in bytes. */
const NOTHING = 100;

const USES = {
  all: 'import * as tenbar from "tenbar"; console.log(tenbar);',
  quantity: 'import { quantity } from "tenbar"; console.log(quantity(290, "bar"));',
  none: 'import "tenbar"; import "tenbar/plan"; import "tenbar/german";',
} as const;

await checkBundleSizes(process.argv[2] ?? "");

async function checkBundleSizes(project: string): Promise<void> {
  const all = await measureBundle(project, USES.all);
  const one = await measureBundle(project, USES.quantity);
  const none = await measureBundle(project, USES.none);
  const share = one / all;
  process.stdout.write(`all of it ${all} bytes, one function ${one} bytes (${share.toFixed(3)}), none ${none} bytes\n`);
  process.exitCode = none < NOTHING && share < SHARE_OF_ONE_FUNCTION ? 0 : 1;
}

/** The size in bytes of a minified bundle for a browser. */
async function measureBundle(project: string, contents: string): Promise<number> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: project },
    bundle: true,
    minify: true,
    write: false,
    format: "esm",
    platform: "browser",
    // Why: esbuild remarks on an import that a package without side effects lets it leave out; that is what is measured.
    logOverride: { "ignored-bare-import": "silent" },
  });
  const [file] = outputFiles;
  if (file === undefined) throw new Error("no bundle was made");
  return file.contents.byteLength;
}
