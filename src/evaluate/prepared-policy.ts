import type {
  AdoptionPlan,
  CheckPlan,
  IntervalPlan,
  Plan,
  RequirementPlan,
  ScopePlan,
  StepPlan,
} from "../model/index.js";
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
  readonly intervals: readonly PreparedInterval[];
  readonly rules: readonly PreparedRule[];
  readonly adoptions: readonly PreparedAdoption[];
}

export interface PreparedInterval {
  readonly plan: IntervalPlan;
  readonly requirement: PreparedRequirement;
}

/** A departure from one step, ready to judge. */
export interface PreparedAdoption {
  readonly plan: AdoptionPlan;
  /** The step's place in the check. */
  readonly place: number;
  readonly covers: (requirement: string) => boolean;
  /** The step under the adopted limits; absent where the step is left out. */
  readonly alternative: PreparedStep | undefined;
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
  const checks = new Map<string, PreparedCheck>();
  for (const check of plan.checks) {
    const prepared = prepareCheck(check, plan);
    for (const name of [check.check, ...check.formerly]) if (!checks.has(name)) checks.set(name, prepared);
  }
  return {
    plan,
    checks,
    scope: plan.for,
    facts: prepareFacts(plan.facts),
    gapsAsOutside: plan.gaps === "as-outside",
    readQuantity: createQuantityReader(),
  };
}

function prepareCheck(check: CheckPlan, plan: Plan): PreparedCheck {
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
    intervals: check.intervals.map((interval) => ({
      plan: interval,
      requirement: prepareNamedRequirement(interval.requirement, "interval", interval.interval),
    })),
    rules: check.rules.map((rule) => prepareCheckRule(rule)),
    adoptions: check.adoptions.flatMap((adoption) => prepareAdoption(adoption, check, placeOf, plan)),
  };
}

function prepareCheckStep(step: StepPlan, check: string, plan: Plan): PreparedStep {
  const requirements = step.requirements.map((one) => prepareRequirement(one, step.kind, check, step.step));
  return prepareStep(step, requirements, findInstrument(step.instrument, plan));
}

/** Order and competence weigh `refer`. */
function askOfCheck(name: "competence" | "order", check: string): PreparedRequirement {
  return prepareRequirement({ name, consequence: "refer" }, "check", check, undefined);
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
  const { accept, requirements } = adoption;
  const covers = (name: string) => requirements === undefined || requirements.includes(name);
  const changed =
    accept === undefined
      ? undefined
      : {
          ...step,
          requirements: step.requirements.map((one) => (covers(one.name) ? replaceAccept(one, accept) : one)),
        };
  const instead = adoption.instead === undefined ? undefined : placeOf.get(adoption.instead);
  const alternative = changed === undefined ? undefined : prepareCheckStep(changed, check.check, plan);
  return [{ plan: adoption, place, covers, alternative, instead }];
}

function replaceAccept(requirement: RequirementPlan, accept: NonNullable<AdoptionPlan["accept"]>): RequirementPlan {
  const { tolerance } = requirement;
  if (tolerance === undefined) return requirement;
  const { by: _by, byQuantity: _byQuantity, ...rest } = tolerance;
  return { ...requirement, tolerance: { ...rest, bands: [{ accept: [...accept], caution: [] }] } };
}
