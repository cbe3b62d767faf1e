import { type JudgeContext, type PreparedStep, readMember } from "../steps/index.js";
import { weighConsequence } from "../terms/index.js";
import { type ActingAdoption, type AdoptionState, listActing, readAdoptionState } from "./adoption-state.js";
import { type AskedRow, coverRows, findTwin, markAdopted, omitRows, worseOf } from "./cover-rows.js";
import { judgeStep, type PlacedEntry, readFitting } from "./judge-step.js";
import type { PreparedAdoption, PreparedCovering, StepAdoptions } from "./prepared-adoption.js";
import type { PreparedCheck } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

/** A step that an adoption names as its `instead` is asked only while that adoption applies, or may. */
export function isAsked(place: number, check: PreparedCheck, context: JudgeContext): boolean {
  const asking = check.adoptionsAt[place]?.asking ?? [];
  return asking.length === 0 || asking.some(({ plan }) => readAdoptionState(plan, context) !== "does-not-apply");
}

/**
 * Whether an adoption that leaves a step out, or asks another instead, applies to a record. Where the other is not asked of the
 * subject, since the thing is not fitted, the step itself is asked after all; where that cannot be told, both are. Where an order
 * about the other has lapsed, the thing that the parent asks for counts as well.
 */
export function readOmissionState(
  { plan }: Pick<PreparedAdoption, "plan">,
  check: PreparedCheck,
  envelope: Envelope,
  context: JudgeContext,
): AdoptionState {
  const state = readAdoptionState(plan, context);
  const place = plan.instead === undefined ? undefined : check.placeOf.get(plan.instead);
  const other = place === undefined ? undefined : check.steps[place];
  if (state === "does-not-apply" || place === undefined || other === undefined) return state;
  const standing = [other, ...listLapsed(place, check, context).map(({ adoption }) => adoption.otherwise)];
  const fittings = standing.map((one) => readFitting(one, envelope));
  if (fittings.includes("not-fitted")) return "does-not-apply";
  return fittings.every((fitting) => fitting === "fitted") ? state : "may-apply";
}

/**
 * Judges one step with the adoptions that name it. Where one applies, its limits decide and the result keeps what the outcome
 * would have been without it; where its scope cannot be told, or another applies to the same requirement, all are judged and the
 * worst stands. Where one that covers a looser part of the policy does not apply, the parent's stands.
 */
export function judgeAdoptedStep(
  step: PreparedStep,
  adoptions: StepAdoptions,
  entries: readonly PlacedEntry[],
  check: PreparedCheck,
  envelope: Envelope,
  context: JudgeContext,
): readonly AskedRow[] {
  const judge = (one: PreparedStep, recorded = entries): readonly AskedRow[] =>
    judgeStep(one, recorded, envelope, context).map((row) => ({ row, step: one }));
  const coverings = listActing(adoptions.coverings, ({ departures }, name) => departures.get(name), context);
  const judgeUnder = (limits: readonly PreparedAdoption[]): readonly AskedRow[] => {
    let asked = judge(adoptions.underLimits(step, limits));
    for (const { adoption, state, covers } of coverings) {
      const { plan, otherwise } = adoption;
      // Why: what is recorded under a name that only this policy knows the step by is nothing to the parent.
      const known = entries.filter(({ entry }) => isKnownAs(otherwise, readMember(entry, "step")));
      asked = coverRows(
        asked,
        judge(adoptions.underLimits(otherwise, limits), known),
        plan,
        state,
        covers,
        context.gapsAsOutside,
      );
    }
    return asked;
  };
  let asked = acceptRows(judgeUnder, adoptions.acceptances, context);
  const omissions = listActing(
    adoptions.omissions,
    ({ covers }, name) => (covers(name) ? "" : undefined),
    context,
    (one) => readOmissionState(one, check, envelope, context),
  );
  for (const { adoption, state, covers } of omissions) asked = omitRows(asked, adoption.plan, state, covers);
  return asked;
}

/** The adoptions that cover something of a step and do not apply, or only may, so that the parent's stands there. */
export function listLapsed(
  place: number,
  check: PreparedCheck,
  context: JudgeContext,
): readonly ActingAdoption<PreparedCovering>[] {
  const { coverings = [] } = check.adoptionsAt[place] ?? {};
  return listActing(coverings, ({ departures }, name) => departures.get(name), context).filter(
    ({ adoption, state, covers }) => state !== "applies" && adoption.requirements.some(covers),
  );
}

/** What a step weighs at most, with the parent's consequences wherever an adoption that covers milder ones does not apply. */
export function weighStep(place: number, check: PreparedCheck, context: JudgeContext): number {
  const lapsed = listLapsed(place, check, context).flatMap(({ adoption, covers }) =>
    adoption.otherwise.requirements.filter(({ name }) => covers(name)),
  );
  const standing = [...(check.steps[place]?.requirements ?? []), ...lapsed];
  return Math.max(...standing.map(({ consequence }) => weighConsequence(consequence)));
}

function isKnownAs({ plan: { step, formerly } }: PreparedStep, name: unknown): boolean {
  return typeof name === "string" && [step, ...formerly].includes(name.trim());
}

/** The worst that comes of the step under each set of limits that may stand. */
function acceptRows(
  judgeUnder: (limits: readonly PreparedAdoption[]) => readonly AskedRow[],
  acceptances: readonly PreparedAdoption[],
  context: JudgeContext,
): readonly AskedRow[] {
  const without = judgeUnder([]);
  const concerned = acceptances.filter(({ plan }) => readAdoptionState(plan, context) !== "does-not-apply");
  if (concerned.length === 0) return without;
  const judged = listLimits(concerned, context).map((limits) => ({
    limits,
    rows: limits.length === 0 ? without : judgeUnder(limits),
  }));
  return without.map((one) => {
    const outcome = one.row.outcome;
    const twins = judged.map(({ limits, rows }) => ({ limits, one: findTwin(one, rows) ?? one }));
    const standing = twins.map((twin) => twin.one).reduce((worst, next) => worseOf(worst, next, context.gapsAsOutside));
    const limits = twins.find((twin) => twin.one === standing)?.limits ?? [];
    const deciding = [...limits, ...concerned].find(({ covers }) => covers(one.row.requirement.name));
    return deciding === undefined ? standing : markAdopted(standing, outcome, deciding.plan);
  });
}

/**
 * The sets of limits to judge by, in each of which the first that covers a requirement decides: all that apply; each of them once
 * before the others, where they meet on a requirement; and each that may apply, before those that do.
 * Why not every combination of those that may apply: what rests on two limits is no worse under both than under the worse one.
 */
export function listLimits(
  concerned: readonly PreparedAdoption[],
  context: JudgeContext,
): readonly PreparedAdoption[][] {
  const certain = concerned.filter(({ plan }) => readAdoptionState(plan, context) === "applies");
  const open = concerned.filter((one) => !certain.includes(one));
  const put = (first: PreparedAdoption) => [first, ...certain.filter((one) => one !== first)];
  const contested = certain.filter((one, index) => certain.slice(0, index).some((other) => meet(one, other)));
  return [certain, ...contested.map(put), ...open.map(put)];
}

function meet(one: PreparedAdoption, other: PreparedAdoption): boolean {
  return one.requirements.some((name) => other.covers(name));
}
