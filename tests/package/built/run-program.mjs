// Runs the packed program; it leaves a saved plan for the home that has no dependencies.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const { policy, records } = JSON.parse(readFileSync("case.json", "utf8"));
writeFileSync("case.yaml", policy);
for (const [index, record] of records.entries()) writeFileSync(`record-${index}.json`, JSON.stringify(record));

const manifest = JSON.parse(readFileSync("node_modules/tenbar/package.json", "utf8"));
const program = join("node_modules/tenbar", manifest.bin.tenbar);
assert.ok(readFileSync(program, "utf8").startsWith("#!/usr/bin/env node\n"));

function run(...args) {
  return spawnSync(process.execPath, [...process.execArgv, program, ...args], { encoding: "utf8" });
}

const sound = run("evaluate", "case.yaml", "record-0.json", "--format", "json");
assert.equal(sound.status, 0, sound.stderr);
assert.equal(JSON.parse(sound.stdout).verdict, "meets");

const faulty = run("evaluate", "case.yaml", "record-1.json", "--format", "json");
assert.equal(faulty.status, 1, faulty.stderr);
assert.equal(JSON.parse(faulty.stdout).verdict, "withdraw");

assert.equal(run("evaluate", "gone.yaml", "record-0.json").status, 2);
assert.equal(run("compile", "case.yaml", "--out", "../bare/plan.json").status, 0);

// Each of the files that the program is built into speaks the language that is asked for.
const german = ["--language", "de"];
assert.match(run("evaluate", "case.yaml", "record-1.json", ...german).stdout, /außer Dienst nehmen/);
assert.match(run("compile", "gone.yaml", ...german).stderr, /die Datei gibt es nicht/);
assert.match(run("compile", ...german).stderr, /POLICY fehlt/);
assert.match(run("compile", "case.yaml", "--fromat", ...german).stderr, /die Option `--fromat` gibt es nicht/);
assert.match(run("complie", "case.yaml", ...german).stderr, /den Befehl `complie` gibt es nicht/);
assert.match(run("explain", "read/tab-indent", ...german).stderr, /there is no option `--language`/);
