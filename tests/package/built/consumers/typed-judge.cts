// A typed CommonJS module for `moduleResolution` node16 and nodenext, compiled and run.
import tenbar = require("tenbar");
import german = require("tenbar/german");
import node = require("tenbar/node");
import plan = require("tenbar/plan");
import data = require("./case.json");
import saved = require("./plan.json");

const options: tenbar.CompileOptions = { file: "case.yaml", words: german.german };
const compiled: tenbar.Policy | undefined = tenbar.compilePolicy(data.policy, options).policy;
const restored = plan.restorePlan(saved).policy;
if (compiled === undefined || restored === undefined || typeof node.loadPolicy !== "function")
  throw new Error("no policy");
const byText = data.records.map((record): tenbar.Verdict | null => tenbar.evaluate(compiled, record).verdict);
const byPlan = data.records.map((record): tenbar.Verdict | null => plan.evaluate(restored, record).verdict);
console.log([...byText, ...byPlan].join(" "));
