import type { AdoptionStanding } from "../model/index.js";
import { type CalendarDate, compareDates, parseDate } from "../quantities/index.js";
import type { JudgeContext } from "../steps/index.js";

/** Whether an adoption applies to a record: by the record's own date, and by its scope, which a missing fact leaves open. */
export type AdoptionState = "applies" | "may-apply" | "does-not-apply";

export function readAdoptionState(plan: AdoptionStanding, context: JudgeContext): AdoptionState {
  const from = parseDate(plan.from);
  const until = plan.until === undefined ? undefined : parseDate(plan.until);
  if (from === undefined || isAfter(from, context.recordDate)) return "does-not-apply";
  if (until !== undefined && isAfter(context.recordDate, until)) return "does-not-apply";
  const scope = plan.only === undefined ? true : context.scopeState(plan.only);
  if (scope === true) return "applies";
  return scope === false ? "does-not-apply" : "may-apply";
}

function isAfter(one: CalendarDate, other: CalendarDate): boolean {
  return compareDates(one, other) === 1;
}

/** An adoption narrowed to the requirements about which it decides. */
export interface ActingAdoption<A> {
  readonly adoption: A;
  readonly state: AdoptionState;
  readonly covers: (requirement: string) => boolean;
}

/**
 * Of adoptions that speak of the same thing one decides: the first that applies, else the first that may, else the first. So an
 * order that was renewed goes on, whichever of its adoptions has ended.
 *
 * @param topicOf what an adoption speaks of where it covers a requirement, undefined where it does not
 * @param stateOf whether it applies, by its date and its scope where nothing else counts
 */
export function listActing<A extends { readonly plan: AdoptionStanding }>(
  adoptions: readonly A[],
  topicOf: (adoption: A, requirement: string) => string | undefined,
  context: JudgeContext,
  stateOf = ({ plan }: A): AdoptionState => readAdoptionState(plan, context),
): readonly ActingAdoption<A>[] {
  const read = adoptions.map((adoption) => ({ adoption, state: stateOf(adoption) }));
  const ranked = (["applies", "may-apply", "does-not-apply"] as const).flatMap((wanted) =>
    read.filter(({ state }) => state === wanted),
  );
  return read.map(({ adoption, state }) => ({
    adoption,
    state,
    covers: (requirement) => {
      const topic = topicOf(adoption, requirement);
      if (topic === undefined) return false;
      return ranked.find((one) => topicOf(one.adoption, requirement) === topic)?.adoption === adoption;
    },
  }));
}
