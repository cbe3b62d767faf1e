import type { AdoptionPlan, AdoptionStanding, CheckPlan, Covering, StepPlan } from "../model/index.js";
import { nameAcceptedKey } from "../plan/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import type { Place } from "../source/index.js";
import { compileBounds, isEmptyBand } from "../steps/index.js";
import { findNearest, REQUIREMENTS } from "../terms/index.js";
import type { Thing } from "../words/index.js";
import { checkAdoptionDates } from "./check-adoption-dates.js";
import { compileScope } from "./compile-scope.js";
import { makeStepContext } from "./make-step-context.js";
import type { PlanContext } from "./plan-context.js";
import type { PolicyAdoption } from "./policy-adoption.js";

/** A step of a check that an adoption names. */
interface Target {
  readonly check: CheckPlan;
  readonly step: StepPlan;
  readonly requirements: readonly string[] | undefined;
}

/**
 * Adds to each check the adoptions that change how it is judged. Those without `accept`, `instead` or `omit` cover what the
 * policy itself loosens; they are handed back, since only beside the parent can be told what stands without them.
 */
export function compileAdoptions(checks: readonly CheckPlan[], context: PlanContext): readonly Covering[] {
  const seen = new Set<string>();
  return (context.resolved.document.adopted ?? []).flatMap((adoption, index) => {
    const pointer = `/adopted/${index}`;
    if (seen.has(adoption.id)) {
      const place = context.resolved.place(`${pointer}/id`);
      context.diagnostics.report("plan/duplicate-name", place, { thing: "adoption", name: adoption.id });
    }
    seen.add(adoption.id);
    const isDated = checkAdoptionDates(adoption, pointer, context);
    if (isMoot(adoption, pointer, checks, context)) return [];
    const targets = findTargets(adoption, pointer, checks, context);
    if (!isDated) return [];
    const standing = compileStanding(adoption, pointer, context);
    for (const target of targets ?? []) {
      const plan = compileAdoption(adoption, standing, pointer, target, context);
      if (plan !== undefined) target.check.adoptions.push(plan);
    }
    if (adoption.interval !== undefined) omitInterval(adoption, standing, pointer, checks, context);
    return isCovering(adoption) ? [makeCovering(adoption, standing, pointer)] : [];
  });
}

const CHANGES = ["accept", "instead", "omit"] as const;

/**
 * Whether an order of the parent's changes a step that this policy does not have.
 * Why not one with `instead`: whether the other step is then to be asked, and when, is for whoever left out the first to say.
 */
function isMoot(
  { step, accept, omit, instead }: PolicyAdoption,
  pointer: string,
  checks: readonly CheckPlan[],
  context: PlanContext,
): boolean {
  if (step === undefined || instead !== undefined || (accept ?? omit) === undefined) return false;
  const isHere = checks.some(({ check, steps }) => steps.some((one) => `${check}/${one.step}` === step));
  return !isHere && context.resolved.removedSteps.includes(step) && context.resolved.isInherited(`${pointer}/id`);
}

function isCovering(adoption: PolicyAdoption): boolean {
  return CHANGES.every((key) => adoption[key] === undefined);
}

function makeCovering(adoption: PolicyAdoption, standing: AdoptionStanding, pointer: string): Covering {
  const { step, requirement, tolerance, interval } = adoption;
  return {
    ...standing,
    ...(step === undefined ? {} : { step }),
    ...(requirement === undefined ? {} : { requirement }),
    ...(tolerance === undefined ? {} : { tolerance }),
    ...(interval === undefined ? {} : { interval }),
    pointer,
  };
}

function compileStanding(adoption: PolicyAdoption, pointer: string, context: PlanContext): AdoptionStanding {
  const only = compileScope(adoption.only, `${pointer}/only`, context);
  const { id, from, until, order } = adoption;
  return { id, ...(only === undefined ? {} : { only }), from, ...(until === undefined ? {} : { until }), order };
}

