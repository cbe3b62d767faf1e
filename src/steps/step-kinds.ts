import type { PolicyStep, StepPlan } from "../model/index.js";
import type { CompileContext, CompiledStep } from "./compile-context.js";
import { compileConfirm, listConfirmFields, listConfirmSlots, prepareConfirm } from "./confirm-step.js";
import { compileHold, listHoldFields, listHoldSlots, prepareHold } from "./hold-step.js";
import { compileInDate, listInDateFields, listInDateSlots, prepareInDate } from "./in-date-step.js";
import { compileMatch, listMatchFields, prepareMatch } from "./match-step.js";
import type { InstrumentChoice } from "./prepared-instrument.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import { compileReading, listReadingFields, listReadingSlots, prepareReading } from "./reading-step.js";
import type { StepField } from "./step-field.js";
import { COMMON_SLOTS, type StepSlots } from "./step-slots.js";
import { compileTiming, listTimingFields, listTimingSlots, prepareTiming } from "./timing-step.js";

/** Compiles one step of a policy; undefined where it cannot be used, which is then reported. */
export function compileStep(step: PolicyStep, context: CompileContext): CompiledStep | undefined {
  switch (step.kind) {
    case "confirm":
      return compileConfirm(step, context);
    case "match":
      return compileMatch(step, context);
    case "reading":
      return compileReading(step, context);
    case "hold":
      return compileHold(step, context);
    case "timing":
      return compileTiming(step, context);
    case "in-date":
      return compileInDate(step, context);
  }
}

/** Makes one planned step ready to judge. */
export function prepareStep(
  plan: StepPlan,
  requirements: readonly PreparedRequirement[],
  choice: InstrumentChoice | undefined,
): PreparedStep {
  switch (plan.kind) {
    case "confirm":
      return prepareConfirm(plan, requirements);
    case "match":
      return prepareMatch(plan, requirements);
    case "reading":
      return prepareReading(plan, requirements, choice);
    case "hold":
      return prepareHold(plan, requirements, choice);
    case "timing":
      return prepareTiming(plan, requirements, choice);
    case "in-date":
      return prepareInDate(plan, requirements);
  }
}

/** The slots of a planned step that rules may read. */
export function listSlots(plan: StepPlan): StepSlots {
  switch (plan.kind) {
    case "confirm":
      return { ...COMMON_SLOTS, ...listConfirmSlots() };
    case "match":
      return COMMON_SLOTS;
    case "reading":
      return { ...COMMON_SLOTS, ...listReadingSlots(plan) };
    case "hold":
      return { ...COMMON_SLOTS, ...listHoldSlots(plan) };
    case "timing":
      return { ...COMMON_SLOTS, ...listTimingSlots() };
    case "in-date":
      return { ...COMMON_SLOTS, ...listInDateSlots() };
  }
}

/** What a form asks for at a planned step. */
export function listFields(plan: StepPlan): readonly StepField[] {
  switch (plan.kind) {
    case "confirm":
      return listConfirmFields(plan);
    case "match":
      return listMatchFields(plan);
    case "reading":
      return listReadingFields(plan);
    case "hold":
      return listHoldFields(plan);
    case "timing":
      return listTimingFields(plan);
    case "in-date":
      return listInDateFields();
  }
}
