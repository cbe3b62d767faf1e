import type { AdoptionPlan, CheckPlan, Covering, IntervalPlan, Plan } from "../model/index.js";
import { nameAdoptedKey } from "../plan/index.js";
import { type CoveredPlans, standingOf } from "./covered-plans.js";
import type { Overlay } from "./overlay.js";

/**
 * Takes over what the parent covers towards its own parent, so that the looser limit lapses in the child too. Gives the ids of
 * the adoptions that were taken over.
 *
 * Where the child states an adoption of the same id that covers as well, its dates stand; else those of the parent.
 */
export function inheritCoverings(
  { parent, parentCovered, child }: CoveredPlans,
  coverings: readonly Covering[],
  overlay: Overlay,
): ReadonlySet<string> {
  const taken = new Set<string>();
  for (const check of parentCovered.checks) {
    const own = child.checks.find((one) => one.check === check.check);
    const stated = parent.checks.find((one) => one.check === check.check);
    if (own === undefined || stated === undefined) continue;
    for (const adoption of check.adoptions.filter((one) => isAdded(one, stated))) {
      if (inheritStep(adoption, check, own, coverings, parentCovered, overlay)) taken.add(adoption.id);
    }
    for (const interval of check.intervals) {
      const before = stated.intervals.find((one) => one.interval === interval.interval);
      for (const id of inheritInterval(interval, before, own, coverings, parentCovered, overlay)) taken.add(id);
    }
  }
  return taken;
}

/** Whether an adoption was added for a covering, not stated with limits of its own. */
function isAdded({ id, step, otherwise }: AdoptionPlan, stated: CheckPlan): boolean {
  return otherwise !== undefined || !stated.adoptions.some((one) => one.id === id && one.step === step);
}

function findStanding(id: string, coverings: readonly Covering[]) {
  const covering = coverings.find((one) => one.id === id);
  return covering === undefined ? {} : standingOf(covering);
}

function inheritStep(
  adoption: AdoptionPlan,
  check: CheckPlan,
  own: CheckPlan,
  coverings: readonly Covering[],
  parentCovered: Plan,
  overlay: Overlay,
): boolean {
  const { step: name, otherwise } = adoption;
  const isStated = own.steps.some(({ step }) => step === name);
  const step = check.steps.find((one) => one.step === name);
  // Why: a step that the child states is its own; what its parent left out of it does not matter any more.
  if (step === undefined || isStated !== (otherwise !== undefined)) return false;
  if (!isStated && !overlay.insertStep(check, step)) return false;
  const { until: _until, only: _only, ...rest } = adoption;
  const standing = { ...standingOf(adoption), ...findStanding(adoption.id, coverings) };
  overlay.findCheck(check.check)?.adoptions.push({ ...rest, ...standing });
  for (const requirement of otherwise?.requirements ?? step.requirements) {
    const key = `${check.check}/${name}/${requirement.name}`;
    overlay.copyPosition(parentCovered, otherwise === undefined ? key : nameAdoptedKey(key, adoption.id));
  }
  return true;
}

function inheritInterval(
  interval: IntervalPlan,
  before: IntervalPlan | undefined,
  own: CheckPlan,
  coverings: readonly Covering[],
  parentCovered: Plan,
  overlay: Overlay,
): readonly string[] {
  const isStated = own.intervals.some((one) => one.interval === interval.interval);
  const added = interval.adoptions.filter(({ otherwise }) =>
    isStated ? otherwise !== undefined : before === undefined,
  );
  if (added.length === 0) return [];
  const check = overlay.findCheck(own.check);
  const key = `interval/${interval.interval}`;
  const adoptions = added.map((one) => ({ ...one, ...findStanding(one.id, coverings) }));
  if (isStated) check?.intervals.find((one) => one.interval === interval.interval)?.adoptions.push(...adoptions);
  else check?.intervals.push({ ...interval, adoptions });
  for (const { id } of isStated ? added : []) overlay.copyPosition(parentCovered, nameAdoptedKey(key, id));
  if (!isStated) overlay.copyPosition(parentCovered, key);
  return added.map(({ id }) => id);
}
