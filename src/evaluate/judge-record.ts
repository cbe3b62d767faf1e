import { compareDates, formatDate, parseDate } from "../quantities/index.js";
import {
  type JudgeContext,
  makeRow,
  type PreparedRequirement,
  type PreparedStep,
  type Row,
  weighRow,
} from "../steps/index.js";
import { weighConsequence } from "../terms/index.js";
import { collectRemarks } from "./collect-remarks.js";
import { remarkAdoption } from "./cover-rows.js";
import { isAsked, judgeAdoptedStep } from "./judge-adopted.js";
import { judgeDue } from "./judge-intervals.js";
import { judgeOrder } from "./judge-order.js";
import { createRuleFacts, judgeRule } from "./judge-rules.js";
import { judgeScope } from "./judge-scope.js";
import { groupEntries, hasEvidence, judgeStep, type PlacedEntry, placeEntries, readFitting } from "./judge-step.js";
import type { Judgement, Remark } from "./judgement.js";
import { isAdopted } from "./prepared-adoption.js";
import type { PreparedCheck, PreparedPolicy } from "./prepared-policy.js";
import { type Envelope, readEnvelope, renameKind } from "./read-envelope.js";
import { createJudgeContext } from "./record-context.js";

const NOTE = weighConsequence("note");
const REFER = weighConsequence("refer");

/** The kernel: judges one record of any shape. Never throws on a JSON value; touches no policy text. */
export function judgeRecord(policy: PreparedPolicy, value: unknown): Judgement {
  const read = readEnvelope(value);
  if ("problems" in read) return makeJudgement(undefined, read.problems);
  const check = policy.checks.get(read.envelope.check.trim());
  const envelope = renameKind(read.envelope, check?.plan.subject, policy.presentKinds);
  const context = createJudgeContext(policy, envelope);
  const judgement = makeJudgement(envelope, [], check, context);
  const { remarks } = judgement;
  remarks.push(...judgeScope(policy, check, envelope, context), ...noteTimeInForce(policy, envelope));
  if (check === undefined) {
    const params = { check: envelope.check };
    remarks.push({ code: "record/unknown-check", weight: REFER, pointer: "/check", params });
  } else if (!remarks.some(({ reason }) => reason === "not-for-this-policy")) {
    const entries = placeEntries(envelope.steps, check);
    judgeCheck(check, envelope, entries, judgement);
    remarks.push(...collectRemarks(envelope, entries, check, policy, judgement.rows, context));
    // Why: beside a finding that matters it would say nothing new.
    if (!isAnythingJudged(judgement) && weighJudgement(judgement, policy.gapsAsOutside) < REFER) {
      const nothing = { code: "record/nothing-judged", reason: "nothing-judged", outcome: "undecided" } as const;
      remarks.push({ ...nothing, weight: REFER, pointer: "/steps", params: {} });
    }
  }
  judgement.weight = weighJudgement(judgement, policy.gapsAsOutside);
  return judgement;
}

function makeJudgement(
  envelope: Envelope | undefined,
  problems: Judgement["problems"],
  check?: PreparedCheck,
  context?: JudgeContext,
): Judgement {
  return {
    envelope,
    problems,
    check,
    context,
    rows: [],
    stepOf: [],
    remarks: [],
    brokenPairs: [],
    weight: REFER,
  };
}

/** A record outside the policy's time in force is judged, with a note. */
function noteTimeInForce(policy: PreparedPolicy, envelope: Envelope): readonly Remark[] {
  const { effective } = policy.plan.policy;
  if (effective === undefined) return [];
  const { date } = envelope.time;
  const from = parseDate(effective.from);
  const to = parseDate(effective.to);
  const early = from !== undefined && compareDates(date, from) === -1;
  const late = to !== undefined && compareDates(date, to) === 1;
  if (!early && !late) return [];
  const params = { date: formatDate(date), from: effective.from ?? "", to: effective.to ?? "" };
  return [{ code: "record/outside-effective", weight: NOTE, pointer: "/at", params }];
}

const NO_ENTRIES: readonly PlacedEntry[] = [];

