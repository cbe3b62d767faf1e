import type { AdoptionPlan, AdoptionStanding, CheckPlan, Covering, IntervalPlan, StepPlan } from "../model/index.js";
import { nameAdoptedKey } from "../plan/index.js";
import { type CoveredPlans, standingOf } from "./covered-plans.js";
import { isDeparted } from "./make-otherwise.js";
import type { Overlay } from "./overlay.js";
import { relateSteps } from "./relate-steps.js";
import { isLoose } from "./relation.js";

/** What came of the adoptions by which the parent covers what it states looser. */
export interface InheritedCoverings {
  /** The ids of those that were taken over. */
  readonly taken: ReadonlySet<string>;
  /** Those of a step that cannot be asked again, since the child gives its name, or a former one, to another. */
  readonly stuck: readonly AdoptionPlan[];
}

/**
 * Takes over what the parent covers towards its own parent, so that the looser limit lapses in the child too.
 *
 * Where the child states an adoption of the same id that covers as well, its dates stand; else those of the parent.
 */
export function inheritCoverings(
  plans: CoveredPlans,
  coverings: readonly Covering[],
  overlay: Overlay,
): InheritedCoverings {
  const { parent, parentCovered, child } = plans;
  const taken = new Set<string>();
  const stuck: AdoptionPlan[] = [];
  for (const check of parentCovered.checks) {
    const own = child.checks.find((one) => one.check === check.check);
    const stated = parent.checks.find((one) => one.check === check.check);
    if (own === undefined || stated === undefined) continue;
    for (const adoption of check.adoptions.filter((one) => isAdded(one, stated))) {
      const done = inheritStep(adoption, check, own, coverings, plans, overlay);
      if (done === "covered") taken.add(adoption.id);
      if (done === "stuck") stuck.push(adoption);
    }
    for (const interval of check.intervals) {
      const before = stated.intervals.find((one) => one.interval === interval.interval);
      for (const id of inheritInterval(interval, before, own, coverings, plans, overlay)) taken.add(id);
    }
  }
  return { taken, stuck };
}

/** Whether an adoption was added for a covering, not stated with limits of its own. */
function isAdded({ id, step, otherwise }: AdoptionPlan, stated: CheckPlan): boolean {
  return otherwise !== undefined || !stated.adoptions.some((one) => one.id === id && one.step === step);
}

/** What an inherited adoption covers, as an adoption of the child's may name it. */
interface Inherited {
  readonly step?: string;
  readonly interval?: string;
  readonly requirement?: string;
  readonly tolerances?: readonly (string | undefined)[];
}

/** When an adoption applies that the child states again for the same thing; undefined where it does not. */
function findStanding(id: string, thing: Inherited, coverings: readonly Covering[]): AdoptionStanding | undefined {
  const covering = coverings.find((one) => one.id === id && isSame(one, thing));
  return covering === undefined ? undefined : standingOf(covering);
}

/** Why its end and its scope go first: one that was renewed to last, or for all, is not to keep those of the parent. */
function renewStanding<A extends AdoptionStanding>(
  adoption: A,
  again: AdoptionStanding | undefined,
): Omit<A, "until" | "only"> & AdoptionStanding {
  const { until: _until, only: _only, ...rest } = adoption;
  return { ...rest, ...(again ?? standingOf(adoption)) };
}

/** Why so narrow: an id used again for something else must not prolong what it does not name. */
function isSame({ step, requirement, tolerance, interval }: Covering, thing: Inherited): boolean {
  if (tolerance !== undefined) return thing.tolerances?.includes(tolerance) === true;
  if (interval !== undefined) return interval === thing.interval;
  return step === thing.step && (requirement === undefined || requirement === thing.requirement);
}

/** An adoption of the parent's with the dates that stand, which may differ by requirement. */
function renewAdoption(
  adoption: AdoptionPlan,
  check: string,
  stated: StepPlan,
  own: StepPlan | undefined,
  coverings: readonly Covering[],
): readonly AdoptionPlan[] {
  const { id, step: name, otherwise, requirements } = adoption;
  const step = `${check}/${name}`;
  if (requirements === undefined) return [renewStanding(adoption, findStanding(id, { step }, coverings))];
  const toleranceOf = (one: StepPlan | undefined, requirement: string) =>
    one?.requirements.find((asked) => asked.name === requirement)?.tolerance?.name;
  const departed = requirements.filter((name) => otherwise === undefined || isDepartedFrom(otherwise, own, name));
  const found = departed.map((requirement) => {
    const tolerances = [toleranceOf(otherwise, requirement), toleranceOf(stated, requirement)];
    return { requirement, standing: findStanding(id, { step, requirement, tolerances }, coverings) };
  });
  const isRenewed = ({ standing }: (typeof found)[number]) => standing !== undefined;
  return [found.filter(isRenewed), found.filter((one) => !isRenewed(one))].flatMap((part) => {
    const [first] = part;
    if (first === undefined) return [];
    const names = part.map(({ requirement }) => requirement);
    const narrowed = otherwise === undefined ? {} : { otherwise: narrowTo(names, requirements, otherwise, stated) };
    return [{ ...renewStanding(adoption, first.standing), requirements: names, ...narrowed }];
  });
}

