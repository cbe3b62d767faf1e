import type { PolicyStep, StepPlanOf } from "../model/index.js";
import { compareDates, parseCalendarSpan } from "../quantities/index.js";
import type { CompileContext, CompiledStep } from "./compile-context.js";
import { createDueReader, type DueDate } from "./due-dates.js";
import { isMissing, type JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import { makeRow, type Row } from "./row.js";
import { sayPlainly } from "./row-words.js";
import { compileCommon, compilePlainRequirement, finishStep } from "./step-common.js";
import type { StepField } from "./step-field.js";
import type { StepSlots } from "./step-slots.js";

type InDatePlan = StepPlanOf<"in-date">;

/** A date of doing, not older than a span; or a printed expiry that has not passed. */
export function compileInDate(
  step: Extract<PolicyStep, { kind: "in-date" }>,
  context: CompileContext,
): CompiledStep | undefined {
  const { within, "not-past": notPast } = step;
  const place = context.place(context.pointer);
  if ((within === undefined) === (notPast === undefined)) {
    const keys = ["within", "not-past"];
    context.diagnostics.report("plan/needs-one-of", place, { keys, given: within === undefined ? [] : keys });
    return undefined;
  }
  const key = within === undefined ? "not-past" : "within";
  if (within !== undefined && parseCalendarSpan(within) === undefined) {
    context.diagnostics.report("plan/bad-span", context.place(`${context.pointer}/within`), { found: within });
    return undefined;
  }
  if (step.basis === undefined) {
    context.diagnostics.report("plan/no-basis", context.place(`${context.pointer}/${key}`, "key"), {});
    return undefined;
  }
  const askedAt = `${context.pointer}/${key}`;
  return finishStep(
    (requirements) => ({
      ...compileCommon(step),
      kind: "in-date",
      ...(within === undefined ? {} : { within }),
      notPast: notPast === true,
      requirements,
    }),
    [compilePlainRequirement("date", step, askedAt, askedAt, context)],
  );
}

export function prepareInDate(plan: InDatePlan, requirements: readonly PreparedRequirement[]): PreparedStep {
  const [date] = requirements;
  if (date === undefined) throw new Error(`${plan.step} has no requirement`);
  const readDue = createDueReader(parseCalendarSpan(plan.within));
  // Why: a date of doing never lies ahead, a printed expiry mostly does.
  const mayLieAhead = plan.within === undefined;
  return {
    plan,
    requirements,
    evidenceKeys: new Set(["on"]),
    judge(entry, _member, context, rows) {
      rows.push(judgeDate(date, entry, readDue(entry?.on), mayLieAhead, context));
    },
    describe(_row, entry, _member, _context, words) {
      const accept = plan.within === undefined ? words.notPast : words.notOlder(plan.within);
      const dueText = plan.within === undefined ? undefined : readDue(entry?.on)?.dueText;
      const observed = typeof entry?.on === "string" && !isMissing(entry.on) ? entry.on : undefined;
      return sayPlainly(observed, dueText === undefined ? accept : accept + words.goodTo(dueText));
    },
  };
}

/** In time up to and including the last day; a date without a day counts from its first. */
function judgeDate(
  date: PreparedRequirement,
  entry: JsonObject | undefined,
  read: DueDate | undefined,
  mayLieAhead: boolean,
  context: JudgeContext,
): Row {
  if (entry === undefined || isMissing(entry.on)) {
    return makeRow(date, "undecided", entry?.result === "not-done" ? "not-done" : "missing");
  }
  if (read === undefined) return makeRow(date, "undecided", "unreadable");
  const { on, due } = read;
  if (!mayLieAhead && compareDates(on, context.recordDate) === 1) {
    return makeRow(date, "undecided", "date-ahead");
  }
  // Why: a due date beyond the year 9999 cannot have passed.
  const passed = due !== undefined && compareDates(due, context.recordDate) === -1;
  return makeRow(date, passed ? "outside" : "within");
}

export function listInDateSlots(): StepSlots {
  return { on: { kind: "date" } };
}

export function listInDateFields(): readonly StepField[] {
  return [{ key: "on", type: "date" }];
}
