import { findNearest } from "../diagnostics/index.js";
import type { AdoptionPlan, CheckPlan, PolicyDocument, StepPlan } from "../model/index.js";
import { compareDates, parseDate } from "../quantities/index.js";
import { compileBounds } from "../steps/index.js";
import { compileScope } from "./compile-scope.js";
import { makeStepContext } from "./make-step-context.js";
import type { PlanContext } from "./plan-context.js";

export type PolicyAdoption = NonNullable<PolicyDocument["adopted"]>[number];

/** A step of a check that an adoption names. */
interface Target {
  readonly check: CheckPlan;
  readonly step: StepPlan;
  readonly requirements: readonly string[] | undefined;
}

/**
 * Adds to each check the adoptions that change how it is judged. One without `accept`, `instead` or `omit` covers what the
 * policy already loosens and changes nothing here.
 */
export function compileAdoptions(checks: readonly CheckPlan[], context: PlanContext): void {
  const seen = new Set<string>();
  for (const [index, adoption] of (context.resolved.document.adopted ?? []).entries()) {
    const pointer = `/adopted/${index}`;
    if (seen.has(adoption.id)) {
      const place = context.resolved.place(`${pointer}/id`);
      context.diagnostics.report("plan/duplicate-name", place, { thing: "adoption", name: adoption.id });
    }
    seen.add(adoption.id);
    const isDated = checkAdoptionDates(adoption, pointer, context) && checkCovering(adoption, pointer, context);
    const targets = findTargets(adoption, pointer, checks, context);
    if (!isDated || targets === undefined) continue;
    for (const target of targets) {
      const plan = compileAdoption(adoption, pointer, target, context);
      if (plan !== undefined) target.check.adoptions.push(plan);
    }
  }
}

/** `until` for one that ends, `review` for one that lasts; real days, in their order. */
function checkAdoptionDates(adoption: PolicyAdoption, pointer: string, context: PlanContext): boolean {
  const { diagnostics, resolved } = context;
  const { from, until, review } = adoption;
  const given = (["until", "review"] as const).filter((key) => adoption[key] !== undefined);
  if (given.length !== 1) {
    diagnostics.report("plan/adoption-without-end", resolved.place(`${pointer}/id`), { adoption: adoption.id, given });
    return false;
  }
  let usable = true;
  for (const key of ["from", "until", "review"] as const) {
    const text = adoption[key];
    if (text === undefined || parseDate(text) !== undefined) continue;
    diagnostics.report("plan/bad-date", resolved.place(`${pointer}/${key}`), { found: text });
    usable = false;
  }
  const today = parseDate(context.asOf);
  const reviewed = parseDate(review);
  if (review !== undefined && reviewed !== undefined && today !== undefined && compareDates(reviewed, today) === -1) {
    const params = { review, asOf: String(context.asOf) };
    diagnostics.report("plan/review-passed", resolved.place(`${pointer}/review`), params);
  }
  const first = parseDate(from);
  const last = parseDate(until ?? review);
  if (first !== undefined && last !== undefined && compareDates(first, last) === 1) {
    diagnostics.report("plan/dates-swapped", resolved.place(`${pointer}/from`), { from, to: until ?? review ?? "" });
    usable = false;
  }
  return usable;
}

/**
 * An adoption that only covers what the policy loosens cannot end, nor be for some records only.
 *
 * Why: the looser limit stands in the policy itself and would go on passing records after the order has ended.
 */
function checkCovering(adoption: PolicyAdoption, pointer: string, { diagnostics, resolved }: PlanContext): boolean {
  if (adoption.accept !== undefined || adoption.instead !== undefined || adoption.omit !== undefined) return true;
  const given = (["until", "only"] as const).filter((key) => adoption[key] !== undefined);
  for (const key of given) {
    const place = resolved.place(`${pointer}/${key}`, "key");
    diagnostics.report("plan/covering-cannot-lapse", place, { adoption: adoption.id, key });
  }
  return given.length === 0;
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
    const found = findStep(adoption.step, `${pointer}/step`, checks, context);
    const requirements = adoption.requirement === undefined ? undefined : [adoption.requirement];
    return found === undefined ? undefined : [{ ...found, requirements }];
  }
  if (adoption.tolerance !== undefined) return findUsers(adoption.tolerance, `${pointer}/tolerance`, checks, context);
  const known = [...context.intervals.keys()];
  reportUnknown("interval", adoption.interval ?? "", known, `${pointer}/interval`, context);
  refuseChangedInterval(adoption, pointer, context);
  return [];
}

