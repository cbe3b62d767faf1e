import tenbar = require("tenbar");
import german = require("tenbar/german");
import node = require("tenbar/node");
import plan = require("tenbar/plan");

const { policy } = tenbar.compilePolicy("", { file: "case.yaml" });
export const verdict: "meets" | "refer" | "withdraw" | null | undefined =
  policy === undefined ? undefined : tenbar.evaluate(policy, null).verdict;
export const names: readonly unknown[] = [plan.evaluate, node.loadPolicy, german.german.language];
