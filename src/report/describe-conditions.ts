import type { CheckPlan, Plan, StepPlan } from "../model/index.js";
import type { ReportWords } from "../words/index.js";
import { listScope } from "./describe-requirement.js";

/** When and of what a step is asked, and what it is read with, a condition each; none where it is asked of everyone, once. */
export function listStepConditions(step: StepPlan, { resolved }: ReportWords): readonly string[] {
  return [
    ...(step.each === undefined ? [] : [resolved.each(step.each)]),
    ...(step.whenFitted === undefined ? [] : [resolved.whereFitted(step.whenFitted)]),
    ...(step.instrument === undefined ? [] : [resolved.readWith(step.instrument)]),
    ...(step.after.length === 0 ? [] : [resolved.after(step.after.join(resolved.and))]),
    ...(step.kind === "confirm" && step.attestable ? [resolved.attestable] : []),
  ];
}

/** For whom and by whom a check is made, and what tells the order of its steps. */
export function listCheckConditions(check: CheckPlan, words: ReportWords): readonly string[] {
  const { resolved } = words;
  return [
    ...(check.subject === undefined ? [] : [resolved.ofSubject(check.subject.kind)]),
    ...listOnly(check.for, words),
    ...(check.competence === undefined ? [] : [resolved.by(check.competence.join(resolved.or))]),
    ...(check.order === "any" ? [] : [resolved.order[check.order]]),
  ];
}

/** What holds for every check of a policy. */
export function listPolicyConditions({ for: scope, gaps }: Plan, words: ReportWords): readonly string[] {
  return [...listOnly(scope, words), ...(gaps === "as-outside" ? [words.resolved.gapsAsOutside] : [])];
}

function listOnly(scope: CheckPlan["for"], words: ReportWords): readonly string[] {
  const said = listScope(scope, words);
  return said.length === 0 ? [] : [words.resolved.onlyFor(said.join(", "))];
}
