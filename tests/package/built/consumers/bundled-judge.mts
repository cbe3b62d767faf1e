// A typed ES module for `moduleResolution` bundler; what runs is what a bundler makes of it.
import { compilePolicy, evaluate, type Policy, type Verdict } from "tenbar";
import { german } from "tenbar/german";
import { evaluate as evaluateByPlan, restorePlan } from "tenbar/plan";
import data from "./case.json";
import saved from "./plan.json";

const compiled: Policy | undefined = compilePolicy(data.policy, { file: "case.yaml", words: german }).policy;
const restored = restorePlan(saved).policy;
if (compiled === undefined || restored === undefined) throw new Error("no policy");
const byText = data.records.map((record): Verdict | null => evaluate(compiled, record).verdict);
const byPlan = data.records.map((record): Verdict | null => evaluateByPlan(restored, record).verdict);
console.log([...byText, ...byPlan].join(" "));