/** Leaves an interval out of every check that names it, while the adoption applies. */
function omitInterval(
  adoption: PolicyAdoption,
  standing: AdoptionStanding,
  pointer: string,
  checks: readonly CheckPlan[],
  context: PlanContext,
): void {
  for (const key of ["accept", "instead", "requirement"] as const) {
    if (adoption[key] === undefined) continue;
    context.diagnostics.report("plan/adoption-of-interval", context.resolved.place(`${pointer}/${key}`, "key"), {
      key,
    });
  }
  if (adoption.omit === undefined || context.intervals.get(adoption.interval ?? "") === undefined) return;
  const judged = checks.flatMap(({ intervals }) => intervals.filter(({ interval }) => interval === adoption.interval));
  const isLost =
    context.resolved.isInherited(`${pointer}/id`) && isAskedAbove(adoption.interval, context.resolved.parent);
  if (judged.length === 0 && !isLost) {
    const params = { option: "omit", of: "unnamed-interval" } as const;
    context.diagnostics.report("plan/not-yet", context.resolved.place(`${pointer}/omit`, "key"), params);
  }
  for (const interval of judged) interval.adoptions.push({ ...standing });
}

/** Whether a check of some ancestor names an interval, so that an order about it is nothing to one that leaves it out. */
function isAskedAbove(interval: string | undefined, ancestor: ResolvedPolicy | undefined): boolean {
  if (interval === undefined || ancestor === undefined) return false;
  const checks = Object.values(ancestor.document.checks ?? {});
  return checks.some(({ intervals = [] }) => intervals.includes(interval)) || isAskedAbove(interval, ancestor.parent);
}

/** The steps that an adoption names: by `check/step`, or by a tolerance that they use. */
function findTargets(
  adoption: PolicyAdoption,
  pointer: string,
  checks: readonly CheckPlan[],
  context: PlanContext,
): readonly Target[] | undefined {
  const keys = ["step", "tolerance", "interval"] as const;
  const given = keys.filter((key) => adoption[key] !== undefined);
  if (given.length !== 1) {
    context.diagnostics.report("plan/needs-one-of", context.resolved.place(`${pointer}/id`), { keys, given });
    return undefined;
  }
  if (adoption.step !== undefined) {
    const removed = isCovering(adoption) ? context.resolved.removedSteps : [];
    const found = findStep(adoption.step, `${pointer}/step`, checks, removed, context);
    const requirements = adoption.requirement === undefined ? undefined : [adoption.requirement];
    return found === undefined ? undefined : [{ ...found, requirements }];
  }
  if (adoption.tolerance !== undefined) {
    // Why: the order would reach further than it says, to every requirement that the tolerance is for.
    if (adoption.requirement !== undefined) {
      const both = ["tolerance", "requirement"] as const;
      const place = context.resolved.place(`${pointer}/requirement`, "key");
      context.diagnostics.report("plan/needs-one-of", place, { keys: both, given: both });
    }
    const users = findUsers(adoption.tolerance, `${pointer}/tolerance`, checks, context);
    // Why: an order that changes a limit of no step has no effect, and whoever wrote it believes otherwise.
    const isOwn = !isCovering(adoption) && !context.resolved.isInherited(`${pointer}/id`);
    if (users.length === 0 && isOwn && !context.diagnostics.hasErrors) {
      const params = { thing: "tolerance", name: adoption.tolerance } as const;
      context.diagnostics.report("plan/unused", context.resolved.place(`${pointer}/tolerance`), params);
    }
    return users;
  }
  const known = [...context.intervals.keys()];
  reportUnknown("interval", adoption.interval ?? "", known, `${pointer}/interval`, context);
  return [];
}

