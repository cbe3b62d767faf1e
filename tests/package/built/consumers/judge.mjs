// An ES module that judges by the text of a policy and by a saved plan.
import { readFileSync } from "node:fs";
import { compilePolicy, evaluate } from "tenbar";
import { evaluate as evaluateByPlan, restorePlan } from "tenbar/plan";

const { policy: text, records } = JSON.parse(readFileSync("case.json", "utf8"));
const compiled = compilePolicy(text, { file: "case.yaml" }).policy;
const restored = restorePlan(JSON.parse(readFileSync("plan.json", "utf8"))).policy;
const byText = records.map((record) => evaluate(compiled, record).verdict);
const byPlan = records.map((record) => evaluateByPlan(restored, record).verdict);
console.log([...byText, ...byPlan].join(" "));
