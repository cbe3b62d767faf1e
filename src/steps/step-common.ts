import type { PolicyStep, RequirementPlan, StepPlan } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";
import { type Consequence, weighConsequence } from "../terms/index.js";
import type { CompileContext, CompiledRequirement, CompiledStep } from "./compile-context.js";
import type { StepDefaults } from "./compile-tolerance.js";

type CommonPlan = Pick<StepPlan, "step" | "formerly" | "ask" | "each" | "whenFitted" | "after" | "instrument">;

/** The keys that every step may have, in the plan's words. */
export function compileCommon(step: PolicyStep, instrument?: string): CommonPlan {
  return {
    step: step.step,
    formerly: [...(step.formerly ?? [])],
    after: [...(step.after ?? [])],
    ...(step.ask === undefined ? {} : { ask: step.ask }),
    ...(step.each === undefined ? {} : { each: step.each }),
    ...(step["when-fitted"] === undefined ? {} : { whenFitted: step["when-fitted"] }),
    ...(instrument === undefined ? {} : { instrument }),
  };
}

export function defaultsOf(step: PolicyStep): StepDefaults {
  return { consequence: step.consequence, basis: step.basis };
}

/** A requirement without limits: the step's consequence, else the check's. */
export function compilePlainRequirement(
  name: RequirementPlan["name"],
  step: PolicyStep,
  askedAt: string,
  limitAt: string | undefined,
  context: CompileContext,
): CompiledRequirement {
  const consequence = step.consequence ?? context.checkConsequence;
  return {
    plan: { name, consequence, ...(step.basis === undefined ? {} : { basis: step.basis }) },
    askedAt,
    limitAt,
  };
}

/** The step's own consequence where it says more than `refer`, else `refer`. */
export function referOrMore(consequence: Consequence | undefined): Consequence {
  if (consequence === undefined) return "refer";
  return weighConsequence(consequence) > weighConsequence("refer") ? consequence : "refer";
}

/** Checks that the step's instrument is declared and measures what the step reads; undefined where there is none to use. */
export function compileInstrument(step: PolicyStep, dimension: Dimension, context: CompileContext): string | undefined {
  const name = step.instrument;
  if (name === undefined) return undefined;
  const place = context.place(`${context.pointer}/instrument`);
  const plan = context.instruments.get(name);
  if (plan === undefined) {
    const known = [...context.instruments.keys()];
    context.diagnostics.report("plan/unknown-name", place, {
      thing: "instrument",
      name,
      known,
      nearest: context.nearest(name, known),
    });
    return undefined;
  }
  if (plan.quantity !== undefined && plan.quantity !== dimension) {
    context.diagnostics.report("plan/instrument-quantity", place, {
      instrument: name,
      shows: plan.quantity,
      reads: dimension,
    });
    return undefined;
  }
  return name;
}

/** Joins a plan with what was compiled for it; undefined where a requirement could not be. */
export function finishStep(
  makePlan: (requirements: RequirementPlan[]) => StepPlan,
  requirements: readonly (CompiledRequirement | undefined)[],
): CompiledStep | undefined {
  const usable = requirements.filter((requirement) => requirement !== undefined);
  if (usable.length < requirements.length || usable.length === 0) return undefined;
  return { plan: makePlan(usable.map(({ plan }) => plan)), requirements: usable };
}
