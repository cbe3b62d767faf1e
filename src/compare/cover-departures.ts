import type { AdoptionPlan, CheckPlan, Covering, IntervalPlan, Plan, StepPlan } from "../model/index.js";
import { digestPlan, nameAcceptedKey, nameAdoptedKey } from "../plan/index.js";
import { comparePlans } from "./compare-plans.js";
import { type CoveredPlans, standingOf } from "./covered-plans.js";
import { inheritCoverings } from "./inherit-coverings.js";
import { heavier, makeOtherwise, refersToChanged } from "./make-otherwise.js";
import { Overlay } from "./overlay.js";
import { relateIntervals } from "./relate-intervals.js";
import { isLoose } from "./relation.js";

/** The plan by which covering adoptions apply and lapse, and what could not be had. */
export interface CoverOutcome {
  readonly plan: Plan;
  /** Adoptions that cover nothing. */
  readonly idle: readonly Covering[];
  /** Adoptions of something in whose place nothing of the parent can stand. */
  readonly stuck: readonly Covering[];
  /** The same of adoptions of the parent's. */
  readonly stuckParents: readonly AdoptionPlan[];
}

type Done = "covered" | "stuck";

/**
 * Adds to a plan what stands wherever a covering adoption does not apply: the parent's limit, step or interval. What the child
 * states tighter stays as it is.
 */
export function coverDepartures(plans: CoveredPlans, coverings: readonly Covering[]): CoverOutcome {
  const overlay = new Overlay(plans.child);
  const unknown = listUnknownSteps(plans);
  const states = coverings.map((covering) => {
    const done = plans.parent.checks.flatMap((check): Done[] => {
      const own = plans.child.checks.find((one) => one.check === check.check);
      if (own === undefined) return [];
      return [
        ...check.steps.flatMap((step) => coverStep(covering, check, step, own, plans, overlay) ?? []),
        ...check.intervals.flatMap((interval) => coverInterval(covering, interval, own, plans, overlay) ?? []),
      ];
    });
    if (covering.requirement === undefined && unknown.includes(covering.step)) done.push("stuck");
    return { covering, done };
  });
  const inherited = inheritCoverings(plans, coverings, overlay);
  const { digest: _digest, positions: _positions, ...rest } = plans.child;
  const plan = { ...rest, checks: [...overlay.listChecks()] };
  return {
    plan: { ...plan, digest: digestPlan(plan), positions: overlay.positions },
    idle: states
      .filter(({ covering, done }) => done.length === 0 && !inherited.taken.has(covering.id))
      .map(nameCovering),
    stuck: states.filter(({ done }) => done.includes("stuck")).map(nameCovering),
    stuckParents: inherited.stuck,
  };
}

/** Steps of the child that may weigh less than what is recorded for a step that the parent does not know. */
function listUnknownSteps({ parent, child }: CoveredPlans): readonly (string | undefined)[] {
  const known = parent.checks.flatMap(({ check, steps }) => steps.map(({ step }) => `${check}/${step}`));
  return comparePlans(parent, child)
    .filter(({ relation, step }) => isLoose(relation) && step !== undefined && !known.includes(step))
    .map(({ step }) => step);
}

function nameCovering({ covering }: { readonly covering: Covering }): Covering {
  return covering;
}

