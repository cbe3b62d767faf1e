import type { AdoptionStanding, CheckPlan, IntervalPlan, Plan, ScopePlan } from "../model/index.js";
import { nameAdoptedKey } from "../plan/index.js";
import { createQuantityReader, type Dimension, type ParsedQuantity, parseCalendarSpan } from "../quantities/index.js";
import {
  createDueReader,
  type DueDate,
  type PreparedRequirement,
  type PreparedStep,
  prepareNamedRequirement,
  prepareRequirement,
} from "../steps/index.js";
import { encodeName } from "./fingerprint.js";
import { listSubjectKeys } from "./list-subject-keys.js";
import { prepareStepAdoptions, type StepAdoptions } from "./prepared-adoption.js";
import { listPlaces, prepareCheckStep } from "./prepared-check-step.js";
import { type PreparedFact, prepareFacts } from "./prepared-fact.js";
import { createFindingReader, type PreparedFinding } from "./prepared-finding.js";
import { type PreparedRule, prepareCheckRule } from "./prepared-rule.js";

/** A check ready to judge. */
export interface PreparedCheck {
  readonly plan: CheckPlan;
  readonly steps: readonly PreparedStep[];
  /** Places in `steps` by name and by former name. */
  readonly placeOf: ReadonlyMap<string, number>;
  readonly competence: PreparedRequirement | undefined;
  /** Present where an order is listed, or a step names steps that it comes after. */
  readonly order: PreparedRequirement | undefined;
  readonly intervals: readonly PreparedDue[];
  readonly rules: readonly PreparedRule[];
  /** The adoptions that bear on each step, by its place. */
  readonly adoptionsAt: readonly StepAdoptions[];
  /** Keys of a subject that are known: those of every subject, and those that the check or the policy names. */
  readonly subjectKeys: ReadonlySet<string>;
  /** Keys that an entry of each step may have: those of every entry, and those that are evidence of the step's kind. */
  readonly entryKeysAt: readonly ReadonlyMap<string, EntryKeyUse>[];
  /** The places that each step of kind `match` asks for, by its present and former names. */
  readonly placesAt: readonly (ReadonlySet<string> | undefined)[];
}

/** An interval without its adoptions, ready to judge. */
export interface PreparedInterval {
  readonly plan: Omit<IntervalPlan, "adoptions">;
  readonly requirement: PreparedRequirement;
  /** Reads a date from which it falls due; undefined for what is no date. */
  readDue(value: unknown): DueDate | undefined;
}

/** An interval of a check with the adoptions that name it. */
export interface PreparedDue extends PreparedInterval {
  readonly adoptions: readonly PreparedDueAdoption[];
}

export interface PreparedDueAdoption {
  readonly plan: AdoptionStanding;
  /** What is judged while it does not apply; absent where it leaves the interval out. */
  readonly otherwise: PreparedInterval | undefined;
  /** What it covers: the same text in every adoption of the same departure. */
  readonly departure: string;
}

/** What a key of an entry is for: what its step and the envelope judge, or a text or a time that must only be one. */
export type EntryKeyUse = "judged" | "text" | "time";

/** Keys that an entry of any step may have. */
export const ENTRY_KEYS: ReadonlyMap<string, EntryKeyUse> = new Map<string, EntryKeyUse>([
  ["step", "judged"],
  ["result", "judged"],
  ["defect", "judged"],
  ["note", "text"],
  ["at", "time"],
  ["of", "text"],
  ["instrument", "text"],
]);

/** A plan ready to judge any number of records. */
export interface PreparedPolicy {
  readonly plan: Plan;
  /** The id of the policy as fingerprints have it. */
  readonly encodedId: string;
  /** Checks by name and by former name. */
  readonly checks: ReadonlyMap<string, PreparedCheck>;
  readonly scope: ScopePlan | undefined;
  /** Present kinds of subject by former ones, for checks that say no kind. */
  readonly presentKinds: ReadonlyMap<string, string>;
  readonly facts: ReadonlyMap<string, PreparedFact>;
  readonly gapsAsOutside: boolean;
  readQuantity(value: unknown, dimension: Dimension): ParsedQuantity;
  /** Reads a date from which nothing falls due; undefined for what is no date. */
  readDate(value: unknown): DueDate | undefined;
  findingOf(requirement: PreparedRequirement): PreparedFinding;
}

