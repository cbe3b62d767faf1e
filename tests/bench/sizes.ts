// How large the library is in a browser: minified, gzipped, by room and package.
import { gzipSync } from "node:zlib";
import { build, type Metafile } from "esbuild";
import { printTable } from "./measure.js";

const KIBIBYTE = 1024;

interface Bundle {
  readonly name: string;
  /** The module that a page would have; what it does not import falls away. */
  readonly code: string;
  /** KiB, gzipped. */
  readonly target: number;
}

const BUNDLES: readonly Bundle[] = [
  { name: "tenbar/plan", code: 'export * from "./src/plan-entry.js";', target: 20 },
  { name: "tenbar, compiling", code: 'export { compilePolicy, evaluate } from "./src/index.js";', target: 80 },
  { name: "tenbar, all of it", code: 'export * from "./src/index.js";', target: 80 },
];

for (const bundle of BUNDLES) await reportBundle(bundle);

async function reportBundle({ name, code, target }: Bundle): Promise<void> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: code, resolveDir: process.cwd(), loader: "ts" },
    bundle: true,
    minify: true,
    treeShaking: true,
    platform: "browser",
    format: "esm",
    target: "es2022",
    write: false,
    metafile: true,
    legalComments: "none",
  });
  const [output] = outputFiles;
  if (output === undefined || output.contents.length === 0) throw new Error(`${name} gives nothing`);
  const minified = output.contents.length;
  const gzipped = gzipSync(output.contents, { level: 9 }).length;
  console.log(
    `\n${name}: ${toKibibytes(minified)} KiB minified, ${toKibibytes(gzipped)} KiB gzipped, target ${target}`,
  );
  printTable(
    ["part", "KiB minified", "share"],
    sumParts(metafile).map(([part, bytes]) => [part, toKibibytes(bytes), `${((bytes / minified) * 100).toFixed(1)} %`]),
  );
  const ratio = `${name}, KiB gzipped`;
  console.log(JSON.stringify({ bench: "sizes", ratio, value: Number(toKibibytes(gzipped)), target: `<= ${target}` }));
}

function toKibibytes(bytes: number): string {
  return (bytes / KIBIBYTE).toFixed(1);
}

/** Bytes in the bundle by package, or by room of this one; the largest first. */
function sumParts({ outputs }: Metafile): readonly (readonly [string, number])[] {
  const parts = new Map<string, number>();
  for (const { inputs } of Object.values(outputs)) {
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      const part = namePart(file);
      parts.set(part, (parts.get(part) ?? 0) + bytesInOutput);
    }
  }
  return [...parts].filter(([, bytes]) => bytes > 0).sort(([, one], [, other]) => other - one);
}

function namePart(file: string): string {
  const [, name] = /^(?:.*\/)?node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file) ?? [];
  if (name !== undefined) return name;
  if (file.includes("/generated/")) return "src/read/generated";
  const [, room] = /^src\/([^/]+)\//.exec(file) ?? [];
  return room === undefined ? file : `src/${room}`;
}
