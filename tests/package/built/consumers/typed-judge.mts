// A typed ES module for `moduleResolution` node16 and nodenext, compiled and run.
import { compilePolicy, evaluate, type Policy, type Verdict } from "tenbar";
import { german } from "tenbar/german";
import { loadPolicy } from "tenbar/node";
import { evaluate as evaluateByPlan, restorePlan } from "tenbar/plan";

import data = require("./case.json");
import saved = require("./plan.json");

const compiled: Policy | undefined = compilePolicy(data.policy, { file: "case.yaml", words: german }).policy;
const restored = restorePlan(saved).policy;
if (compiled === undefined || restored === undefined || typeof loadPolicy !== "function") throw new Error("no policy");
const byText = data.records.map((record): Verdict | null => evaluate(compiled, record).verdict);
const byPlan = data.records.map((record): Verdict | null => evaluateByPlan(restored, record).verdict);
console.log([...byText, ...byPlan].join(" "));
