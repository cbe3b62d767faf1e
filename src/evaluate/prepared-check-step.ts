import type { BoundPlan, Plan, RequirementPlan, StepPlan } from "../model/index.js";
import {
  chooseInstrument,
  type InstrumentChoice,
  type PreparedStep,
  prepareInstrument,
  prepareRequirement,
  prepareStep,
} from "../steps/index.js";

/** A step of a check; `keyOf` gives the key under which the plan has the place of a requirement's limit. */
export function prepareCheckStep(
  step: StepPlan,
  check: string,
  plan: Plan,
  keyOf: (key: string, requirement: string) => string = (key) => key,
): PreparedStep {
  const requirements = step.requirements.map((one) => {
    const key = `${check}/${step.step}/${one.name}`;
    return prepareRequirement(one, step.kind, step.step, keyOf(key, one.name));
  });
  return prepareStep(step, requirements, findInstrument(step.instrument, plan));
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

/** Puts adopted limits, which are of the dimension `of`, in place of a requirement's own. */
export function replaceAccept(
  requirement: RequirementPlan,
  accept: readonly BoundPlan[],
  of: string | undefined,
): RequirementPlan {
  const { tolerance } = requirement;
  // Why: the parent's step may measure something else; its own limits then go on standing.
  if (tolerance === undefined || tolerance.quantity !== of) return requirement;
  const { by: _by, byQuantity: _byQuantity, ...rest } = tolerance;
  return { ...requirement, tolerance: { ...rest, bands: [{ accept: [...accept], caution: [] }] } };
}

/** The places that a step of kind `match` asks for, by their present and former names; undefined for another kind. */
export function listPlaces(step: StepPlan): ReadonlySet<string> | undefined {
  if (step.kind !== "match") return undefined;
  return new Set(step.places.flatMap(({ place, formerly }) => [place, ...formerly]));
}
