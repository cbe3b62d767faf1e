import type { RulePlan } from "../model/index.js";
import { describeRule, prepareRule, type RuleExpression, type RuleJudge } from "../rules/index.js";
import { type PreparedRequirement, prepareNamedRequirement } from "../steps/index.js";

/** A rule ready to judge. */
export interface PreparedRule {
  readonly plan: RulePlan;
  readonly requirement: PreparedRequirement;
  readonly when: RuleJudge | undefined;
  readonly require: RuleJudge;
  /** What is required, in words. */
  readonly words: string;
}

export function prepareCheckRule(plan: RulePlan): PreparedRule {
  return {
    plan,
    requirement: prepareNamedRequirement(plan.requirement, "rule", plan.rule),
    when: plan.when === undefined ? undefined : prepareRule(asExpression(plan.when)),
    require: prepareRule(asExpression(plan.require)),
    words: plan.title ?? describeRule(asExpression(plan.require)),
  };
}

function asExpression(value: unknown): RuleExpression {
  // Boundary: the plan's digest stands for the expressions that the compiler wrote into it.
  return value as RuleExpression;
}
