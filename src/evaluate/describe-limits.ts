import type { Form, StepPlan } from "../model/index.js";
import {
  type JsonObject,
  type JudgeContext,
  makeRow,
  type PreparedRequirement,
  type PreparedStep,
} from "../steps/index.js";
import type { UndecidedReason } from "../terms/index.js";
import type { LimitWords } from "../words/index.js";
import { readAdoptionState } from "./adoption-state.js";
import { listLapsed, listLimits } from "./judge-adopted.js";
import type { PreparedCheck } from "./prepared-policy.js";

type FormLimits = Form["steps"][number]["asked"];

/** A requirement as it stands on the day, and the step that states it; several where orders meet, of which the worse decides. */
interface Standing {
  readonly requirement: PreparedRequirement;
  readonly step: PreparedStep;
}

/** For each requirement the limits that stand on the day: those of an adoption that applies, or the parent's where one does not. */
export function listStanding(
  step: PreparedStep,
  place: number,
  check: PreparedCheck,
  context: JudgeContext,
): readonly (readonly Standing[])[] {
  const adoptions = check.adoptionsAt[place];
  const state = (stating: PreparedStep) => stating.requirements.map((requirement) => ({ requirement, step: stating }));
  if (adoptions === undefined) return state(step).map((one) => [one]);
  const applying = adoptions.acceptances.filter(({ plan }) => readAdoptionState(plan, context) === "applies");
  const limits = listLimits(applying, context);
  const standing = new Map<string, readonly Standing[]>();
  const put = (stating: PreparedStep, covers: (requirement: string) => boolean) => {
    const stated = limits.flatMap((one) => state(adoptions.underLimits(stating, one)));
    for (const { name } of stating.requirements) {
      if (covers(name)) standing.set(name, listDistinct(stated.filter(({ requirement }) => requirement.name === name)));
    }
  };
  put(step, () => true);
  for (const { adoption, covers } of listLapsed(place, check, context)) put(adoption.otherwise, covers);
  return [...standing.values()];
}

/** Those of different limits: an order of one requirement leaves those of the others as they are. */
function listDistinct(standing: readonly Standing[]): readonly Standing[] {
  return standing.filter(
    ({ requirement: { key } }, index) => standing.findIndex((one) => one.requirement.key === key) === index,
  );
}

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
  const { name, consequence } = first.requirement;
  const said = standing.map((one) => sayAccepted(one, member, context, words));
  const open = said.find((one) => "reason" in one);
  if (open !== undefined) return [{ requirement: name, consequence, ...open }];
  const limits = said.flatMap((one) => ("accept" in one ? [one.accept] : []));
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

/** The limits once for the subject, or once for each member, since they may depend on the member's own figures. */
export function describeAsked(
  step: PreparedStep,
  standing: readonly (readonly Standing[])[],
  context: JudgeContext,
  words: LimitWords,
): FormLimits {
  const isAcross = ([one]: readonly Standing[]) => one?.requirement.name === "apart";
  const across = standing.filter(isAcross);
  const own = standing.filter((one) => !isAcross(one));
  const describe = (all: typeof standing, member: JsonObject | undefined) =>
    all.flatMap((one) => describeStanding(one, member, context, words));
  if (step.plan.each === undefined) return [{ limits: describe(standing, undefined) }];
  const members = context.members(step.plan.each).map(({ id, object }) => ({
    ...(id === undefined ? {} : { part: id }),
    limits: describe(own, object),
  }));
  return across.length === 0 ? members : [...members, { limits: describe(across, undefined) }];
}
