import type { CheckPlan, IntervalPlan, RequirementPlan, RulePlan, StepPlan } from "../model/index.js";
import { weighConsequence } from "../terms/index.js";
import type { AddDeparture } from "./departure.js";
import { relateTolerances } from "./relate-bands.js";
import { relateSpans, relateSteps } from "./relate-steps.js";
import { joinRelations, type Relation, relateAllowed, relateAsked, relateFixed, relateNumbers } from "./relation.js";

const REFER = weighConsequence("refer");

/** Compares two checks of the same name: what they ask as a whole, then their steps, intervals and rules. */
export function compareCheck(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  const at = `/checks/${parent.check}`;
  const word = `of the check \`${parent.check}\``;
  const relate = (relation: Relation, what: string, key: string) =>
    add(relation, { what: `${what} ${word}`, here: `${at}/${key}`, there: `${at}/${key}` });
  relate(relateFixed(parent.for, child.for), "the scope", "for");
  relate(relateFixed(parent.subject, child.subject), "the subject", "subject");
  relate(relateFixed(parent.formerly, child.formerly), "the former names", "formerly");
  relate(relateCompetence(parent, child), "the competence", "competence");
  relate(relateOrder(parent, child), "the order", "order");
  compareSteps(parent, child, add);
  compareIntervals(parent, child, add);
  compareRules(parent, child, add);
  if (!isAnchored(parent)) {
    const relation = relateFixed(parent.steps, child.steps);
    add(relation, {
      what: `a check of which nothing is always judged, ${word},`,
      here: `${at}/steps`,
      there: `${at}/steps`,
    });
  }
}

/**
 * Whether a requirement that matters is asked of every record. Where none is, a record may come to `refer` for nothing having
 * been judged, and a step more may then improve it.
 */
function isAnchored({ steps }: CheckPlan): boolean {
  return steps.some(
    ({ whenFitted, requirements }) =>
      whenFitted === undefined &&
      requirements.some(({ name, consequence }) => name !== "apart" && weighConsequence(consequence) >= REFER),
  );
}

function relateCompetence({ competence: parent }: CheckPlan, { competence: child }: CheckPlan): Relation {
  if (parent === undefined) return child === undefined ? "same" : "tighter";
  return child === undefined ? "looser" : relateAllowed(parent, child);
}

/** `after` counts under `any` alone, where it needs instants; a listed order implies it. */
function relateOrder(parent: CheckPlan, child: CheckPlan): Relation {
  const pairsOf = ({ steps }: CheckPlan) => steps.flatMap(({ step, after }) => after.map((name) => `${name} ${step}`));
  if (parent.order === "any") {
    if (child.order === "any") return relateAsked(pairsOf(parent), pairsOf(child));
    return pairsOf(parent).length === 0 ? "tighter" : "cannot-compare";
  }
  if (child.order !== parent.order)
    return child.order === "any" && pairsOf(child).length === 0 ? "looser" : "cannot-compare";
  const shared = ({ steps }: CheckPlan, other: CheckPlan) =>
    steps.map(({ step }) => step).filter((step) => other.steps.some((one) => one.step === step));
  return relateFixed(shared(parent, child), shared(child, parent));
}

function compareSteps(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  const locate = (check: CheckPlan, step: string) =>
    `/checks/${check.check}/steps/${check.steps.findIndex((one) => one.step === step)}`;
  for (const step of parent.steps) {
    const name = `${parent.check}/${step.step}`;
    const there = locate(parent, step.step);
    const other = child.steps.find((one) => one.step === step.step);
    if (other === undefined) {
      const here = `/checks/${child.check}/without`;
      add("looser", { what: `the step \`${name}\`, which is left out,`, here, there, step: name });
      continue;
    }
    const here = locate(child, step.step);
    add(relateSteps(step, other), { what: `the step \`${name}\``, here, there, step: name });
    compareRequirements(step, other, name, here, there, add);
  }
  for (const step of child.steps) {
    if (parent.steps.some((one) => one.step === step.step)) continue;
    const name = `${child.check}/${step.step}`;
    const here = locate(child, step.step);
    add(hasMildDefect(step) ? "cannot-compare" : "tighter", {
      what: `the step \`${name}\`, which the parent does not have,`,
      here,
      there: `/checks/${parent.check}`,
      step: name,
    });
  }
}

/** Why: a defect on a step that a policy does not know weighs `refer`; one that a new step names may weigh less. */
function hasMildDefect(step: StepPlan): boolean {
  return step.kind === "confirm" && step.defects.some(({ consequence }) => weighConsequence(consequence) < REFER);
}

function compareRequirements(
  parent: StepPlan,
  child: StepPlan,
  name: string,
  here: string,
  there: string,
  add: AddDeparture,
): void {
  for (const requirement of parent.requirements) {
    const other = child.requirements.find((one) => one.name === requirement.name);
    const tolerances = [requirement.tolerance?.name, other?.tolerance?.name].filter((one) => one !== undefined);
    const covers = { step: name, requirement: requirement.name, tolerances, here, there };
    if (other === undefined) {
      add("looser", { what: `the \`${requirement.name}\` of \`${name}\`, which is left out,`, ...covers });
      continue;
    }
    const consequence = relateNumbers(weighConsequence(requirement.consequence), weighConsequence(other.consequence));
    add(consequence, { what: `the consequence of \`${name}\` \`${requirement.name}\``, ...covers });
    const limit = relateTolerances(requirement.tolerance, other.tolerance);
    add(limit, {
      what: `the limit of \`${name}\` \`${requirement.name}\``,
      ...covers,
      here: pointToLimit(other, here),
      there: pointToLimit(requirement, there),
    });
  }
  for (const { name: own } of child.requirements) {
    if (parent.requirements.some((one) => one.name === own)) continue;
    add("tighter", { what: `the \`${own}\` of \`${name}\`, which is new,`, step: name, requirement: own, here, there });
  }
}

/** A limit stands in its tolerance, else in the step itself. */
function pointToLimit({ tolerance }: RequirementPlan, step: string): string {
  return tolerance?.name === undefined ? step : `/tolerances/${tolerance.name}`;
}

function compareIntervals(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  const fixed = ({ of, for: scope, counted, date }: IntervalPlan) => [of, scope, counted, date];
  for (const one of parent.intervals) {
    const at = `/intervals/${one.interval}`;
    const other = child.intervals.find(({ interval }) => interval === one.interval);
    const relation =
      other === undefined
        ? "looser"
        : joinRelations([
            relateFixed(fixed(one), fixed(other)),
            relateSpans(one.every, other.every),
            relateNumbers(
              weighConsequence(one.requirement.consequence),
              weighConsequence(other.requirement.consequence),
            ),
          ]);
    const what = `the interval \`${one.interval}\` of \`${parent.check}\``;
    add(relation, { what, here: at, there: at, interval: one.interval });
  }
}

function compareRules(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  const fixed = ({ for: scope, when, require }: RulePlan) => [scope, when, require];
  for (const one of parent.rules) {
    const other = child.rules.find(({ rule }) => rule === one.rule);
    const relation =
      other === undefined
        ? "looser"
        : joinRelations([
            relateFixed(fixed(one), fixed(other)),
            relateNumbers(
              weighConsequence(one.requirement.consequence),
              weighConsequence(other.requirement.consequence),
            ),
          ]);
    add(relation, { what: `the rule \`${one.rule}\` of \`${parent.check}\``, here: "/rules", there: "/rules" });
  }
}
