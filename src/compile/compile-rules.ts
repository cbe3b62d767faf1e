import type { CheckPlan, PolicyDocument, RulePlan } from "../model/index.js";
import { compileRule, findConstants, type RuleScope, type RuleType } from "../rules/index.js";
import { listSlots, MEMBER_SLOTS } from "../steps/index.js";
import { findNearest } from "../terms/index.js";
import { compileScope } from "./compile-scope.js";
import type { PlanContext } from "./plan-context.js";

type PolicyRule = NonNullable<PolicyDocument["rules"]>[number];

/** Adds to each check the rules that name it, or that name no check. */
export function compileRules(checks: readonly CheckPlan[], context: PlanContext): void {
  const { diagnostics, resolved, positions } = context;
  const seen = new Set<string>();
  for (const [index, rule] of (resolved.document.rules ?? []).entries()) {
    const pointer = `/rules/${index}`;
    if (seen.has(rule.rule)) {
      diagnostics.report("plan/duplicate-name", resolved.place(`${pointer}/rule`), { thing: "rule", name: rule.rule });
    }
    seen.add(rule.rule);
    positions.add(`rule/${rule.rule}`, resolved.place(`${pointer}/rule`, "key"), resolved.place(`${pointer}/require`));
    for (const check of findChecks(rule, pointer, checks, context)) {
      const plan = compileCheckRule(rule, pointer, check, context);
      if (plan !== undefined) check.rules.push(plan);
    }
  }
}

function findChecks(
  rule: PolicyRule,
  pointer: string,
  checks: readonly CheckPlan[],
  { diagnostics, resolved }: PlanContext,
): readonly CheckPlan[] {
  if (rule.checks === undefined) return checks;
  const known = checks.map(({ check }) => check);
  return rule.checks.flatMap((name, index) => {
    const found = checks.find(({ check }) => check === name);
    if (found !== undefined) return [found];
    const place = resolved.place(`${pointer}/checks/${index}`);
    diagnostics.report("plan/unknown-name", place, { thing: "check", name, known, nearest: findNearest(name, known) });
    return [];
  });
}

function compileCheckRule(
  rule: PolicyRule,
  pointer: string,
  check: CheckPlan,
  context: PlanContext,
): RulePlan | undefined {
  const scope = listNames(check, context);
  const when = rule.when === undefined ? undefined : compileTerm(rule.when, `${pointer}/when`, check, scope, context);
  const require = compileTerm(rule.require, `${pointer}/require`, check, scope, context);
  const asked = compileScope(rule.for, `${pointer}/for`, context);
  if (require === undefined || (rule.when !== undefined && when === undefined)) return undefined;
  return {
    rule: rule.rule,
    ...(rule.title === undefined ? {} : { title: rule.title }),
    ...(asked === undefined ? {} : { for: asked }),
    ...(when === undefined ? {} : { when }),
    require,
    requirement: { name: "rule", consequence: rule.consequence ?? "withdraw", basis: rule.basis },
  };
}

function compileTerm(term: unknown, pointer: string, check: CheckPlan, scope: RuleScope, context: PlanContext) {
  const { diagnostics, resolved } = context;
  const compiled = compileRule(term, scope, (code, below, params) => {
    // Why: a fact or a step that is stated and could not be compiled has been reported where it stands.
    if (code === "rule/unknown-name" && "name" in params && isStated(String(params.name), check, context)) return;
    diagnostics.report(code, resolved.place(`${pointer}${below}`), params);
  });
  if (compiled === undefined) return undefined;
  const constants = findConstants(term, scope);
  for (const { pointer: below, literal, name } of constants) {
    diagnostics.report("rule/reads-nothing", resolved.place(`${pointer}${below}`), { literal, nearest: name });
  }
  return constants.length > 0 ? undefined : compiled;
}

function isStated(name: string, { check, steps }: CheckPlan, { resolved, diagnostics }: PlanContext): boolean {
  if (!diagnostics.hasErrors) return false;
  const [first = ""] = name.split(".");
  const stated = resolved.document.checks?.[check]?.steps?.some(({ step }) => step === first) === true;
  return Object.hasOwn(resolved.document.facts ?? {}, name) || (stated && !steps.some(({ step }) => step === first));
}

/** Every name that a rule of the check may take: facts, slots of its steps, steps asked of each, the cylinders. */
function listNames(check: CheckPlan, { factTypes }: PlanContext): RuleScope {
  const types = new Map<string, RuleType>(factTypes);
  types.set("subject.cylinders", { kind: "list", fields: MEMBER_SLOTS });
  for (const step of check.steps) {
    const slots = listSlots(step);
    if (step.each !== undefined) {
      types.set(step.step, { kind: "list", fields: { ...slots, of: { kind: "text" } } });
      continue;
    }
    for (const [slot, type] of Object.entries(slots)) types.set(`${step.step}.${slot}`, type);
  }
  return { types, nearest: findNearest };
}