/** Turns a plan into numbers once; judging then touches no policy text. */
export function preparePolicy(plan: Plan): PreparedPolicy {
  const facts = prepareFacts(plan.facts);
  const checks = new Map(plan.checks.map((check) => [check.check, prepareCheck(check, plan, facts)]));
  for (const { check, formerly } of plan.checks) {
    const prepared = checks.get(check);
    if (prepared === undefined) continue;
    // Why: a present name is that of its own check, whatever another was once called.
    for (const name of formerly) if (!checks.has(name)) checks.set(name, prepared);
  }
  return {
    plan,
    encodedId: encodeName(plan.policy.id),
    checks,
    scope: plan.for,
    presentKinds: listPresentKinds(plan),
    facts,
    gapsAsOutside: plan.gaps === "as-outside",
    readQuantity: createQuantityReader(),
    readDate: createDueReader(undefined),
    findingOf: createFindingReader(plan),
  };
}

/** A name that is some check's present kind, or was that of two kinds, is left as it is. */
function listPresentKinds({ checks }: Plan): ReadonlyMap<string, string> {
  const subjects = checks.flatMap(({ subject }) => subject ?? []);
  const renamed = subjects.flatMap(({ kind, formerly }) => formerly.map((former) => [former, kind] as const));
  return new Map(
    renamed.filter(
      ([former, kind]) =>
        subjects.every((one) => one.kind !== former) &&
        renamed.every(([other, present]) => other !== former || present === kind),
    ),
  );
}

function prepareCheck(check: CheckPlan, plan: Plan, facts: ReadonlyMap<string, PreparedFact>): PreparedCheck {
  const steps = check.steps.map((step) => prepareCheckStep(step, check.check, plan));
  const placeOf = new Map(steps.map(({ plan: { step } }, place) => [step, place]));
  steps.forEach(({ plan: { formerly } }, place) => {
    for (const name of formerly) if (!placeOf.has(name)) placeOf.set(name, place);
  });
  const ordered = check.order !== "any" || check.steps.some(({ after }) => after.length > 0);
  return {
    plan: check,
    steps,
    placeOf,
    competence: check.competence === undefined ? undefined : askOfCheck("competence", check.check),
    order: ordered ? askOfCheck("order", check.check) : undefined,
    intervals: check.intervals.map(prepareDue),
    rules: check.rules.map((rule) => prepareCheckRule(rule)),
    adoptionsAt: check.steps.map((step) => prepareStepAdoptions(step, check, plan)),
    subjectKeys: listSubjectKeys(check, plan, facts),
    entryKeysAt: steps.map(({ evidenceKeys }) => new Map([...listJudged(evidenceKeys), ...ENTRY_KEYS])),
    placesAt: check.steps.map(listPlaces),
  };
}

function listJudged(keys: Iterable<string>): readonly (readonly [string, EntryKeyUse])[] {
  return [...keys].map((key) => [key, "judged"]);
}

function prepareDue(interval: IntervalPlan): PreparedDue {
  const { interval: name } = interval;
  return {
    plan: interval,
    requirement: prepareNamedRequirement(interval.requirement, "interval", name),
    readDue: prepareDueReader(interval),
    adoptions: interval.adoptions.map((adoption) => ({
      plan: adoption,
      departure: JSON.stringify([adoption.generation, adoption.otherwise]),
      otherwise: adoption.otherwise && {
        plan: adoption.otherwise,
        requirement: prepareNamedRequirement(
          adoption.otherwise.requirement,
          "interval",
          name,
          nameAdoptedKey(`interval/${name}`, adoption.id),
        ),
        readDue: prepareDueReader(adoption.otherwise),
      },
    })),
  };
}

/** Invariant: a plan was compiled by this library, so its spans parse; one that does not is a bug and throws. */
function prepareDueReader({ interval, every }: PreparedInterval["plan"]): PreparedInterval["readDue"] {
  const span = parseCalendarSpan(every);
  if (span === undefined) throw new Error(`the interval ${interval} of a plan has no span`);
  return createDueReader(span);
}

/** Order and competence weigh `refer`. */
function askOfCheck(name: "competence" | "order", check: string): PreparedRequirement {
  return prepareRequirement({ name, consequence: "refer" }, "check", undefined, `${check}//${name}`);
}
