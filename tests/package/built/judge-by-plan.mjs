// Judges by a saved plan in a home where the package has no dependency beside it: no YAML parser, no schema validator.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { evaluate, restorePlan } from "tenbar/plan";

assert.ok(!existsSync("node_modules/yaml") && !existsSync("node_modules/zod"));
const { records } = JSON.parse(readFileSync("case.json", "utf8"));
const { policy } = restorePlan(JSON.parse(readFileSync("plan.json", "utf8")));
const verdicts = records.map((record) => evaluate(policy, record).verdict);
assert.deepEqual(verdicts, ["meets", "withdraw"]);
assert.equal(restorePlan({ format: 0 }).policy, undefined);
