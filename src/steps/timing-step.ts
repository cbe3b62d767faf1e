import type { PolicyStep, StepPlanOf } from "../model/index.js";
import { findUnit, parseRecordTime, type Quantity } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import type { CompileContext, CompiledStep } from "./compile-context.js";
import { compileToleranceUse } from "./compile-tolerance.js";
import { describeReading } from "./describe-quantity.js";
import { firstReason } from "./first-reason.js";
import { isJsonObject, isMissing, type JsonObject, readMember } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { bandOf, doubtReading, FINER_THAN_DIVISION, judgeQuantity } from "./judge-quantity.js";
import { canAllShow, type InstrumentChoice, selectCandidates, selectFor } from "./prepared-instrument.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import { makeRow, type Row, withholdDecision } from "./row.js";
import { sayPlainly } from "./row-words.js";
import { compileCommon, compileInstrument, defaultsOf, finishStep } from "./step-common.js";
import { makeQuantityField, OCCURRED_FIELD, type StepField } from "./step-field.js";
import type { StepSlots } from "./step-slots.js";
import { worseRow } from "./worse-row.js";

type TimingPlan = StepPlanOf<"timing">;

/** The time between two events against a tolerance. */
export function compileTiming(
  step: Extract<PolicyStep, { kind: "timing" }>,
  context: CompileContext,
): CompiledStep | undefined {
  const { "from-event": fromEvent, "to-event": toEvent } = step;
  if ((fromEvent === undefined) !== (toEvent === undefined)) {
    const present = fromEvent === undefined ? "to-event" : "from-event";
    const absent = fromEvent === undefined ? "from-event" : "to-event";
    context.diagnostics.report("plan/half-stated", context.place(`${context.pointer}/${present}`, "key"), {
      present,
      absent,
    });
    return undefined;
  }
  const instrument = compileInstrument(step, "duration", context);
  return finishStep(
    (requirements) => ({
      ...compileCommon(step, instrument),
      kind: "timing",
      ...(fromEvent === undefined ? {} : { fromEvent }),
      ...(toEvent === undefined ? {} : { toEvent }),
      requirements,
    }),
    [compileToleranceUse("elapsed", step.tolerance, "tolerance", "duration", defaultsOf(step), context)],
  );
}

export function prepareTiming(
  plan: TimingPlan,
  requirements: readonly PreparedRequirement[],
  choice: InstrumentChoice | undefined,
): PreparedStep {
  const [elapsed] = requirements;
  if (elapsed === undefined) throw new Error(`${plan.step} has no requirement`);
  return {
    plan,
    requirements,
    evidenceKeys: new Set(["elapsed", "events", "occurred"]),
    judge(entry, member, context, rows) {
      rows.push(judgeElapsed(elapsed, plan, entry, member, choice, context));
    },
    describe(row, entry, member, context, words) {
      const said = describeReading(row, selectFor(choice, entry, context), member, context, words);
      if (said.observed !== undefined) return said;
      const observed = entry?.occurred === false ? words.didNotOccur : entry?.elapsed;
      return typeof observed === "string" && observed.trim() !== "" ? sayPlainly(observed, said.accept) : said;
    },
  };
}

/** A time and events that are both recorded are both judged, and the worse stands. */
function judgeElapsed(
  elapsed: PreparedRequirement,
  plan: TimingPlan,
  entry: JsonObject | undefined,
  member: JsonObject | undefined,
  choice: InstrumentChoice | undefined,
  context: JudgeContext,
): Row {
  const band = bandOf(elapsed, member, context);
  const unlimited = typeof band === "string" ? band : undefined;
  if (entry === undefined) return makeRow(elapsed, "undecided", firstReason(unlimited, "missing"));
  if (entry.occurred === false) return makeRow(elapsed, "outside");
  const doubt = !isMissing(entry.occurred) && entry.occurred !== true ? ("unreadable" as const) : undefined;
  const judgeTime = (quantity: Quantity, extra: UndecidedReason | undefined): Row => {
    const row = judgeQuantity(elapsed, quantity, band, firstReason(doubt, extra));
    // Why: a time that runs backwards is a slip of the clock or the pen, whatever an upper limit alone would say.
    if (quantity.quanta < 0) withholdDecision(row, "conflicting");
    return row;
  };
  const failed = (reason: UndecidedReason) => makeRow(elapsed, "undecided", firstReason(unlimited, reason));
  let timed: Row | undefined;
  if (!isMissing(entry.elapsed)) {
    const parsed = context.readQuantity(entry.elapsed, "duration");
    const instruments = selectCandidates(choice, entry, context);
    timed = parsed.ok ? judgeTime(parsed.quantity, doubtReading(parsed.quantity, instruments)) : failed(parsed.fault);
    if (parsed.ok && !canAllShow(instruments, parsed.quantity)) timed.notes = [FINER_THAN_DIVISION];
  }
  if (isMissing(entry.events)) {
    if (timed !== undefined) return timed;
    return failed(entry.result === "not-done" ? "not-done" : (doubt ?? "missing"));
  }
  const between = measureEvents(entry.events, plan);
  const evented = typeof between === "string" ? failed(between) : judgeTime(between, undefined);
  return timed === undefined ? evented : worseRow(timed, evented);
}

/** The time from one event to the other, in seconds; both with an offset, or both local. */
function measureEvents(events: unknown, plan: TimingPlan): Quantity | UndecidedReason {
  if (!isJsonObject(events)) return "unreadable";
  if (plan.fromEvent === undefined || plan.toEvent === undefined) return "missing";
  const fromText = readMember(events, plan.fromEvent);
  const toText = readMember(events, plan.toEvent);
  if (isMissing(fromText) || isMissing(toText)) return "missing";
  const from = parseRecordTime(fromText);
  const to = parseRecordTime(toText);
  const seconds = findUnit("s", "duration");
  if (from === undefined || to === undefined || seconds === undefined) return "unreadable";
  if (from.finerThanMillisecond || to.finerThanMillisecond) return "too-fine";
  if (from.epochMilliseconds !== undefined && to.epochMilliseconds !== undefined) {
    return { quanta: to.epochMilliseconds - from.epochMilliseconds, unit: seconds };
  }
  const bothLocal = from.epochMilliseconds === undefined && to.epochMilliseconds === undefined;
  if (!bothLocal || from.localMilliseconds === undefined || to.localMilliseconds === undefined) return "unreadable";
  return { quanta: to.localMilliseconds - from.localMilliseconds, unit: seconds };
}

export function listTimingSlots(): StepSlots {
  return { elapsed: { kind: "quantity", dimension: "duration" } };
}

export function listTimingFields({ fromEvent, toEvent }: TimingPlan): readonly StepField[] {
  const events = [fromEvent, toEvent].filter((event) => event !== undefined);
  const timed: readonly StepField[] = [makeQuantityField("elapsed", "duration"), OCCURRED_FIELD];
  return events.length === 0 ? timed : [...timed, { key: "events", type: "events", events }];
}
