import type { CheckPlan, IntervalPlan, Plan, RulePlan } from "../model/index.js";
import { nameAcceptedKey, nameAdoptedKey } from "../plan/index.js";
import { describeRule, type RuleExpression } from "../rules/index.js";
import { type AssessmentWords, ENGLISH_ASSESSMENTS } from "../words/index.js";
import { listCheckConditions, listPolicyConditions, listStepConditions } from "./describe-conditions.js";
import {
  describeBasisOf,
  describeBounds,
  describeRequirement,
  describeSpot,
  listScope,
  type PolicyWords,
} from "./describe-requirement.js";
import { createPaint, type ReportOptions, wordsOf } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

/**
 * The policy as it stands after `extends`: checks, steps, requirements, limits, and where each is stated; beside each adoption what
 * stands where it does not apply.
 *
 * @param assessment the language of limits and rules; English where none is given
 */
export function renderResolved(
  plan: Plan,
  options: ReportOptions,
  assessment: Pick<AssessmentWords, "limits" | "rules"> = ENGLISH_ASSESSMENTS,
): string {
  const paint = createPaint(options);
  const words = { report: wordsOf(options), assessment };
  const { id, version, title } = plan.policy;
  const head = (text: string) => wrapText(makePrintable(text), options.width, "").map((line) => paint("strong", line));
  const note = (parts: readonly string[]) => wrapText(makePrintable(parts.join("; ")), options.width, "  ", "  ");
  const lines = [...head(`${id} ${version}, ${title}`), ...note(listPolicyConditions(plan, words.report))];
  for (const check of plan.checks) {
    lines.push("", ...head(`${check.check}${check.title === undefined ? "" : `: ${check.title}`}`));
    lines.push(...note(listCheckConditions(check, words.report)));
    for (const step of check.steps) {
      const conditions = [`${step.step} (${step.kind})`, ...listStepConditions(step, words.report)];
      lines.push(...wrapText(makePrintable(conditions.join(", ")), options.width, "      ", "  "));
      for (const requirement of step.requirements) {
        const key = `${check.check}/${step.step}/${requirement.name}`;
        const text = describeRequirement(requirement, step, key, plan, words);
        lines.push(...wrapText(text, options.width, "      ", "    "));
      }
    }
    const others = [
      ...check.intervals.map(
        (one) => `${describeInterval(one, words)}${describeSpot(`interval/${one.interval}`, plan)}`,
      ),
      ...check.rules.map((one) => `${describeWholeRule(one, words)}${describeSpot(`rule/${one.rule}`, plan)}`),
      ...check.adoptions.map((one) => describeStepAdoption(one, check, plan, words)),
      ...check.intervals.flatMap((one) => describeIntervalAdoptions(one, plan, words)),
    ];
    lines.push(...others.flatMap((line) => wrapText(makePrintable(`  ${line}`), options.width, "    ", "  ")));
  }
  return `${lines.join("\n")}\n`;
}

type BareInterval = Omit<IntervalPlan, "adoptions">;

function describeInterval(
  { interval, every, for: scope, forbids, requirement }: BareInterval,
  words: PolicyWords,
): string {
  const { resolved, consequences } = words.report;
  const said = `${resolved.interval(interval, every)}, ${consequences[requirement.consequence]}`;
  const forbidden = forbids === undefined ? "" : resolved.forbids[forbids];
  return `${said}${describeScope(scope, words)}${forbidden}${describeBasisOf(requirement, words)}`;
}

function describeWholeRule({ rule, title, for: scope, when, require, requirement }: RulePlan, words: PolicyWords) {
  const { resolved, consequences } = words.report;
  const say = (term: unknown) => describeRule(asExpression(term), words.assessment.rules);
  const named = `${resolved.rule(rule)}${title === undefined ? "" : `, ${title}`}`;
  const condition = when === undefined ? "" : resolved.when(say(when));
  const said = `${named}: ${consequences[requirement.consequence]}, ${say(require)}${condition}`;
  return `${said}${describeScope(scope, words)}${describeBasisOf(requirement, words)}`;
}

function asExpression(value: unknown): RuleExpression {
  // Boundary: the plan's digest stands for the expressions that the compiler wrote into it.
  return value as RuleExpression;
}

function describeScope(scope: IntervalPlan["for"], { report }: PolicyWords): string {
  const said = listScope(scope, report);
  return said.length === 0 ? "" : `, ${report.resolved.onlyFor(said.join(", "))}`;
}

/** What stands while an adoption applies, for which records, and what stands else. */
function describeStepAdoption(
  { id, step, requirements, from, until, order, only, accept, instead, otherwise }: CheckPlan["adoptions"][number],
  { check, steps }: CheckPlan,
  plan: Plan,
  words: PolicyWords,
): string {
  const { resolved } = words.report;
  const keyOf = (name: string) => nameAdoptedKey(`${check}/${step}/${name}`, id);
  const named = [step, ...(requirements ?? [])].join(" ");
  const said = `${resolved.adopted(id, named, from, until, order)}`;
  const scope = describeScope(only, words);
  if (otherwise !== undefined) {
    const parents = otherwise.requirements
      .filter(({ name }) => requirements === undefined || requirements.includes(name))
      .map((one) => describeRequirement(one, otherwise, keyOf(one.name), plan, words));
    const present = steps.find((one) => one.step === step);
    const conditions = listStepConditions(otherwise, words.report);
    const isSame = present !== undefined && listStepConditions(present, words.report).join() === conditions.join();
    const asked = conditions.length === 0 ? resolved.always : conditions.join(", ");
    const told = isSame ? parents : [asked, ...parents];
    return `${said}${scope}${resolved.elseAsParent}: ${told.join("; ")}`;
  }
  if (accept === undefined)
    return `${said}${instead === undefined ? resolved.omits : resolved.instead(instead)}${scope}`;
  const asked = steps.find((one) => one.step === step)?.requirements ?? [];
  const [limited] = asked.filter(
    ({ name, tolerance }) => tolerance !== undefined && (requirements === undefined || requirements.includes(name)),
  );
  const spot = limited === undefined ? "" : describeSpot(nameAcceptedKey(`${check}/${step}/${limited.name}`, id), plan);
  return `${said}${resolved.accepts(describeBounds(accept, words.report))}${scope}${spot}`;
}

function describeIntervalAdoptions(
  { interval, adoptions }: IntervalPlan,
  plan: Plan,
  words: PolicyWords,
): readonly string[] {
  const { resolved, report } = words.report;
  return adoptions.map(({ id, from, until, order, only, otherwise }) => {
    const said = resolved.adopted(id, report.interval(interval), from, until, order);
    const scope = describeScope(only, words);
    if (otherwise === undefined) return `${said}${resolved.omits}${scope}`;
    const spot = describeSpot(nameAdoptedKey(`interval/${interval}`, id), plan);
    return `${said}${scope}${resolved.elseAsParent}: ${describeInterval(otherwise, words)}${spot}`;
  });
}