function judgeCheck(check: PreparedCheck, envelope: Envelope, all: readonly PlacedEntry[], judgement: Judgement): void {
  const { rows, remarks, brokenPairs, context } = judgement;
  if (context === undefined) throw new Error("a record is judged without its context");
  if (check.competence !== undefined) rows.push(judgeCompetence(check.competence, check, context));
  if (check.order !== undefined) {
    const order = judgeOrder(check.order, check, all);
    rows.push(order.row);
    brokenPairs.push(...order.brokenPairs);
  }
  const groups = groupEntries(all, check);
  for (let place = 0; place < check.steps.length; place += 1) {
    const step = check.steps[place];
    const entries = groups[place] ?? NO_ENTRIES;
    if (step === undefined) continue;
    if (isAsked(place, check, context)) judgeOneStep(step, place, check, entries, envelope, judgement);
    else if (entries[0] !== undefined) {
      const name = step.plan.step;
      const pointer = `/steps/${entries[0].place}`;
      remarks.push({ code: "step/not-asked", weight: NOTE, pointer, step: name, params: { step: name } });
    }
  }
  for (const due of check.intervals) {
    const judged = judgeDue(due, envelope, context);
    rows.push(...judged);
    remarks.push(...judged.flatMap(remarkAdoption));
  }
  if (check.rules.length === 0) return;
  const facts = createRuleFacts(check, groups, envelope, context);
  for (const rule of check.rules) rows.push(judgeRule(rule, facts, context));
}

function judgeOneStep(
  step: PreparedStep,
  place: number,
  check: PreparedCheck,
  entries: readonly PlacedEntry[],
  envelope: Envelope,
  { rows, stepOf, remarks, context }: Judgement,
): void {
  if (context === undefined) throw new Error("a step is judged without its context");
  const adoptions = check.adoptionsAt[place];
  if (adoptions === undefined || !isAdopted(adoptions)) {
    for (const row of judgeStep(step, entries, envelope, context)) {
      stepOf[rows.length] = step;
      rows.push(row);
      if (row.notes.length > 0) remarks.push(...remarkNotes(row));
    }
  } else {
    for (const { row, step: asked } of judgeAdoptedStep(step, adoptions, entries, check, envelope, context)) {
      stepOf[rows.length] = asked;
      rows.push(row);
      remarks.push(...remarkNotes(row), ...remarkAdoption(row));
    }
  }
  const { whenFitted } = step.plan;
  if (whenFitted === undefined || readFitting(step, envelope) !== "not-fitted") return;
  const evident = entries.find(({ entry }) => hasEvidence(step, entry));
  if (evident !== undefined) {
    remarks.push({
      code: "step/recorded-though-not-fitted",
      weight: NOTE,
      pointer: `/steps/${evident.place}`,
      step: step.plan.step,
      params: { fitting: whenFitted },
    });
  }
}

function judgeCompetence(requirement: PreparedRequirement, check: PreparedCheck, context: JudgeContext): Row {
  const fact = context.textFact("competence", undefined);
  if (fact.text === undefined) return makeRow(requirement, "undecided", fact.reason);
  const accepted = check.plan.competence?.includes(fact.text) === true;
  const row = makeRow(requirement, accepted ? "within" : "outside");
  row.details = { competence: fact.text };
  return row;
}

function remarkNotes(row: Row): readonly Remark[] {
  const pointer = row.entries[0] === undefined ? "/steps" : `/steps/${row.entries[0]}`;
  // Why: what is outside as recorded is settled; a note on how it was read would only draw away from that.
  if (row.outcome === "outside") return [];
  return row.notes.map((code) => ({
    code,
    weight: NOTE,
    pointer,
    step: row.requirement.step,
    part: row.part,
    requirement: row.requirement,
    params: {},
  }));
}

/** At least one step requirement whose failure would weigh `refer` or more is within or caution. */
function isAnythingJudged({ rows, stepOf }: Judgement): boolean {
  return rows.some(
    (row, index) =>
      stepOf[index] !== undefined &&
      (row.outcome === "within" || row.outcome === "caution") &&
      weighConsequence(row.consequence) >= REFER,
  );
}

function weighJudgement({ rows, remarks }: Judgement, gapsAsOutside: boolean): number {
  let heaviest = -1;
  for (const row of rows) heaviest = Math.max(heaviest, weighRow(row, gapsAsOutside));
  for (const { weight } of remarks) heaviest = Math.max(heaviest, weight);
  return heaviest;
}
