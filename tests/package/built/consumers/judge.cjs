// A CommonJS module that judges by the text of a policy and by a saved plan.
const { compilePolicy, evaluate } = require("tenbar");
const plan = require("tenbar/plan");
const { policy: text, records } = require("./case.json");

const compiled = compilePolicy(text, { file: "case.yaml" }).policy;
const restored = plan.restorePlan(require("./plan.json")).policy;
const byText = records.map((record) => evaluate(compiled, record).verdict);
const byPlan = records.map((record) => plan.evaluate(restored, record).verdict);
console.log([...byText, ...byPlan].join(" "));
