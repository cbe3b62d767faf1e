import type {
  AdoptionPlan,
  AdoptionStanding,
  CheckPlan,
  IntervalPlan,
  Plan,
  RequirementPlan,
  ScopePlan,
  StepPlan,
} from "../model/index.js";
import { nameAdoptedKey } from "../plan/index.js";
import { createQuantityReader, type Dimension, type ParsedQuantity } from "../quantities/index.js";
import {
  chooseInstrument,
  type InstrumentChoice,
  type PreparedRequirement,
  type PreparedStep,
  prepareInstrument,
  prepareNamedRequirement,
  prepareRequirement,
  prepareStep,
} from "../steps/index.js";
import { listSubjectKeys } from "./list-subject-keys.js";
import { type PreparedFact, prepareFacts } from "./prepared-fact.js";
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
  readonly adoptions: readonly PreparedAdoption[];
  /** The adoptions that name each step, by its place, and those that ask it instead of another. */
  readonly adoptionsAt: readonly StepAdoptions[];
  /** Keys of a subject that are known: those of every subject, and those that the check or the policy names. */
  readonly subjectKeys: ReadonlySet<string>;
  /** The places that each step of kind `match` asks for, by its present and former names. */
  readonly placesAt: readonly (ReadonlySet<string> | undefined)[];
}

export interface StepAdoptions {
  readonly naming: readonly PreparedAdoption[];
  readonly asking: readonly PreparedAdoption[];
}

/** An interval without its adoptions, ready to judge. */
export interface PreparedInterval {
  readonly plan: Omit<IntervalPlan, "adoptions">;
  readonly requirement: PreparedRequirement;
}

/** An interval of a check with the adoptions that name it. */
export interface PreparedDue extends PreparedInterval {
  readonly adoptions: readonly PreparedDueAdoption[];
}

export interface PreparedDueAdoption {
  readonly plan: AdoptionStanding;
  /** What is judged while it does not apply; absent where it leaves the interval out. */
  readonly otherwise: PreparedInterval | undefined;
}

/** A departure from one step, ready to judge. */
export interface PreparedAdoption {
  readonly plan: AdoptionPlan;
  /** The step's place in the check. */
  readonly place: number;
  readonly covers: (requirement: string) => boolean;
  /** The step under the adopted limits; absent where the step is left out. */
  readonly alternative: PreparedStep | undefined;
  /** The parent's step, where the adoption covers what this policy states looser. */
  readonly otherwise: PreparedStep | undefined;
  /** The place of the step that is asked instead. */
  readonly instead: number | undefined;
}

/** A plan ready to judge any number of records. */
export interface PreparedPolicy {
  readonly plan: Plan;
  /** Checks by name and by former name. */
  readonly checks: ReadonlyMap<string, PreparedCheck>;
  readonly scope: ScopePlan | undefined;
  readonly facts: ReadonlyMap<string, PreparedFact>;
  readonly gapsAsOutside: boolean;
  readQuantity(value: unknown, dimension: Dimension): ParsedQuantity;
}

/** Turns a plan into numbers once; judging then touches no policy text. */
export function preparePolicy(plan: Plan): PreparedPolicy {
  const facts = prepareFacts(plan.facts);
  const checks = new Map<string, PreparedCheck>();
  for (const check of plan.checks) {
    const prepared = prepareCheck(check, plan, facts);
    for (const name of [check.check, ...check.formerly]) if (!checks.has(name)) checks.set(name, prepared);
  }
  return {
    plan,
    checks,
    scope: plan.for,
    facts,
    gapsAsOutside: plan.gaps === "as-outside",
    readQuantity: createQuantityReader(),
  };
}

function prepareCheck(check: CheckPlan, plan: Plan, facts: ReadonlyMap<string, PreparedFact>): PreparedCheck {
  const steps = check.steps.map((step) => prepareCheckStep(step, check.check, plan));
  const placeOf = new Map(steps.map(({ plan: { step } }, place) => [step, place]));
  steps.forEach(({ plan: { formerly } }, place) => {
    for (const name of formerly) if (!placeOf.has(name)) placeOf.set(name, place);
  });
  const adoptions = check.adoptions.flatMap((adoption) => prepareAdoption(adoption, check, placeOf, plan));
  const ordered = check.order !== "any" || check.steps.some(({ after }) => after.length > 0);
  return {
    plan: check,
    steps,
    placeOf,
    competence: check.competence === undefined ? undefined : askOfCheck("competence", check.check),
    order: ordered ? askOfCheck("order", check.check) : undefined,
    intervals: check.intervals.map(prepareDue),
    rules: check.rules.map((rule) => prepareCheckRule(rule)),
    adoptions,
    adoptionsAt: steps.map((_, place) => ({
      naming: adoptions.filter((adoption) => adoption.place === place),
      asking: adoptions.filter(({ instead }) => instead === place),
    })),
    subjectKeys: listSubjectKeys(check, plan, facts),
    placesAt: steps.map(({ plan: step }) =>
      step.kind === "match" ? new Set(step.places.flatMap(({ place, formerly }) => [place, ...formerly])) : undefined,
    ),
  };
}

