import { isObject } from "./hand-cylinders.js";
import { createReader, DURATION, type Fault, LENGTH, PRESSURE } from "./hand-quantity.js";
import { type Entry, firstOf, isMissing, leaveOpen, type Reason, type Ruling, ruleOutcome } from "./hand-ruling.js";

const BAR = 100_000_000;
const SECOND = 1000;
const METRE = 1_000_000;
export const DIVISION = 10 * BAR;
const MILLISECONDS_PER_DAY = 86_400_000;

export const readPressure = createReader(PRESSURE);
export const readDuration = createReader(DURATION);
const readLength = createReader(LENGTH);

/** A gauge: its name in the policy, how it reads, and the highest value that it shows; each begins at 0. */
export interface Gauge {
  readonly name: string;
  readonly read: (value: unknown) => number | Fault;
  readonly highest: number;
}

export const SET_GAUGE: Gauge = { name: "set-gauge", read: readPressure, highest: 400 * BAR };
export const STOPWATCH: Gauge = { name: "stopwatch", read: readDuration, highest: 3600 * SECOND };
export const TAPE: Gauge = { name: "tape", read: readLength, highest: 30 * METRE };

/** Limits in whole quanta, included in what is accepted; caution lies above or below its own. */
export interface Limits {
  readonly least: number;
  readonly most: number;
  readonly cautionBelow: number;
  readonly cautionAbove: number;
}

const NO_CAUTION = { cautionBelow: Number.NEGATIVE_INFINITY, cautionAbove: Number.POSITIVE_INFINITY };
export const WHISTLE: Limits = { least: 50 * BAR, most: 60 * BAR, ...NO_CAUTION };
export const LINE: Limits = { least: 5.95 * METRE, most: Number.POSITIVE_INFINITY, ...NO_CAUTION };
export const PRE_ALARM: Limits = { least: 25 * SECOND, most: 35 * SECOND, ...NO_CAUTION };
export const FULL_ALARM: Limits = { least: 5 * SECOND, most: 15 * SECOND, ...NO_CAUTION };
export const START: Limits = { least: 100 * BAR, most: Number.POSITIVE_INFINITY, ...NO_CAUTION };
export const LEAK = { most: 10 * BAR, cautionAbove: 5 * BAR, lasting: 60 * SECOND };
export const MASK_SEAL = { most: 0, cautionAbove: Number.POSITIVE_INFINITY, lasting: 8 * SECOND };

/** What the subject says of instruments; the entry's own word goes first. */
export type Instruments = Entry | undefined;

export function doubtGauge(quanta: number, gauge: Gauge, entry: Entry, instruments: Instruments): Reason | undefined {
  const recorded = isMissing(entry.instrument) ? instruments?.[gauge.name] : entry.instrument;
  if (recorded !== undefined && !isMissing(recorded)) {
    if (typeof recorded !== "string" || recorded.trim() !== gauge.name) return "instrument-unknown";
  }
  return quanta < 0 || quanta > gauge.highest ? "off-range" : undefined;
}

function place(quanta: number, limits: Limits, doubt: Reason | undefined): Ruling {
  if (quanta < limits.least || quanta > limits.most) return ruleOutcome("outside");
  if (doubt !== undefined) return leaveOpen(doubt);
  return ruleOutcome(quanta < limits.cautionBelow || quanta > limits.cautionAbove ? "caution" : "within");
}

function notDoneOr(entry: Entry, fault: Reason): Reason {
  return fault === "missing" && entry.result === "not-done" ? "not-done" : fault;
}

export function ruleOnConfirm(entry: Entry | undefined): Ruling {
  if (entry === undefined) return leaveOpen("missing");
  const { result, defect } = entry;
  if (result === "defect" || !isMissing(defect)) return ruleOutcome("outside");
  if (result === "satisfactory") return ruleOutcome("within");
  if (isMissing(result)) return leaveOpen("missing");
  if (result === "not-done") return leaveOpen("not-done");
  return leaveOpen(typeof result === "string" ? "unknown-word" : "unreadable");
}

/** The same text in every place; `wanted` is what it must equal, or why that is not known. */
export function ruleOnMatch(
  entry: Entry | undefined,
  places: readonly string[],
  wanted?: { text?: string; reason?: Reason },
): Ruling {
  const seen = entry?.seen;
  let reason = wanted?.reason;
  let first = wanted?.text;
  if (!isObject(seen)) {
    const fault = isMissing(seen) ? (entry?.result === "not-done" ? "not-done" : "missing") : "unreadable";
    return leaveOpen(firstOf<Reason>(reason, fault) ?? fault);
  }
  let differ = false;
  for (const name of places) {
    const text = Object.hasOwn(seen, name) ? seen[name] : undefined;
    if (typeof text !== "string" || text.trim() === "")
      reason = firstOf<Reason>(reason, isMissing(text) ? "missing" : "unreadable");
    else if (first === undefined) first = text.trim();
    else if (text.trim() !== first) differ = true;
  }
  if (differ) return ruleOutcome("outside");
  return reason === undefined ? ruleOutcome("within") : leaveOpen(reason);
}

export interface Level extends Ruling {
  readonly quanta: number;
  doubt: Ruling["reason"];
}