/** Whether the child's own step lets more pass than the one that stands without an order; else the order has nothing to cover. */
function isDepartedFrom(otherwise: StepPlan, own: StepPlan | undefined, name: string): boolean {
  const theirs = otherwise.requirements.find((one) => one.name === name);
  const ours = own?.requirements.find((one) => one.name === name);
  if (own === undefined || theirs === undefined || ours === undefined) return true;
  return isLoose(relateSteps(otherwise, own)) || isDeparted(theirs, ours);
}

/** What stands without one part of an order, where the rest of it may go on: the policy's own limits for that rest. */
function narrowTo(
  names: readonly string[],
  covered: readonly string[],
  otherwise: StepPlan,
  stated: StepPlan,
): StepPlan {
  const requirements = otherwise.requirements.map((one) =>
    names.includes(one.name) || !covered.includes(one.name)
      ? one
      : (stated.requirements.find(({ name }) => name === one.name) ?? one),
  );
  return { ...otherwise, requirements };
}

function inheritStep(
  adoption: AdoptionPlan,
  check: CheckPlan,
  own: CheckPlan,
  coverings: readonly Covering[],
  { parentCovered, generation }: CoveredPlans,
  overlay: Overlay,
): "covered" | "stuck" | undefined {
  const { step: name, otherwise } = adoption;
  const here = overlay.findCheck(own.check);
  const isHere = here?.steps.some(({ step }) => step === name) === true;
  const step = check.steps.find((one) => one.step === name);
  const ownStep = own.steps.find((one) => one.step === name);
  if (here === undefined || step === undefined) return undefined;
  if (!isHere && otherwise !== undefined) return undefined;
  if (!isHere && !overlay.insertStep(check, step)) return "stuck";
  // Why: a step that the parent left out, and the child states again, is the ancestor's wherever the order does not apply.
  const stands =
    ownStep !== undefined && otherwise === undefined ? { generation: generation - 1, otherwise: step } : {};
  const renewed = renewAdoption(adoption, check.check, step, ownStep, coverings);
  if (renewed.length === 0) return undefined;
  here.adoptions.push(...renewed.map((one) => ({ ...one, ...stands })));
  for (const requirement of otherwise?.requirements ?? step.requirements) {
    const key = `${check.check}/${name}/${requirement.name}`;
    if (otherwise !== undefined) overlay.copyPosition(parentCovered, nameAdoptedKey(key, adoption.id));
    else overlay.copyPosition(parentCovered, key, ownStep !== undefined ? nameAdoptedKey(key, adoption.id) : key);
  }
  return "covered";
}

function inheritInterval(
  interval: IntervalPlan,
  before: IntervalPlan | undefined,
  own: CheckPlan,
  coverings: readonly Covering[],
  { parentCovered, generation }: CoveredPlans,
  overlay: Overlay,
): readonly string[] {
  const check = overlay.findCheck(own.check);
  const here = check?.intervals.find((one) => one.interval === interval.interval);
  const added = interval.adoptions.filter(({ otherwise }) => otherwise !== undefined || before === undefined);
  if (check === undefined || added.length === 0) return [];
  const key = `interval/${interval.interval}`;
  const { adoptions: _adoptions, ...bare } = interval;
  const thing = { interval: interval.interval };
  const adoptions = added.map((one) => renewStanding(one, findStanding(one.id, thing, coverings)));
  if (here === undefined) {
    // Why: an interval that the child leaves out, and no order covers, is a departure of its own.
    if (before !== undefined) return [];
    check.intervals.push({ ...interval, adoptions });
    overlay.copyPosition(parentCovered, key);
    return added.map(({ id }) => id);
  }
  for (const one of adoptions) {
    here.adoptions.push(one.otherwise === undefined ? { ...one, generation: generation - 1, otherwise: bare } : one);
    const adopted = nameAdoptedKey(key, one.id);
    overlay.copyPosition(parentCovered, one.otherwise === undefined ? key : adopted, adopted);
  }
  return added.map(({ id }) => id);
}