function coverStep(
  covering: Covering,
  check: CheckPlan,
  step: StepPlan,
  own: CheckPlan,
  plans: CoveredPlans,
  overlay: Overlay,
): Done | undefined {
  const isNamed = covering.step === `${check.check}/${step.step}`;
  if (!isNamed && covering.tolerance === undefined) return undefined;
  const other = own.steps.find((one) => one.step === step.step);
  if (other === undefined) return isNamed ? coverLostStep(covering, check, step, plans, overlay) : undefined;
  const otherwise = makeOtherwise(step, other, covering);
  if (otherwise === undefined) return undefined;
  if (
    step.kind !== other.kind ||
    listNames(step) !== listNames(other) ||
    refersToChanged(otherwise.step, plans.parent, plans.child)
  )
    return "stuck";
  const requirements = [...otherwise.requirements];
  overlay.findCheck(check.check)?.adoptions.push({
    ...standingOf(covering),
    step: step.step,
    requirements,
    generation: plans.generation,
    otherwise: otherwise.step,
  });
  for (const name of requirements) {
    const key = `${check.check}/${step.step}/${name}`;
    const find = (one: StepPlan) => one.requirements.find((asked) => asked.name === name);
    const isOwn = find(otherwise.step)?.tolerance !== find(step)?.tolerance;
    // Why: where only the consequence is milder, the policy's own limit goes on standing, and stands where it is stated.
    overlay.copyPosition(isOwn ? plans.child : plans.parent, key, nameAdoptedKey(key, covering.id));
  }
  return "covered";
}

/** Former names say where old evidence stands, which no limit can take back. */
function listNames(step: StepPlan): string {
  return JSON.stringify([
    step.formerly,
    step.kind === "match"
      ? step.places.flatMap(({ place, formerly }) => (formerly.length === 0 ? [] : [place, formerly]))
      : [],
  ]);
}

/** A step that the child leaves out is asked again wherever the adoption does not apply. */
function coverLostStep(
  covering: Covering,
  check: CheckPlan,
  step: StepPlan,
  plans: CoveredPlans,
  overlay: Overlay,
): Done | undefined {
  if (covering.requirement !== undefined) return undefined;
  if (refersToChanged(step, plans.parent, plans.child) || !overlay.insertStep(check, step)) return "stuck";
  const adoptions = overlay.findCheck(check.check)?.adoptions ?? [];
  // Why: what stands without the order is the parent's step with the parent's own orders about it.
  for (const adoption of check.adoptions.filter((one) => one.step === step.step && plans.inherited.includes(one.id))) {
    if (adoptions.some(({ id, step: named }) => id === adoption.id && named === step.step)) continue;
    adoptions.push(adoption);
    for (const { name } of step.requirements) {
      const key = `${check.check}/${step.step}/${name}`;
      for (const one of [nameAdoptedKey(key, adoption.id), nameAcceptedKey(key, adoption.id)]) {
        overlay.copyPosition(plans.parent, one);
      }
    }
  }
  adoptions.push({ ...standingOf(covering), step: step.step });
  for (const { name } of step.requirements) {
    overlay.copyPosition(plans.parent, `${check.check}/${step.step}/${name}`);
  }
  return "covered";
}

function coverInterval(
  covering: Covering,
  interval: IntervalPlan,
  own: CheckPlan,
  plans: CoveredPlans,
  overlay: Overlay,
): Done | undefined {
  if (interval.interval !== covering.interval) return undefined;
  const check = overlay.findCheck(own.check);
  const other = own.intervals.find((one) => one.interval === interval.interval);
  if (other !== undefined && !isLoose(relateIntervals(interval, other))) return undefined;
  if (refersToChanged(interval, plans.parent, plans.child)) return "stuck";
  const key = `interval/${interval.interval}`;
  const standing = standingOf(covering);
  if (other === undefined) {
    const here = check?.intervals.find((one) => one.interval === interval.interval);
    // Why: what stands without the order is the parent's interval with the parent's own orders about it.
    const inherited = interval.adoptions.filter(({ id }) => plans.inherited.includes(id));
    if (here === undefined) check?.intervals.push({ ...interval, adoptions: [...inherited, standing] });
    else here.adoptions.push(standing);
    overlay.copyPosition(plans.parent, key);
    return "covered";
  }
  const { adoptions: _adoptions, ...parent } = interval;
  const consequence = heavier(interval.requirement, other.requirement).consequence;
  check?.intervals
    .find((one) => one.interval === interval.interval)
    ?.adoptions.push({
      ...standing,
      generation: plans.generation,
      otherwise: { ...parent, requirement: { ...parent.requirement, consequence } },
    });
  overlay.copyPosition(plans.parent, key, nameAdoptedKey(key, covering.id));
  return "covered";
}