/** Why: an adoption of an interval only covers what the policy already loosens; a change to it would have no effect. */
function refuseChangedInterval(
  adoption: PolicyAdoption,
  pointer: string,
  { diagnostics, resolved }: PlanContext,
): void {
  for (const key of ["accept", "instead", "omit", "requirement"] as const) {
    if (adoption[key] === undefined) continue;
    const option = `${key}\` beside \`interval`;
    diagnostics.report("plan/not-yet", resolved.place(`${pointer}/${key}`, "key"), { option });
  }
}

function findStep(reference: string, pointer: string, checks: readonly CheckPlan[], context: PlanContext) {
  const [checkName, stepName] = reference.split("/");
  const check = checks.find((one) => one.check === checkName);
  const step = check?.steps.find((one) => one.step === stepName);
  if (check !== undefined && step !== undefined) return { check, step };
  // Why: a step that is stated, or was taken away, is known; that it could not be compiled has been said elsewhere.
  const known = [...listStatedSteps(context), ...context.resolved.removedSteps];
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

function reportUnknown(thing: string, name: string, known: readonly string[], pointer: string, context: PlanContext) {
  if (known.includes(name)) return;
  const nearest = findNearest(name, known);
  context.diagnostics.report("plan/unknown-name", context.resolved.place(pointer), { thing, name, known, nearest });
}

function compileAdoption(
  adoption: PolicyAdoption,
  pointer: string,
  { check, step, requirements }: Target,
  context: PlanContext,
): AdoptionPlan | undefined {
  const { diagnostics, resolved } = context;
  const keys = ["accept", "instead", "omit"] as const;
  const given = keys.filter((key) => adoption[key] !== undefined);
  if (given.length > 1) {
    diagnostics.report("plan/needs-one-of", resolved.place(`${pointer}/id`), { keys, given });
    return undefined;
  }
  const isKnown = checkRequirement(step, requirements, `${pointer}/requirement`, context);
  if (given.length === 0 || !isKnown) return undefined;
  const accept = compileAccept(adoption, pointer, { check, step, requirements }, context);
  if (adoption.accept !== undefined && accept === undefined) return undefined;
  const instead = adoption.instead === undefined ? undefined : findInstead(adoption.instead, pointer, check, context);
  if (adoption.instead !== undefined && instead === undefined) return undefined;
  const only = compileScope(adoption.only, `${pointer}/only`, context);
  return {
    id: adoption.id,
    step: step.step,
    ...(requirements === undefined ? {} : { requirements: [...requirements] }),
    ...(accept === undefined ? {} : { accept }),
    ...(instead === undefined ? {} : { instead }),
    ...(only === undefined ? {} : { only }),
    from: adoption.from,
    ...(adoption.until === undefined ? {} : { until: adoption.until }),
    order: adoption.order,
  };
}

function checkRequirement(
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
    const params = { thing: `requirement of \`${step.step}\``, name, known, nearest: findNearest(name, known) };
    diagnostics.report("plan/unknown-name", resolved.place(pointer), params);
  }
  return isKnown;
}

/** New limits stand for one requirement: the one that is named, or the only one that has limits. */
function compileAccept(
  adoption: PolicyAdoption,
  pointer: string,
  { step, requirements }: Target,
  context: PlanContext,
): AdoptionPlan["accept"] {
  if (adoption.accept === undefined) return undefined;
  const limited = step.requirements.filter(
    ({ name, tolerance }) => tolerance !== undefined && (requirements === undefined || requirements.includes(name)),
  );
  const [only] = limited;
  if (only?.tolerance === undefined || limited.length > 1) {
    const known = step.requirements.filter(({ tolerance }) => tolerance !== undefined).map(({ name }) => name);
    context.diagnostics.report("plan/which-requirement", context.resolved.place(`${pointer}/accept`, "key"), { known });
    return undefined;
  }
  const at = `${pointer}/accept`;
  const stepContext = makeStepContext({}, at, context);
  const bounds = compileBounds(adoption.accept, at, only.tolerance.quantity, stepContext);
  return bounds?.flat();
}

/** A step that is asked instead belongs to the same check. */
function findInstead(reference: string, pointer: string, check: CheckPlan, context: PlanContext): string | undefined {
  const known = check.steps.map(({ step }) => `${check.check}/${step}`);
  reportUnknown("step of the same check", reference, known, `${pointer}/instead`, context);
  return known.includes(reference) ? reference.split("/")[1] : undefined;
}
