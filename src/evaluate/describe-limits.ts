import type { Form, StepPlan } from "../model/index.js";
import { type JsonObject, type JudgeContext, makeRow, type PreparedStep } from "../steps/index.js";
import { type UndecidedReason, weighConsequence } from "../terms/index.js";
import type { LimitWords } from "../words/index.js";
import { leaveOutImplied, type Standing } from "./list-standing.js";

type FormLimits = Form["steps"][number]["asked"];

/** Kinds whose requirement is a condition, a match or a date, which no tolerance limits. */
const WITHOUT_LIMITS: ReadonlySet<StepPlan["kind"]> = new Set(["confirm", "match", "in-date"]);

/** What must hold of each, where orders meet: the worse outcome stands, so every limit is to be kept. */
function describeStanding(
  standing: readonly Standing[],
  member: JsonObject | undefined,
  context: JudgeContext,
  words: LimitWords,
): FormLimits[number]["limits"] {
  const [first] = standing;
  if (first === undefined) return [];
  const { name } = first.requirement;
  const consequence = standing
    .map(({ requirement }) => requirement.consequence)
    .reduce((one, other) => (weighConsequence(other) > weighConsequence(one) ? other : one));
  const told = leaveOutImplied(standing, member, context);
  const said = told.map((one) => sayAccepted(one, member, context, words));
  const open = said.find((one) => "reason" in one);
  if (open !== undefined) return [{ requirement: name, consequence, ...open }];
  const limits = [...new Set(said.flatMap((one) => ("accept" in one ? [one.accept] : [])))];
  return [{ requirement: name, consequence, ...(limits.length === 0 ? {} : { accept: words.all(limits) }) }];
}

/** What is accepted in words, or why that is not known; neither where nothing can be said. */
function sayAccepted(
  { requirement, step }: Standing,
  member: JsonObject | undefined,
  context: JudgeContext,
  words: LimitWords,
): { readonly accept: string } | { readonly reason: UndecidedReason } | Readonly<Record<never, never>> {
  const band = requirement.tolerance?.bandFor(member, context);
  if (typeof band === "string") return { reason: band };
  if (band !== undefined) return { accept: band.describe(words) };
  if (!WITHOUT_LIMITS.has(step.plan.kind)) return {};
  const { accept } = step.describe(makeRow(requirement, "within"), undefined, member, context, words);
  return accept === undefined ? {} : { accept };
}

/**
 * The limits once for the subject, or once for each member, since they may depend on the member's own figures; both where the
 * policy asks the one and its parent, which stands beside it, the other.
 */
export function describeAsked(
  step: PreparedStep,
  standing: readonly Standing[],
  context: JudgeContext,
  words: LimitWords,
): FormLimits {
  const names = [...new Set(standing.map(({ requirement }) => requirement.name))];
  const describe = (all: readonly Standing[], member: JsonObject | undefined) =>
    names.flatMap((name) =>
      describeStanding(
        all.filter(({ requirement }) => requirement.name === name),
        member,
        context,
        words,
      ),
    );
  const whole = describe(standing.filter(isOfTheWhole), undefined);
  const lists = [...new Set(standing.flatMap(({ step: { plan } }) => plan.each ?? []))];
  const members = lists.flatMap((list) => {
    const each = standing.filter((one) => !isOfTheWhole(one) && one.step.plan.each === list);
    return context.members(list).map(({ id, object }) => ({
      ...(id === undefined ? {} : { part: id }),
      limits: describe(each, object),
    }));
  });
  if (step.plan.each === undefined) return [{ limits: whole }, ...members];
  return whole.length === 0 ? members : [...members, { limits: whole }];
}

/** Not of one member: how far members lie apart is asked of all of them together. */
function isOfTheWhole({ requirement, step }: Standing): boolean {
  return step.plan.each === undefined || requirement.name === "apart";
}
