// Bundles the page with esbuild and writes what it needs beside it: the saved plan, the form, the head of the record, a sample.
// Run from the root of the repository: npx tsx examples/embedding/build.ts FOLDER
import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { describeCheck } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";

const HERE = "examples/embedding";
const target = process.argv[2] ?? join(HERE, "dist");

const { policy, diagnostics } = await loadPolicy("examples/lowmere/policy.yaml");
if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
const { steps, ...record } = JSON.parse(readFileSync("examples/lowmere/records/lowmere-whistle-at-50.json", "utf8"));

mkdirSync(target, { recursive: true });
await build({
  entryPoints: [join(HERE, "form.ts")],
  outfile: join(target, "form.js"),
  bundle: true,
  minify: true,
  format: "esm",
  platform: "browser",
  target: "es2022",
  alias: { "tenbar/plan": "./src/plan-entry.ts" },
});
for (const file of ["index.html", "style.css"]) cpSync(join(HERE, file), join(target, file));
const put = (file: string, value: unknown) => {
  writeFileSync(join(target, file), JSON.stringify(value));
};
put("plan.json", policy.plan);
put("form.json", describeCheck(policy, record.check, record.subject, record));
put("record.json", record);
put("sample.json", steps);
