import type { PolicyStep, StepPlanOf } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import type { LimitWords } from "../words/index.js";
import { judgeApart } from "./apart.js";
import type { CompileContext, CompiledStep } from "./compile-context.js";
import { compileStepLimit, compileToleranceUse } from "./compile-tolerance.js";
import { describeChange, describeReading } from "./describe-quantity.js";
import { firstReason } from "./first-reason.js";
import { isJsonObject, type JsonObject, readMember } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { bandOf, doubtBelowNothing, doubtReading, FINER_THAN_DIVISION, judgeQuantity } from "./judge-quantity.js";
import { differenceOf } from "./limit.js";
import {
  canAllShow,
  type InstrumentChoice,
  NO_INSTRUMENTS,
  selectCandidates,
  selectFor,
} from "./prepared-instrument.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import type { BandRanges } from "./prepared-tolerance.js";
import { readEvidence } from "./reading-evidence.js";
import { makeRow, type Row } from "./row.js";
import { sayPlainly } from "./row-words.js";
import { compileCommon, compileInstrument, defaultsOf, finishStep } from "./step-common.js";
import { makeQuantityField, OCCURRED_FIELD, type StepField } from "./step-field.js";
import type { StepSlots } from "./step-slots.js";

type ReadingPlan = StepPlanOf<"reading">;

/** A quantity against a tolerance; `apart` compares the members of `each`. */
export function compileReading(
  step: Extract<PolicyStep, { kind: "reading" }>,
  context: CompileContext,
): CompiledStep | undefined {
  const { quantity } = step;
  const defaults = defaultsOf(step);
  const instrument = compileInstrument(step, quantity, context);
  const level = compileToleranceUse("level", step.tolerance, "tolerance", quantity, defaults, context);
  if (step.apart !== undefined && step.each === undefined) {
    context.diagnostics.report("plan/apart-without-each", context.place(`${context.pointer}/apart`, "key"), {});
    return undefined;
  }
  const consequence = level?.plan.consequence ?? context.checkConsequence;
  const apart =
    step.apart === undefined
      ? []
      : [compileStepLimit("apart", step.apart, differenceOf(quantity), consequence, defaults, context)];
  return finishStep(
    (requirements) => ({
      ...compileCommon(step, instrument),
      kind: "reading",
      quantity,
      requirements,
    }),
    [level, ...apart],
  );
}

export function prepareReading(
  plan: ReadingPlan,
  requirements: readonly PreparedRequirement[],
  choice: InstrumentChoice | undefined,
): PreparedStep {
  const level = requirements.find(({ name }) => name === "level");
  const apart = requirements.find(({ name }) => name === "apart");
  if (level === undefined) throw new Error(`${plan.step} has no level`);
  return {
    plan,
    requirements,
    evidenceKeys: new Set(["reading", "occurred"]),
    judge(entry, member, context, rows) {
      rows.push(judgeLevel(level, plan.quantity, entry, member, choice, context));
    },
    ...(apart === undefined
      ? {}
      : {
          judgeAcross(stepRows: readonly Row[], context: JudgeContext, rows: Row[]) {
            rows.push(judgeApart(apart, stepRows, context));
          },
        }),
    describe(row, entry, member, context, words) {
      if (row.requirement === apart) return describeChange(row, undefined, NO_INSTRUMENTS, undefined, context, words);
      const said = describeReading(row, selectFor(choice, entry, context), member, context, words);
      return said.observed === undefined ? sayPlainly(describeEvidence(entry, words), said.accept) : said;
    },
  };
}

/** Evidence that is no plain quantity, as recorded. */
function describeEvidence(entry: JsonObject | undefined, words: LimitWords): string | undefined {
  if (entry === undefined) return undefined;
  if (entry.occurred === false) return words.didNotOccur;
  const { reading } = entry;
  if (typeof reading === "string" && reading.trim() !== "") return reading;
  if (typeof reading === "number") return String(reading);
  if (!isJsonObject(reading)) return undefined;
  const atMost = readMember(reading, "atMost");
  if (typeof atMost === "string") return words.bounds["at-most"](atMost);
  const between = readMember(reading, "between");
  return Array.isArray(between) ? words.range(between.map(String)) : undefined;
}

function judgeLevel(
  level: PreparedRequirement,
  dimension: Dimension,
  entry: JsonObject | undefined,
  member: JsonObject | undefined,
  choice: InstrumentChoice | undefined,
  context: JudgeContext,
): Row {
  const band = bandOf(level, member, context);
  const unlimited = typeof band === "string" ? band : undefined;
  if (entry === undefined) return makeRow(level, "undecided", firstReason(unlimited, "missing"));
  if (entry.occurred === false) return makeRow(level, "outside");
  const evidence = readEvidence(entry, dimension, context);
  const instruments = selectCandidates(choice, entry, context);
  switch (evidence.form) {
    case "fault":
      return makeRow(level, "undecided", firstReason(unlimited, evidence.reason));
    case "value": {
      const unsure = firstReason(doubtReading(evidence.quantity, instruments), evidence.doubt);
      const doubt = firstReason(unsure, doubtBelowNothing(evidence.quantity, band));
      const row = judgeQuantity(level, evidence.quantity, band, doubt);
      if (!canAllShow(instruments, evidence.quantity)) row.notes = [FINER_THAN_DIVISION];
      return row;
    }
    case "interval": {
      if (typeof band === "string") return makeRow(level, "undecided", band);
      const { low, high, family, ends } = evidence;
      const last = ends.at(-1);
      const row = placeInterval(level, band.rangesOf(family), low, high);
      const doubt = ends.reduce<UndecidedReason | undefined>(
        (reason, end) => firstReason(reason, doubtReading(end, instruments)),
        firstReason(evidence.doubt, last && doubtBelowNothing(last, band)),
      );
      if (doubt !== undefined && row.outcome !== "outside") return makeRow(level, "undecided", doubt);
      return row;
    }
  }
}

/** Decides only where all that the evidence allows lies on one side; never kinder than its worst value. */
function placeInterval(level: PreparedRequirement, ranges: BandRanges, low: number, high: number): Row {
  const { accept, caution } = ranges;
  if (high < accept.low || low > accept.high) return makeRow(level, "outside");
  if (low < accept.low || high > accept.high) return makeRow(level, "undecided", "uncertainty");
  const close = caution.some((region) => low <= region.high && high >= region.low);
  return makeRow(level, close ? "caution" : "within");
}

export function listReadingSlots({ quantity }: ReadingPlan): StepSlots {
  return { reading: { kind: "quantity", dimension: quantity } };
}

export function listReadingFields({ quantity }: ReadingPlan): readonly StepField[] {
  return [makeQuantityField("reading", quantity), OCCURRED_FIELD];
}
