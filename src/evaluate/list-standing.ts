import { type Bound, type CalendarSpan, compareRational, parseCalendarSpan } from "../quantities/index.js";
import type { JsonObject, JudgeContext, PreparedRequirement, PreparedStep } from "../steps/index.js";
import { readAdoptionState } from "./adoption-state.js";
import { listLapsed, listLimits } from "./judge-adopted.js";
import type { PreparedCheck } from "./prepared-policy.js";

/** A requirement as it stands on the day, and the step that states it. */
export interface Standing {
  readonly requirement: PreparedRequirement;
  readonly step: PreparedStep;
  /** The step of the policy, or that of a parent, of which the step is made under the limits of orders. */
  readonly of: PreparedStep;
}

/**
 * Every requirement that a step is judged by on the day, those of one name together: under the limits of the adoptions that apply,
 * beside those of a parent wherever an adoption that covers them does not. Of those of one name the worse outcome decides.
 */
export function listStanding(
  step: PreparedStep,
  place: number,
  check: PreparedCheck,
  context: JudgeContext,
): readonly Standing[] {
  const adoptions = check.adoptionsAt[place];
  const applying = (adoptions?.acceptances ?? []).filter(({ plan }) => readAdoptionState(plan, context) === "applies");
  const limits = listLimits(applying, context);
  const state = (of: PreparedStep): readonly Standing[] =>
    limits.flatMap((one) => {
      const stating = adoptions?.underLimits(of, one) ?? of;
      return stating.requirements.map((requirement) => ({ requirement, step: stating, of }));
    });
  const all = [
    ...state(step),
    ...listLapsed(place, check, context).flatMap(({ adoption: { otherwise }, covers }) =>
      state(otherwise).filter(({ requirement }) => covers(requirement.name)),
    ),
  ];
  const names = [...new Set(all.map(({ requirement }) => requirement.name))];
  return names.flatMap((name) => listDistinct(all.filter(({ requirement }) => requirement.name === name)));
}

/** Those of different limits: an order of one requirement leaves those of the others as they are. */
function listDistinct(standing: readonly Standing[]): readonly Standing[] {
  return standing.filter(
    (one, index) =>
      standing.findIndex(({ of, requirement }) => of === one.of && requirement.key === one.requirement.key) === index,
  );
}

/** Leaves out what goes without saying: the limits of one step that let pass whatever those of another let pass. */
export function leaveOutImplied(
  standing: readonly Standing[],
  member: JsonObject | undefined,
  context: JudgeContext,
): readonly Standing[] {
  const read = standing.map((one) => ({ one, strictness: readStrictness(one, member, context) }));
  const isImplied = ({ one, strictness }: (typeof read)[number], index: number) =>
    read.some(
      (other, place) =>
        other.one.of !== one.of &&
        implies(other.strictness, strictness) &&
        (place < index || !implies(strictness, other.strictness)),
    );
  return read.filter((one, index) => !isImplied(one, index)).map(({ one }) => one);
}

/** What can be told of two limits by comparing them: bounds, or how long ago something may have been; else nothing. */
type Strictness = { readonly bounds: readonly Bound[] } | { readonly span: CalendarSpan } | undefined;

function readStrictness(
  { requirement, step: { plan } }: Standing,
  member: JsonObject | undefined,
  context: JudgeContext,
): Strictness {
  const band = requirement.tolerance?.bandFor(member, context);
  if (typeof band === "object") return { bounds: band.accept };
  const span = plan.kind === "in-date" && plan.within !== undefined ? parseCalendarSpan(plan.within) : undefined;
  return span === undefined ? undefined : { span };
}

/** Whether everything that `strict` lets pass `mild` does too, side by side, or part by part. */
function implies(strict: Strictness, mild: Strictness): boolean {
  if (strict === undefined || mild === undefined) return false;
  if ("span" in strict) return "span" in mild && isNoLonger(strict.span, mild.span);
  return "bounds" in mild && mild.bounds.every((bound) => strict.bounds.some((one) => isNoMilder(one, bound)));
}

/** Why part by part: a month has no fixed number of days. */
function isNoLonger(one: CalendarSpan, other: CalendarSpan): boolean {
  return (
    one.years * 12 + one.months <= other.years * 12 + other.months &&
    one.weeks * 7 + one.days <= other.weeks * 7 + other.days
  );
}

function isNoMilder(one: Bound, other: Bound): boolean {
  if (isLower(one) !== isLower(other)) return false;
  const order = compareRational(one.limit, other.limit);
  if (order === 0) return one.kind === other.kind || one.kind === "above" || one.kind === "below";
  return order === (isLower(one) ? 1 : -1);
}

function isLower({ kind }: Bound): boolean {
  return kind === "at-least" || kind === "above";
}
