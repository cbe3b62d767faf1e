import {
  isJsonObject,
  isMissing,
  type JsonObject,
  type JudgeContext,
  type Member,
  makeNotApplicable,
  makeRow,
  type PreparedStep,
  type Row,
  readMember,
  weighRow,
  withholdDecision,
  worseRow,
} from "../steps/index.js";
import { type UndecidedReason, weighConsequence } from "../terms/index.js";
import type { PreparedCheck } from "./prepared-policy.js";
import type { Envelope, StepEntry } from "./read-envelope.js";
import { WHOLE } from "./read-members.js";
import { writeStableText } from "./stable-text.js";

const REFER = weighConsequence("refer");

/** A recorded entry with its place in the record, and that of its step in the check. */
export interface PlacedEntry {
  readonly place: number;
  readonly entry: JsonObject;
  /** The name of the step as recorded, without blanks around it. */
  readonly name: string;
  /** -1 where the check has no such step. */
  readonly listed: number;
}

const ONLY_WHOLE = [WHOLE] as const;

/** True where a step entry holds any evidence of the step's kind. */
export function hasEvidence(step: PreparedStep, entry: JsonObject): boolean {
  for (const key of step.evidenceKeys) if (!isMissing(entry[key])) return true;
  return false;
}

/** Judges one step of one record: once, or once for each member, with the worst of several entries for the same thing. */
export function judgeStep(
  step: PreparedStep,
  entries: readonly PlacedEntry[],
  envelope: Envelope,
  context: JudgeContext,
): Row[] {
  const fitting = readFitting(step, envelope);
  const [only] = entries;
  // Why: most steps are asked once and recorded once, and then nothing has to be merged.
  if (fitting === "fitted" && step.plan.each === undefined && entries.length < 2) return judgeOnce(step, only, context);
  if (fitting === "not-fitted" && !entries.some(({ entry }) => hasEvidence(step, entry))) {
    return step.requirements.map((requirement) => makeNotApplicable(requirement, "not-fitted"));
  }
  const members = step.plan.each === undefined ? ONLY_WHOLE : context.members(step.plan.each);
  const rows: Row[] = [];
  for (const member of members) rows.push(...judgeMember(step, member, members, entries, context));
  if (step.judgeAcross !== undefined) step.judgeAcross([...rows], context, rows);
  if (fitting !== "fitted" && fitting !== "not-fitted") {
    for (const row of rows) withholdDecision(row, fitting);
  }
  return rows;
}

/** A step that is asked of the subject as a whole, and recorded once or not at all. */
function judgeOnce(step: PreparedStep, placed: PlacedEntry | undefined, context: JudgeContext): Row[] {
  const rows: Row[] = [];
  step.judge(placed?.entry, undefined, context, rows);
  if (placed !== undefined) markEntry(rows, placed);
  if (step.judgeAcross !== undefined) step.judgeAcross([...rows], context, rows);
  return rows;
}

/** `fitted` says both ways; an absent name leaves it open. */
export function readFitting(step: PreparedStep, { subject }: Envelope): "fitted" | "not-fitted" | UndecidedReason {
  const { whenFitted } = step.plan;
  if (whenFitted === undefined) return "fitted";
  const fitted = isJsonObject(subject.fitted) ? readMember(subject.fitted, whenFitted) : undefined;
  if (isMissing(fitted))
    return isMissing(subject.fitted) || isJsonObject(subject.fitted) ? "fitting-not-recorded" : "unreadable";
  if (typeof fitted !== "boolean") return "unreadable";
  return fitted ? "fitted" : "not-fitted";
}

function judgeMember(
  step: PreparedStep,
  member: Member,
  members: readonly Member[],
  entries: readonly PlacedEntry[],
  context: JudgeContext,
): readonly Row[] {
  const judged: JudgedEntry[] = [];
  for (const placed of entries) {
    if (!concerns(placed.entry, member, members)) continue;
    judged.push({ placed, rows: judgeEntry(step, member, members, placed, context) });
  }
  const rows = judged.length === 0 ? judgeNothing(step, member, context) : mergeEntries(judged, context);
  for (const row of rows) {
    if (member.fault !== undefined) withholdDecision(row, member.fault);
    row.member = member.index;
    row.part = member.id ?? (member.index === -1 ? undefined : `#${member.index + 1}`);
  }
  return rows;
}

function judgeNothing(step: PreparedStep, member: Member, context: JudgeContext): Row[] {
  const rows: Row[] = [];
  step.judge(undefined, member.object, context, rows);
  return rows;
}

