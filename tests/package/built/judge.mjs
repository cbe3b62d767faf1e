// Judges with the packed ES module, where no text may be run as code.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { compilePolicy, describeCheck, evaluate, quantity, recordSchema } from "tenbar";
import { german } from "tenbar/german";
import { loadPolicy } from "tenbar/node";

const { policy: text, records } = JSON.parse(readFileSync("case.json", "utf8"));
const { policy, diagnostics } = compilePolicy(text, { file: "case.yaml" });
assert.deepEqual(
  diagnostics.filter((diagnostic) => diagnostic.severity === "error"),
  [],
);
const verdicts = records.map((record) => evaluate(policy, record).verdict);
assert.deepEqual(verdicts, ["meets", "withdraw"]);
assert.equal(quantity(290, "bar"), "290 bar");
assert.equal(typeof describeCheck, "function");
assert.equal(typeof recordSchema, "function");
assert.equal(typeof loadPolicy, "function");

const broken = compilePolicy(text.replace("at-most", "at-mots"), { file: "case.yaml" });
assert.equal(broken.policy, undefined);
assert.ok(broken.diagnostics.length > 0);

const inGerman = evaluate(policy, records[1], { words: german });
assert.equal(inGerman.verdict, "withdraw");
assert.notEqual(inGerman.findings[0].message, evaluate(policy, records[1]).findings[0].message);

const schemaFile = createRequire(import.meta.url).resolve("tenbar/schemas/policy.schema.json");
assert.equal(JSON.parse(readFileSync(schemaFile, "utf8")).$id, "tag:tenbar,2026:policy");
