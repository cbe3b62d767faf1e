export { compileRule } from "./compile-rule.js";
export { describeRule } from "./describe-rule.js";
export { type ConstantTerm, findConstants } from "./find-constants.js";
export { listRuleNames } from "./list-rule-names.js";
export { prepareRule, type RuleFacts, type RuleJudge } from "./prepare-rule.js";
export type { RuleExpression, RuleType } from "./rule-expression.js";
export type { RuleScope } from "./rule-scope.js";
export type { RuleValue } from "./rule-value.js";
