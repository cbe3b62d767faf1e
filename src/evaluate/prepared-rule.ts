import type { RulePlan } from "../model/index.js";
import { describeRule, prepareRule, type RuleExpression, type RuleJudge } from "../rules/index.js";
import { type PreparedRequirement, prepareNamedRequirement } from "../steps/index.js";
import { type RuleWords, rememberWords } from "../words/index.js";

/** A rule ready to judge. */
export interface PreparedRule {
  readonly plan: RulePlan;
  readonly requirement: PreparedRequirement;
  readonly when: RuleJudge | undefined;
  readonly require: RuleJudge;
  /** What is required: the rule's own title, else the rule in words. */
  describe(words: RuleWords): string;
}

export function prepareCheckRule(plan: RulePlan): PreparedRule {
  return {
    plan,
    requirement: prepareNamedRequirement(plan.requirement, "rule", plan.rule),
    when: plan.when === undefined ? undefined : prepareRule(asExpression(plan.when)),
    require: prepareRule(asExpression(plan.require)),
    describe: rememberWords((words) => plan.title ?? describeRule(asExpression(plan.require), words)),
  };
}

function asExpression(value: unknown): RuleExpression {
  // Boundary: the plan's digest stands for the expressions that the compiler wrote into it.
  return value as RuleExpression;
}