/** A reading of one gauge; `unlimited` is why the limits are not known. */
export function ruleOnReading(
  entry: Entry | undefined,
  gauge: Gauge,
  limits: Limits | Reason,
  instruments: Instruments,
): Level {
  const unlimited = typeof limits === "string" ? limits : undefined;
  const fail = (reason: Reason): Level => ({
    ...leaveOpen(firstOf(unlimited, reason) ?? reason),
    quanta: Number.NaN,
    doubt: undefined,
  });
  if (entry === undefined) return fail("missing");
  const { occurred } = entry;
  if (occurred === false) return { ...ruleOutcome("outside"), quanta: Number.NaN, doubt: undefined };
  const said = occurred === undefined || occurred === true || isMissing(occurred) ? undefined : "unreadable";
  const quanta = gauge.read(entry.reading);
  if (typeof quanta === "string") {
    if (quanta !== "missing") return fail(quanta);
    return fail(entry.result === "not-done" ? "not-done" : (said ?? "missing"));
  }
  const doubt = firstOf<Reason>(doubtGauge(quanta, gauge, entry, instruments), said);
  if (typeof limits === "string") return { ...leaveOpen(firstOf(limits, doubt) ?? limits), quanta, doubt };
  const { outcome, reason } = place(quanta, limits, doubt);
  return { outcome, reason, quanta, doubt };
}

/** Start, length and drop of a hold, in this order. */
export function ruleOnHold(
  entry: Entry | undefined,
  limits: typeof LEAK,
  instruments: Instruments,
  rulings: Ruling[],
): void {
  if (entry === undefined) {
    rulings.push(leaveOpen("missing"), leaveOpen("missing"), leaveOpen("missing"));
    return;
  }
  const start = readPressure(entry.start);
  const held = readDuration(entry.held);
  const startRuling =
    typeof start === "string"
      ? leaveOpen(notDoneOr(entry, start))
      : place(start, START, doubtGauge(start, SET_GAUGE, entry, instruments));
  const heldRuling =
    typeof held === "string"
      ? leaveOpen(notDoneOr(entry, held))
      : ruleOutcome(held < limits.lasting ? "outside" : "within");
  rulings.push(startRuling, heldRuling);
  const drop = ruleOnDrop(entry, start, readPressure(entry.end), limits, instruments);
  if (drop.outcome !== "outside") {
    if (startRuling.outcome !== "within") openUp(drop, "start-too-low");
    if (heldRuling.outcome !== "within") openUp(drop, "hold-too-short");
  }
  rulings.push(drop);
}

function openUp(ruling: Ruling, reason: Reason): void {
  ruling.outcome = "undecided";
  ruling.reason = firstOf(ruling.reason, reason);
}

function ruleOnDrop(
  entry: Entry,
  start: number | Fault,
  end: number | Fault,
  limits: typeof LEAK,
  instruments: Instruments,
): Ruling {
  if (typeof start === "string" || typeof end === "string") {
    const fault = firstOf(typeof start === "string" ? start : undefined, typeof end === "string" ? end : undefined);
    return leaveOpen(notDoneOr(entry, fault ?? "missing"));
  }
  const drop = start - end;
  if (drop > limits.most) return ruleOutcome("outside");
  const doubt = firstOf(
    doubtGauge(start, SET_GAUGE, entry, instruments),
    doubtGauge(end, SET_GAUGE, entry, instruments),
  );
  const open = drop < -DIVISION ? firstOf<Reason>(doubt, "moved-the-wrong-way") : doubt;
  if (open !== undefined) return leaveOpen(open);
  return ruleOutcome(drop > limits.cautionAbove ? "caution" : "within");
}

export function ruleOnTiming(entry: Entry | undefined, limits: Limits, instruments: Instruments): Ruling {
  if (entry === undefined) return leaveOpen("missing");
  const { occurred } = entry;
  if (occurred === false) return ruleOutcome("outside");
  const said = occurred === undefined || occurred === true || isMissing(occurred) ? undefined : "unreadable";
  const { elapsed } = entry;
  if (isMissing(elapsed)) return leaveOpen(entry.result === "not-done" ? "not-done" : (said ?? "missing"));
  const quanta = readDuration(elapsed);
  if (typeof quanta === "string") return leaveOpen(quanta);
  return place(quanta, limits, firstOf<Reason>(said, doubtGauge(quanta, STOPWATCH, entry, instruments)));
}

/** Days since 1970 of `2026-05-14` or `2026-05`; undefined where there is no such day. */
export function readDay(value: unknown): number | undefined {
  if (typeof value !== "string") return undefined;
  const match = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(value);
  if (match === null) return undefined;
  const [, year, month, day = "01"] = match;
  const time = Date.UTC(Number(year), Number(month) - 1, Number(day));
  return new Date(time).getUTCMonth() === Number(month) - 1 ? time / MILLISECONDS_PER_DAY : undefined;
}

/** A date of doing at most `span` days old, or (without a span) an expiry that has not passed. */
export function ruleOnDate(entry: Entry | undefined, today: number, span: number | undefined): Ruling {
  if (entry === undefined) return leaveOpen("missing");
  const { on } = entry;
  if (isMissing(on)) return leaveOpen(notDoneOr(entry, "missing"));
  const day = readDay(on);
  if (day === undefined) return leaveOpen("unreadable");
  if (span !== undefined && day > today) return leaveOpen("date-ahead");
  return ruleOutcome(day + (span ?? 0) < today ? "outside" : "within");
}
