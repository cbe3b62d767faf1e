import type { CheckPlan, RequirementPlan, RulePlan, StepPlan } from "../model/index.js";
import { weighConsequence } from "../terms/index.js";
import type { AddDeparture } from "./departure.js";
import { relateTolerances } from "./relate-bands.js";
import { relateIntervals } from "./relate-intervals.js";
import { relateSteps } from "./relate-steps.js";
import { joinRelations, type Relation, relateAllowed, relateAsked, relateFixed, relateNumbers } from "./relation.js";

const REFER = weighConsequence("refer");

type OptionOfCheck = "scope" | "subject" | "former-names" | "competence";

/** Compares two checks of the same name: what they ask as a whole, then their steps, intervals and rules. */
export function compareCheck(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  const at = `/checks/${parent.check}`;
  const relate = (relation: Relation, kind: OptionOfCheck, key: string) =>
    add(relation, { what: { kind, of: parent.check }, here: `${at}/${key}`, there: `${at}/${key}` });
  relate(relateFixed(parent.for, child.for), "scope", "for");
  relate(relateFixed(parent.subject, child.subject), "subject", "subject");
  relate(relateFixed(parent.formerly, child.formerly), "former-names", "formerly");
  relate(relateCompetence(parent, child), "competence", "competence");
  compareOrder(parent, child, add);
  compareSteps(parent, child, add);
  compareIntervals(parent, child, add);
  compareRules(parent, child, add);
  if (!isAnchored(parent)) {
    const relation = relateFixed(parent.steps, child.steps);
    add(relation, {
      what: { kind: "unanchored", of: parent.check },
      here: `${at}/steps`,
      there: `${at}/steps`,
    });
  }
}

/** Compares the order that two checks of the same name want their steps in. */
export function compareOrder(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  const at = `/checks/${parent.check}/order`;
  add(relateOrder(parent, child), { what: { kind: "order", of: parent.check }, here: at, there: at });
}

/**
 * Whether a requirement that matters is asked of every record, and weighs as much whatever is wrong. Where none is, a record may
 * come to `refer` for nothing having been judged, and a step more may then improve it.
 */
function isAnchored({ steps, adoptions }: CheckPlan): boolean {
  const leftOut = adoptions.flatMap(({ step, accept, instead }) => (accept === undefined ? [step, instead] : []));
  return steps.some(
    (step) =>
      step.whenFitted === undefined &&
      !hasMildDefect(step) &&
      !leftOut.includes(step.step) &&
      step.requirements.some(({ name, consequence }) => name !== "apart" && weighConsequence(consequence) >= REFER),
  );
}

function relateCompetence({ competence: parent }: CheckPlan, { competence: child }: CheckPlan): Relation {
  if (parent === undefined) return child === undefined ? "same" : "tighter";
  return child === undefined ? "looser" : relateAllowed(parent, child);
}

/**
 * `after` counts under `any` alone, where it needs instants; a listed order implies it. What comes before or after a step that is
 * left out is a departure of that step.
 */
function relateOrder(parent: CheckPlan, child: CheckPlan): Relation {
  const pairsOf = ({ steps }: CheckPlan) => steps.flatMap(({ step, after }) => after.map((name) => [name, step]));
  const nameOf = (pairs: readonly string[][]) => pairs.map((pair) => pair.join(" "));
  const isKept = (pair: readonly string[]) => pair.every((name) => child.steps.some(({ step }) => step === name));
  if (parent.order === "any") {
    if (child.order === "any") return relateAsked(nameOf(pairsOf(parent).filter(isKept)), nameOf(pairsOf(child)));
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
      add("looser", { what: { kind: "step-left-out", name }, here, there, step: name });
      continue;
    }
    const here = locate(child, step.step);
    add(relateSteps(step, other), { what: { kind: "step", name }, here, there, step: name });
    compareRequirements(step, other, name, here, there, add);
  }
  for (const step of child.steps) {
    if (parent.steps.some((one) => one.step === step.step)) continue;
    const name = `${child.check}/${step.step}`;
    const here = locate(child, step.step);
    add(hasMildDefect(step) ? "cannot-compare" : "tighter", {
      what: { kind: "step-added", name },
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
      add("looser", { what: { kind: "requirement-left-out", name, requirement: requirement.name }, ...covers });
      continue;
    }
    const consequence = relateNumbers(weighConsequence(requirement.consequence), weighConsequence(other.consequence));
    add(consequence, { what: { kind: "consequence", name, requirement: requirement.name }, ...covers });
    const limit = relateTolerances(requirement.tolerance, other.tolerance);
    add(limit, {
      what: { kind: "limit", name, requirement: requirement.name },
      ...covers,
      here: pointToLimit(other, here),
      there: pointToLimit(requirement, there),
    });
  }
  for (const { name: own } of child.requirements) {
    if (parent.requirements.some((one) => one.name === own)) continue;
    add("tighter", {
      what: { kind: "requirement-added", name, requirement: own },
      step: name,
      requirement: own,
      here,
      there,
    });
  }
}

/** A limit stands in its tolerance, else in the step itself. */
function pointToLimit({ tolerance }: RequirementPlan, step: string): string {
  return tolerance?.name === undefined ? step : `/tolerances/${tolerance.name}`;
}

function compareIntervals(parent: CheckPlan, child: CheckPlan, add: AddDeparture): void {
  for (const one of parent.intervals) {
    const at = `/intervals/${one.interval}`;
    const other = child.intervals.find(({ interval }) => interval === one.interval);
    const relation = other === undefined ? "looser" : relateIntervals(one, other);
    const what = { kind: "interval", name: one.interval, of: parent.check } as const;
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
    add(relation, { what: { kind: "rule", name: one.rule, of: parent.check }, here: "/rules", there: "/rules" });
  }
}