function prepareDue(interval: IntervalPlan): PreparedDue {
  const { interval: name } = interval;
  return {
    plan: interval,
    requirement: prepareNamedRequirement(interval.requirement, "interval", name),
    adoptions: interval.adoptions.map((adoption) => ({
      plan: adoption,
      otherwise: adoption.otherwise && {
        plan: adoption.otherwise,
        requirement: prepareNamedRequirement(
          adoption.otherwise.requirement,
          "interval",
          name,
          nameAdoptedKey(`interval/${name}`, adoption.id),
        ),
      },
    })),
  };
}

/** A step of a check; `adoption` is the one under which, or without which, these limits stand. */
function prepareCheckStep(step: StepPlan, check: string, plan: Plan, adoption?: AdoptionPlan): PreparedStep {
  const requirements = step.requirements.map((one) => {
    const key = `${check}/${step.step}/${one.name}`;
    const isAdopted = adoption !== undefined && isCovered(adoption, one.name);
    return prepareRequirement(one, step.kind, step.step, isAdopted ? nameAdoptedKey(key, adoption.id) : key);
  });
  return prepareStep(step, requirements, findInstrument(step.instrument, plan));
}

function isCovered({ requirements }: AdoptionPlan, name: string): boolean {
  return requirements === undefined || requirements.includes(name);
}

/** Order and competence weigh `refer`. */
function askOfCheck(name: "competence" | "order", check: string): PreparedRequirement {
  return prepareRequirement({ name, consequence: "refer" }, "check", undefined, `${check}//${name}`);
}

function findInstrument(name: string | undefined, plan: Plan): InstrumentChoice | undefined {
  const find = (wanted: string) => plan.instruments.find((instrument) => instrument.name === wanted);
  const found = name === undefined ? undefined : find(name);
  if (name === undefined || found === undefined) return undefined;
  const candidates = (found.oneOf ?? [name]).map((candidate) => {
    const one = find(candidate);
    if (one?.quantity === undefined) throw new Error(`the instrument ${candidate} of a plan measures nothing`);
    return prepareInstrument(one, one.quantity);
  });
  return chooseInstrument(name, candidates);
}

/** An adoption with other limits gets a step of its own, in which they stand in place of the policy's. */
function prepareAdoption(
  adoption: AdoptionPlan,
  check: CheckPlan,
  placeOf: ReadonlyMap<string, number>,
  plan: Plan,
): readonly PreparedAdoption[] {
  const place = placeOf.get(adoption.step);
  const step = check.steps.find((one) => one.step === adoption.step);
  if (place === undefined || step === undefined) return [];
  const { accept, otherwise } = adoption;
  const covers = (name: string) => isCovered(adoption, name);
  const changed =
    accept === undefined
      ? undefined
      : {
          ...step,
          requirements: step.requirements.map((one) => (covers(one.name) ? replaceAccept(one, accept) : one)),
        };
  const instead = adoption.instead === undefined ? undefined : placeOf.get(adoption.instead);
  const prepare = (one: StepPlan | undefined) => one && prepareCheckStep(one, check.check, plan, adoption);
  return [
    {
      plan: adoption,
      place,
      covers,
      alternative: prepare(changed),
      otherwise: prepare(otherwise),
      instead,
    },
  ];
}

function replaceAccept(requirement: RequirementPlan, accept: NonNullable<AdoptionPlan["accept"]>): RequirementPlan {
  const { tolerance } = requirement;
  if (tolerance === undefined) return requirement;
  const { by: _by, byQuantity: _byQuantity, ...rest } = tolerance;
  return { ...requirement, tolerance: { ...rest, bands: [{ accept: [...accept], caution: [] }] } };
}