/** `removed` are steps of an ancestor that may be named although they are not asked. */
function findStep(
  reference: string,
  pointer: string,
  checks: readonly CheckPlan[],
  removed: readonly string[],
  context: PlanContext,
) {
  const [checkName, stepName] = reference.split("/");
  const check = checks.find((one) => one.check === checkName);
  const step = check?.steps.find((one) => one.step === stepName);
  if (check !== undefined && step !== undefined) return { check, step };
  // Why: a step that is stated is known; that it could not be compiled has been said elsewhere.
  const known = [...listStatedSteps(context), ...removed];
  reportUnknown("step", reference, known, pointer, context);
  return undefined;
}

/** Every step of the document as `check/step`, whether it could be compiled or not. */
function listStatedSteps({ resolved }: PlanContext): readonly string[] {
  const checks = Object.entries(resolved.document.checks ?? {});
  return checks.flatMap(([check, { steps = [] }]) => steps.map(({ step }) => `${check}/${step}`));
}

function findUsers(
  name: string,
  pointer: string,
  checks: readonly CheckPlan[],
  context: PlanContext,
): readonly Target[] {
  reportUnknown("tolerance", name, [...context.tolerances.keys()], pointer, context);
  return checks.flatMap((check) =>
    check.steps.flatMap((step): Target[] => {
      const requirements = step.requirements.filter(({ tolerance }) => tolerance?.name === name).map((one) => one.name);
      return requirements.length === 0 ? [] : [{ check, step, requirements }];
    }),
  );
}

function reportUnknown(thing: Thing, name: string, known: readonly string[], pointer: string, context: PlanContext) {
  if (known.includes(name)) return;
  const nearest = findNearest(name, known);
  context.diagnostics.report("plan/unknown-name", context.resolved.place(pointer), { thing, name, known, nearest });
}

function compileAdoption(
  adoption: PolicyAdoption,
  standing: AdoptionStanding,
  pointer: string,
  { check, step, requirements }: Target,
  context: PlanContext,
): AdoptionPlan | undefined {
  const { diagnostics, resolved } = context;
  const given = CHANGES.filter((key) => adoption[key] !== undefined);
  if (given.length > 1) {
    diagnostics.report("plan/needs-one-of", resolved.place(`${pointer}/id`), { keys: CHANGES, given });
    return undefined;
  }
  if (isLeftOut(adoption, step, pointer, context)) return undefined;
  const isKnown = checkRequirement(adoption, step, requirements, pointer, context);
  if (given.length === 0 || !isKnown) return undefined;
  const accept = compileAccept(adoption, pointer, { check, step, requirements }, context);
  if (adoption.accept !== undefined && accept === undefined) return undefined;
  const instead =
    adoption.instead === undefined ? undefined : findInstead(adoption.instead, pointer, step, check, context);
  if (adoption.instead !== undefined && instead === undefined) return undefined;
  if (accept !== undefined) addPositions(adoption.id, pointer, { check, step, requirements }, context);
  return {
    ...standing,
    step: step.step,
    ...(requirements === undefined ? {} : { requirements: [...requirements] }),
    ...(accept === undefined ? {} : { accept }),
    ...(instead === undefined ? {} : { instead }),
  };
}

/**
 * Whether this policy may have left out of the step what an order names: one that covers it, or one of the parent's. Whether the
 * parent has it is told beside the parent.
 */
function isLeftOut(adoption: PolicyAdoption, step: StepPlan, pointer: string, context: PlanContext): boolean {
  const name = REQUIREMENTS.find((one) => one === adoption.requirement);
  if (name === undefined || context.resolved.parent === undefined) return false;
  const isHere = step.requirements.some((one) => one.name === name);
  return !isHere && (isCovering(adoption) || context.resolved.isInherited(`${pointer}/id`));
}

/** The limit that stands while the adoption applies is the adoption's own. */
function addPositions(
  id: string,
  pointer: string,
  { check, step, requirements }: Target,
  { positions, resolved }: PlanContext,
): void {
  for (const { name } of step.requirements) {
    if (requirements !== undefined && !requirements.includes(name)) continue;
    const key = `${check.check}/${step.step}/${name}`;
    positions.addLimit(key, nameAcceptedKey(key, id), resolved.place(`${pointer}/accept`, "value"));
  }
}

