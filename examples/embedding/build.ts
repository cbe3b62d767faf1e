// Bundles the page with esbuild and writes what it needs beside it: the saved plan, the form, the subject, a sample.
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
const record = JSON.parse(readFileSync("examples/lowmere/records/lowmere-whistle-at-50.json", "utf8"));
const circumstances = { at: "2026-04-14", station: "Lowmere 1", by: record.by, local: record.local };

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
put("form.json", describeCheck(policy, "daily", record.subject, circumstances));
put("subject.json", record.subject);
put("sample.json", record.steps);
