// Shows by the sizes of bundles that the package has no side effects, a bundle holding what is used and nothing else; and
// that what a page has to fetch grows no further.
// Usage: check-bundle-sizes.ts PROJECT, a folder in whose `node_modules` the package is installed
import { gzipSync } from "node:zlib";
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

/** KiB minified and gzipped: what has been reached, with a little air, and what is aimed at. */
const BUDGETS = [
  { name: "tenbar/plan", contents: 'export * from "tenbar/plan";', most: 37, target: 20 },
  {
    name: "tenbar, compiling",
    contents: 'export { compilePolicy, evaluate } from "tenbar";',
    most: 122,
    target: 80,
  },
] as const;

await checkBundleSizes(process.argv[2] ?? "");

async function checkBundleSizes(project: string): Promise<void> {
  const all = (await bundle(project, USES.all)).byteLength;
  const one = (await bundle(project, USES.quantity)).byteLength;
  const none = (await bundle(project, USES.none)).byteLength;
  const share = one / all;
  process.stdout.write(`all of it ${all} bytes, one function ${one} bytes (${share.toFixed(3)}), none ${none} bytes\n`);
  let isWithin = none < NOTHING && share < SHARE_OF_ONE_FUNCTION;
  for (const { name, contents, most, target } of BUDGETS) {
    const size = gzipSync(await bundle(project, contents), { level: 9 }).byteLength / 1024;
    process.stdout.write(`${name}: ${size.toFixed(1)} KiB gzipped, at most ${most}, aimed at ${target}\n`);
    isWithin &&= size <= most;
  }
  process.exitCode = isWithin ? 0 : 1;
}

/** A minified bundle for a browser. */
async function bundle(project: string, contents: string): Promise<Uint8Array> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: project },
    bundle: true,
    minify: true,
    write: false,
    format: "esm",
    platform: "browser",
    legalComments: "none",
    // Why: esbuild remarks on an import that a package without side effects lets it leave out; that is what is measured.
    logOverride: { "ignored-bare-import": "silent" },
  });
  const [file] = outputFiles;
  if (file === undefined) throw new Error("no bundle was made");
  return file.contents;
}