function checkRequirement(
  adoption: PolicyAdoption,
  step: StepPlan,
  requirements: readonly string[] | undefined,
  pointer: string,
  { diagnostics, resolved }: PlanContext,
): boolean {
  const known = step.requirements.map(({ name }) => name);
  let isKnown = true;
  for (const name of requirements ?? []) {
    if (known.some((one) => one === name)) continue;
    isKnown = false;
    const params = {
      thing: `requirement of \`${step.step}\`` as const,
      name,
      known,
      // Why: an order that covers what the policy leaves out names what the step no longer has.
      nearest: findNearest(name, known) ?? (isCovering(adoption) ? findNearest(name, REQUIREMENTS) : undefined),
    };
    diagnostics.report("plan/unknown-name", resolved.place(`${pointer}/requirement`), params);
  }
  return isKnown;
}

/** New limits stand for one requirement: the one that is named, or the only one that has limits. */
function compileAccept(
  adoption: PolicyAdoption,
  pointer: string,
  { check, step, requirements }: Target,
  context: PlanContext,
): AdoptionPlan["accept"] {
  if (adoption.accept === undefined) return undefined;
  const limited = step.requirements.filter(
    ({ name, tolerance }) => tolerance !== undefined && (requirements === undefined || requirements.includes(name)),
  );
  const [only] = limited;
  if (only?.tolerance === undefined || limited.length > 1) {
    const known = step.requirements.filter(({ tolerance }) => tolerance !== undefined).map(({ name }) => name);
    const place = context.resolved.place(`${pointer}/accept`, "key");
    const stated = findReplaced(check, step, place, context);
    if (stated === undefined) context.diagnostics.report("plan/which-requirement", place, { known });
    else {
      const params = { adoption: adoption.id, step: `${check.check}/${step.step}`, known };
      const related = [{ message: context.diagnostics.words.related.parents, place }];
      context.diagnostics.report("resolve/adoption-does-not-fit", stated, params, related);
    }
    return undefined;
  }
  const at = `${pointer}/accept`;
  const stepContext = makeStepContext({}, at, context);
  const bounds = compileBounds(adoption.accept, at, only.tolerance.quantity, stepContext)?.flat();
  if (bounds === undefined || !isEmptyBand(bounds, only.tolerance.quantity)) return bounds;
  context.diagnostics.report("plan/empty-band", context.resolved.place(at), {});
  return undefined;
}

/** Where this policy states a step that an adoption of an ancestor's names; undefined where the two stand in one text. */
function findReplaced({ check }: CheckPlan, { step }: StepPlan, adopted: Place, { resolved }: PlanContext) {
  const index = resolved.document.checks?.[check]?.steps?.findIndex((one) => one.step === step) ?? -1;
  const place = resolved.place(`/checks/${check}/steps/${index}`);
  return index === -1 || place.source.file === adopted.source.file ? undefined : place;
}

/** A step that is asked instead belongs to the same check. */
function findInstead(
  reference: string,
  pointer: string,
  { step: left }: StepPlan,
  check: CheckPlan,
  context: PlanContext,
): string | undefined {
  // Why: a step that stands for itself, for one that stands for it, or is left out by another order, would never be judged.
  const replaced = (context.resolved.document.adopted ?? []).filter(
    ({ instead, omit }) => instead !== undefined || omit !== undefined,
  );
  const isReplaced = ({ step, requirements }: StepPlan) =>
    replaced.some((adoption) =>
      adoption.tolerance === undefined
        ? adoption.step === `${check.check}/${step}`
        : requirements.some(({ tolerance }) => tolerance?.name === adoption.tolerance),
    );
  const known = check.steps
    .filter((one) => one.step !== left && !isReplaced(one))
    .map(({ step }) => `${check.check}/${step}`);
  reportUnknown("step of the same check", reference, known, `${pointer}/instead`, context);
  return known.includes(reference) ? reference.split("/")[1] : undefined;
}
