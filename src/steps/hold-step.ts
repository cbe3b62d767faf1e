import type { PolicyStep, StepPlanOf } from "../model/index.js";
import type { Quantity } from "../quantities/index.js";
import type { CompileContext, CompiledRequirement, CompiledStep } from "./compile-context.js";
import { compileStepLimit, compileToleranceUse } from "./compile-tolerance.js";
import { describeChange, describeReading } from "./describe-quantity.js";
import type { JsonObject } from "./json-value.js";
import { judgeChange } from "./judge-change.js";
import type { JudgeContext } from "./judge-context.js";
import { judgeSlot } from "./judge-quantity.js";
import { differenceOf } from "./limit.js";
import { type InstrumentChoice, NO_INSTRUMENTS, selectFor } from "./prepared-instrument.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import { type Row, withholdDecision } from "./row.js";
import { compileCommon, compileInstrument, defaultsOf, finishStep, referOrMore } from "./step-common.js";
import { makeQuantityField, type StepField } from "./step-field.js";
import type { StepSlots } from "./step-slots.js";

type HoldPlan = StepPlanOf<"hold">;
type PolicyHold = Extract<PolicyStep, { kind: "hold" }>;

const CHANGES = ["drop", "rise", "change"] as const;

/** A start high enough, a hold long enough, and the change across it; start and lasting weigh `refer` unless the step says more. */
export function compileHold(step: PolicyHold, context: CompileContext): CompiledStep | undefined {
  const { quantity } = step;
  const defaults = defaultsOf(step);
  const instrument = compileInstrument(step, quantity, context);
  const least = referOrMore(step.consequence);
  const start =
    step.start === undefined ? [] : [compileStepLimit("start", step.start, quantity, least, defaults, context)];
  const lasting =
    step.lasting === undefined ? [] : [compileStepLimit("lasting", step.lasting, "duration", least, defaults, context)];
  return finishStep(
    (requirements) => ({
      ...compileCommon(step, instrument),
      kind: "hold",
      quantity,
      temperature: "ignored",
      requirements,
    }),
    [...start, ...lasting, compileChange(step, context)],
  );
}

function compileChange(step: PolicyHold, context: CompileContext): CompiledRequirement | undefined {
  const given = CHANGES.filter((name) => step[name] !== undefined);
  const [name] = given;
  const use = name === undefined ? undefined : step[name];
  if (name === undefined || use === undefined || given.length > 1) {
    context.diagnostics.report("plan/needs-one-of", context.place(context.pointer), { keys: CHANGES, given });
    return undefined;
  }
  return compileToleranceUse(name, use, name, differenceOf(step.quantity), defaultsOf(step), context);
}

export function prepareHold(
  plan: HoldPlan,
  requirements: readonly PreparedRequirement[],
  choice: InstrumentChoice | undefined,
): PreparedStep {
  const start = requirements.find(({ name }) => name === "start");
  const lasting = requirements.find(({ name }) => name === "lasting");
  const change = requirements.find(({ name }) => CHANGES.some((known) => known === name));
  if (change === undefined) throw new Error(`${plan.step} has no change`);
  return {
    plan,
    requirements,
    evidenceKeys: new Set(["start", "end", "held", "startTemperature", "endTemperature"]),
    judge(entry, member, context, rows) {
      const startRow = start && judgeSlot(start, entry?.start, choice, entry, member, context);
      const lastingRow = lasting && judgeSlot(lasting, entry?.held, undefined, entry, member, context);
      const changeRow = judgeChange(change, plan.quantity, entry, member, choice, context);
      if (startRow !== undefined) rows.push(startRow);
      if (lastingRow !== undefined) {
        // Why: nothing lasts less than no time; such a figure is a slip, not a long hold.
        if (lastingRow.quanta < 0) withholdDecision(lastingRow, "conflicting");
        rows.push(lastingRow);
      }
      if (isNotWithin(startRow)) withholdDecision(changeRow, "start-too-low");
      if (isNotWithin(lastingRow)) withholdDecision(changeRow, "hold-too-short");
      rows.push(changeRow);
    },
    describe(row, entry, member, context, words) {
      const instruments = selectFor(choice, entry, context);
      if (row.requirement === start) return describeReading(row, instruments, member, context, words);
      if (row.requirement === lasting) return describeReading(row, NO_INSTRUMENTS, member, context, words);
      return describeChange(row, findReadings(plan, row, entry, context), instruments, member, context, words);
    },
  };
}

function isNotWithin(row: Row | undefined): boolean {
  return row !== undefined && row.outcome !== "within" && row.outcome !== "caution";
}

/** The readings of which the change is the first less the second. */
function findReadings(
  plan: HoldPlan,
  row: Row,
  entry: JsonObject | undefined,
  context: JudgeContext,
): readonly [Quantity, Quantity] | undefined {
  const start = context.readQuantity(entry?.start, plan.quantity);
  const end = context.readQuantity(entry?.end, plan.quantity);
  if (!start.ok || !end.ok || start.quantity.unit.family !== end.quantity.unit.family) return undefined;
  return row.requirement.name === "rise" ? [end.quantity, start.quantity] : [start.quantity, end.quantity];
}

export function listHoldSlots({ quantity }: HoldPlan): StepSlots {
  const level = { kind: "quantity", dimension: quantity } as const;
  return { start: level, end: level, held: { kind: "quantity", dimension: "duration" } };
}

export function listHoldFields({ quantity }: HoldPlan): readonly StepField[] {
  return [
    makeQuantityField("start", quantity),
    makeQuantityField("end", quantity),
    makeQuantityField("held", "duration"),
  ];
}
