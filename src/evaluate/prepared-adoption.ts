import type { AdoptionPlan, CheckPlan, Plan, StepPlan } from "../model/index.js";
import { nameAcceptedKey, nameAdoptedKey } from "../plan/index.js";
import type { PreparedStep } from "../steps/index.js";
import { prepareCheckStep, replaceAccept } from "./prepared-check-step.js";

/** A departure from one step, ready to judge. */
export interface PreparedAdoption {
  readonly plan: AdoptionPlan;
  /** The requirements of the step, or of the parent's, that it covers. */
  readonly requirements: readonly string[];
  readonly covers: (requirement: string) => boolean;
}

/** One that covers what the policy states looser than its parent. */
export interface PreparedCovering extends PreparedAdoption {
  /** The parent's step, which stands while it does not apply. */
  readonly otherwise: PreparedStep;
  /** What it covers, by requirement: the same text in every adoption of the same departure. */
  readonly departures: ReadonlyMap<string, string>;
}

/** The adoptions that bear on one step, by what they do. */
export interface StepAdoptions {
  readonly coverings: readonly PreparedCovering[];
  /** Those with limits of their own. */
  readonly acceptances: readonly PreparedAdoption[];
  /** Those that leave the step out, or ask another instead. */
  readonly omissions: readonly PreparedAdoption[];
  /** Those that ask this step instead of another. */
  readonly asking: readonly { readonly plan: AdoptionPlan }[];
  /** The step, or the parent's, under adopted limits; of two that cover a requirement the first stands. */
  underLimits(step: PreparedStep, acceptances: readonly PreparedAdoption[]): PreparedStep;
}

/** True where some adoption changes how the step is judged. */
export function isAdopted({ coverings, acceptances, omissions }: StepAdoptions): boolean {
  return coverings.length + acceptances.length + omissions.length > 0;
}

export function prepareStepAdoptions(step: StepPlan, check: CheckPlan, plan: Plan): StepAdoptions {
  const naming = check.adoptions.filter((adoption) => adoption.step === step.step);
  return {
    coverings: naming.flatMap(({ otherwise, ...adoption }) =>
      otherwise === undefined ? [] : [prepareCovering(adoption, otherwise, check, plan)],
    ),
    acceptances: naming.filter(({ accept }) => accept !== undefined).map((one) => prepareAdoption(one, step)),
    omissions: naming
      .filter(({ accept, otherwise }) => accept === undefined && otherwise === undefined)
      .map((one) => prepareAdoption(one, step)),
    asking: check.adoptions.filter(({ instead }) => instead === step.step).map((one) => ({ plan: one })),
    underLimits: createLimits(step, check, plan),
  };
}

function prepareAdoption(plan: AdoptionPlan, { requirements: asked }: StepPlan): PreparedAdoption {
  const requirements = plan.requirements ?? asked.map(({ name }) => name);
  return { plan, requirements, covers: (name) => requirements.includes(name) };
}

function prepareCovering(plan: AdoptionPlan, otherwise: StepPlan, check: CheckPlan, whole: Plan): PreparedCovering {
  const prepared = prepareAdoption(plan, otherwise);
  const { covers } = prepared;
  const { requirements, ...options } = otherwise;
  const departures = requirements
    .filter(({ name }) => covers(name))
    .map((one) => [one.name, JSON.stringify([plan.generation, options, one])] as const);
  const keyOf = (key: string, name: string) => (covers(name) ? nameAdoptedKey(key, plan.id) : key);
  return {
    ...prepared,
    otherwise: prepareCheckStep(otherwise, check.check, whole, keyOf),
    departures: new Map(departures),
  };
}

/** Steps under adopted limits are made when a record first needs them, and kept. */
function createLimits({ requirements }: StepPlan, check: CheckPlan, whole: Plan): StepAdoptions["underLimits"] {
  const made = new Map<PreparedStep, Map<string, PreparedStep>>();
  const quantityOf = (name: string) => requirements.find((one) => one.name === name)?.tolerance?.quantity;
  return (step, acceptances) => {
    if (acceptances.length === 0) return step;
    const known = made.get(step) ?? new Map<string, PreparedStep>();
    made.set(step, known);
    const key = JSON.stringify(acceptances.map(({ plan }) => plan.id));
    const found = known.get(key);
    if (found !== undefined) return found;
    const find = (name: string) => acceptances.find(({ covers }) => covers(name))?.plan;
    const changed = step.plan.requirements.map((one) => {
      const accept = find(one.name)?.accept;
      return accept === undefined ? one : replaceAccept(one, accept, quantityOf(one.name));
    });
    const keyOf = (key: string, name: string) => {
      const adoption = find(name);
      return adoption === undefined ? key : nameAcceptedKey(key, adoption.id);
    };
    const prepared = prepareCheckStep({ ...step.plan, requirements: changed }, check.check, whole, keyOf);
    known.set(key, prepared);
    return prepared;
  };
}