/** Whether an entry is about `member`: it names it, or it names none or a stranger, which concerns every member. */
function concerns(entry: JsonObject, member: Member, members: readonly Member[]): boolean {
  if (member.index === -1) return true;
  const { of } = entry;
  if (typeof of !== "string" || of.trim() === "") return true;
  const name = of.trim();
  return member.id === name || !members.some(({ id }) => id === name);
}

/**
 * Judges one entry. `of` may be left out where there is one member; where there are several it is missing, and a name that is
 * not in the list conflicts with it: such an entry decides against the record, never for it.
 */
function judgeEntry(
  step: PreparedStep,
  member: Member,
  members: readonly Member[],
  placed: PlacedEntry,
  context: JudgeContext,
): Row[] {
  const rows: Row[] = [];
  step.judge(placed.entry, member.object, context, rows);
  const doubt = doubtMember(placed.entry, member, members);
  markEntry(rows, placed);
  if (doubt !== undefined) for (const row of rows) withholdDecision(row, doubt);
  return rows;
}

/** The entry that rows were judged by; `not-done` weighs `refer` at least, whatever the step weighs. */
function markEntry(rows: readonly Row[], { place, entry }: PlacedEntry): void {
  const places = [place];
  for (const row of rows) {
    row.entries = places;
    if (entry.result === "not-done") row.leastWeight = REFER;
  }
}

/** Why an entry cannot speak for `member`; undefined where it can. */
export function doubtMember(
  entry: JsonObject,
  member: Member,
  members: readonly Member[],
): UndecidedReason | undefined {
  if (member.index === -1) return undefined;
  if (isMissing(entry.of)) return members.length === 1 ? undefined : "missing";
  if (typeof entry.of !== "string") return "unreadable";
  return entry.of.trim() === member.id ? undefined : "conflicting";
}

interface JudgedEntry {
  readonly placed: PlacedEntry;
  readonly rows: readonly Row[];
}

/** The worst of several entries stands, never better than conflicting where they differ in more than `at` and `note`. */
function mergeEntries(judged: readonly JudgedEntry[], context: JudgeContext): readonly Row[] {
  const [only] = judged;
  if (judged.length === 1 && only !== undefined) return only.rows;
  // Why: sorted by content, so that the order of a record's steps never chooses between equally bad entries.
  const sorted = judged
    .map(({ placed, rows }) => ({ place: placed.place, rows, text: writeStableText(withoutAside(placed.entry)) }))
    .sort((one, other) => (one.text === other.text ? one.place - other.place : one.text < other.text ? -1 : 1));
  const differ = sorted.some(({ text }) => text !== sorted[0]?.text);
  const count = only?.rows.length ?? 0;
  return Array.from({ length: count }, (_, index) => {
    const candidates = sorted.map(({ rows }) => rows[index]).filter((row) => row !== undefined);
    const worst = candidates.reduce((one, other) => worseRow(one, other));
    const others = sorted.map(({ place }) => place).filter((place) => !worst.entries.includes(place));
    worst.entries = [...worst.entries, ...others.sort((one, other) => one - other)];
    // Why: an entry weighs what it weighs by itself, whatever stands beside it.
    const weights = candidates.map((row) => Math.max(row.leastWeight, weighRow(row, context.gapsAsOutside)));
    worst.candidates = candidates;
    worst.leastWeight = Math.max(...weights, differ ? weighGap(worst, context) : 0);
    if (differ) withholdDecision(worst, "conflicting");
    return worst;
  });
}

/** What the requirement weighs where the record contradicts itself about it; a mild defect makes that no milder. */
function weighGap({ requirement }: Row, context: JudgeContext): number {
  return weighRow(makeRow(requirement, "undecided", "conflicting"), context.gapsAsOutside);
}

function withoutAside(entry: JsonObject): JsonObject {
  const { at: _at, note: _note, ...rest } = entry;
  return rest;
}

/** The entries of each step of a check, by its place; none where nothing was recorded for it. */
export type EntryGroups = readonly (readonly PlacedEntry[] | undefined)[];

/** Finds the step of every entry of a record: once, for all that ask of it. */
export function placeEntries(steps: readonly StepEntry[], check: PreparedCheck): readonly PlacedEntry[] {
  return steps.map(({ step, entry }, place) => ({ place, entry, name: step, listed: check.placeOf.get(step) ?? -1 }));
}

/** Groups entries by the place of their step in the check; entries of unknown steps are left out. */
export function groupEntries(entries: readonly PlacedEntry[], check: PreparedCheck): EntryGroups {
  const groups: PlacedEntry[][] = new Array(check.steps.length);
  for (const placed of entries) {
    if (placed.listed === -1) continue;
    const group = groups[placed.listed];
    if (group === undefined) groups[placed.listed] = [placed];
    else group.push(placed);
  }
  return groups;
}
