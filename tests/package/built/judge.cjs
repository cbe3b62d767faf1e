// Judges with the packed CommonJS module, where no text may be run as code.
const assert = require("node:assert/strict");
const { readFileSync } = require("node:fs");
const { compilePolicy, evaluate, quantity } = require("tenbar");
const { loadPolicy } = require("tenbar/node");
const plan = require("tenbar/plan");

const { policy: text, records } = JSON.parse(readFileSync("case.json", "utf8"));
const { policy } = compilePolicy(text, { file: "case.yaml" });
const verdicts = records.map((record) => evaluate(policy, record).verdict);
assert.deepEqual(verdicts, ["meets", "withdraw"]);
assert.equal(quantity(290, "bar"), "290 bar");
assert.equal(typeof loadPolicy, "function");
assert.ok(Object.keys(plan).length > 0);
