import { Ajv } from "ajv";
import jsonLogic from "json-logic-js";
import type { Outcome } from "../../src/index.js";
import { OUTCOMES } from "../../src/terms/index.js";
import { isObject, readCylinders, ruleOnCylinders } from "./hand-cylinders.js";
import {
  CYLINDER_PLACES,
  hasOwnEvidence,
  isDeeperThan,
  MOST_APART,
  measureApart,
  NO_ENTRIES,
  NUMBER_PLACES,
  readChargeLimits,
  type Sorted,
  sortEntries,
} from "./hand-judge.js";
import type { Fault } from "./hand-quantity.js";
import { type Entry, isMissing } from "./hand-ruling.js";
import {
  doubtGauge,
  type Gauge,
  type Instruments,
  type Level,
  readDay,
  readDuration,
  readPressure,
  SET_GAUGE,
  STOPWATCH,
  TAPE,
} from "./hand-steps.js";
import { RULES, type Rule, SHAPE } from "./json-logic-rules.js";

jsonLogic.add_operation("distinct", (texts: readonly string[]) => new Set(texts).size);

const hasShape = new Ajv().compile(SHAPE);
const NOTHING: Entry = {};

/** Whether the record has the shape that the rules rely on, by ajv. */
export function hasRecordShape(record: unknown): record is Entry {
  return hasShape(record);
}

/**
 * The daily check as rules for json-logic-js, behind a shape check by ajv: the outcome of every requirement in policy order.
 *
 * Texts are turned into figures by the same hand-written readers that the hand-written judge uses; the rules compare.
 */
export function judgeByJsonLogic(record: unknown): readonly Outcome[] {
  if (!hasRecordShape(record) || isDeeperThan(record)) return [];
  const { subject, steps, by, at } = record;
  const today = typeof at === "string" ? readDay(at.slice(0, 10)) : undefined;
  if (today === undefined || !isObject(subject) || !Array.isArray(steps)) return [];
  const setClass = typeof subject.class === "string" ? subject.class.trim() : "";
  const sorted = sortEntries(steps);
  if (sorted === undefined || (setClass !== "" && setClass !== "open-circuit")) return [];
  const competence = isObject(by) && typeof by.competence === "string" ? by.competence : null;
  const outcomes = [apply(RULES.competence, { competence }), apply(RULES.order, sorted.order)];
  judgeSteps(sorted.entries, subject, today, outcomes);
  return outcomes;
}

function apply(rule: Rule, data: unknown): Outcome {
  const word = jsonLogic.apply(rule, data);
  const outcome = OUTCOMES.find((known) => known === word);
  if (outcome === undefined) throw new Error(`a rule gives ${String(word)}`);
  return outcome;
}

function judgeSteps(entries: Sorted["entries"], subject: Entry, today: number, outcomes: Outcome[]): void {
  const instruments = isObject(subject.instruments) ? subject.instruments : undefined;
  const first = (place: number) => entries[place]?.[0];
  const judge = (rule: Rule, facts: object) => outcomes.push(apply(rule, facts));
  const fitted = (rule: Rule, place: number, name: string, facts: object) =>
    judge(rule, { ...facts, ...readFitted(first(place), place, subject, name) });
  judge(RULES.monthly, { ...readOn(first(0)), today });
  judge(RULES.match, readSeen(first(1), NUMBER_PLACES, [subject.marking]));
  judge(RULES.confirm, readResult(first(2)));
  judge(RULES.confirm, readResult(first(3)));
  fitted(RULES.confirmFitted, 4, "torch", readResult(first(4)));
  fitted(RULES.line, 5, "personal-line", readValue(first(5), "reading", TAPE, instruments));
  judge(RULES.confirm, readResult(first(6)));
  judgeCylinders(entries, subject, today, instruments, outcomes, judge);
  for (const rule of RULES.leak) judge(rule, readHold(first(13), instruments));
  judge(RULES.whistle, readValue(first(14), "reading", SET_GAUGE, instruments));
  judge(RULES.confirm, readResult(first(15)));
  judge(RULES.confirm, readResult(first(16)));
  for (const rule of RULES.maskSeal) judge(rule, readHold(first(17), instruments));
  fitted(RULES.preAlarm, 18, "motion-alarm", readValue(first(18), "elapsed", STOPWATCH, instruments));
  fitted(RULES.fullAlarm, 19, "motion-alarm", readValue(first(19), "elapsed", STOPWATCH, instruments));
  fitted(RULES.confirmFitted, 20, "motion-alarm", readResult(first(20)));
  judge(RULES.confirm, readResult(first(21)));
  judge(RULES.confirm, readResult(first(22)));
}

function judgeCylinders(
  entries: Sorted["entries"],
  subject: Entry,
  today: number,
  instruments: Instruments,
  outcomes: Outcome[],
  judge: (rule: Rule, facts: object) => void,
): void {
  const cylinders = readCylinders(subject.cylinders);
  const listed = Array.isArray(subject.cylinders) && subject.cylinders.length > 0;
  const each = (place: number, rule: Rule, read: (entry: Entry | undefined) => object) => {
    const rulings = ruleOnCylinders(entries[place] ?? NO_ENTRIES, cylinders, listed, (entry) => ({
      outcome: apply(rule, read(entry)),
      reason: undefined,
    }));
    for (const { worst } of rulings) outcomes.push(worst.outcome);
  };
  each(7, RULES.confirm, readResult);
  each(8, RULES.match, (entry) => readSeen(entry, CYLINDER_PLACES, []));
  each(9, RULES.expiry, (entry) => ({ ...readOn(entry), today }));
  judge(RULES.confirm, readResult(entries[10]?.[0]));
  judge(RULES.confirm, readResult(entries[11]?.[0]));
  const levels = ruleOnCylinders(entries[12] ?? NO_ENTRIES, cylinders, listed, (entry, cylinder): Level => {
    const limits = readChargeLimits(cylinder);
    const facts = readValue(entry, "reading", SET_GAUGE, instruments);
    const { least, cautionBelow } = typeof limits === "string" ? { least: null, cautionBelow: null } : limits;
    const outcome = apply(RULES.charge, { ...facts, least, cautionBelow });
    return {
      outcome,
      reason: undefined,
      quanta: facts.occurred === false ? Number.NaN : (facts.value ?? Number.NaN),
      doubt: facts.doubt ? "uncertainty" : undefined,
    };
  });
  for (const { worst } of levels) outcomes.push(worst.outcome);
  const doubt = levels.some(
    ({ worst, all }) =>
      worst.doubt !== undefined || all.some((level) => level.doubt !== undefined || Number.isNaN(level.quanta)),
  );
  judge(RULES.apart, { count: levels.length, listed, apart: measureApart(levels), most: MOST_APART, doubt });
}

/** A value that says nothing is null, as rules want it. */
function orNull(value: unknown): unknown {
  return isMissing(value) ? null : value;
}

function readResult({ result, defect }: Entry = NOTHING) {
  return { result: orNull(result), defect: orNull(defect) };
}

function readOn({ on }: Entry = NOTHING) {
  return { day: readDay(on) ?? null };
}

function readFitted(entry: Entry | undefined, place: number, { fitted }: Entry, name: string) {
  const said = isObject(fitted) && Object.hasOwn(fitted, name) ? fitted[name] : undefined;
  const evident = said === false && entry !== undefined && hasOwnEvidence(entry, place);
  return { fitted: said, evident, fittedOpen: typeof said !== "boolean" };
}

function readSeen(entry: Entry | undefined, places: readonly string[], others: readonly unknown[]) {
  const seen = isObject(entry?.seen) ? entry.seen : NOTHING;
  const values = [...others, ...places.map((place) => (Object.hasOwn(seen, place) ? seen[place] : undefined))];
  const texts = values.flatMap((text) => (typeof text === "string" && text.trim() !== "" ? [text.trim()] : []));
  return { texts, gap: texts.length < values.length };
}

function readFigure(read: number | Fault): number | null {
  return typeof read === "string" ? null : read;
}

function readValue(entry: Entry = NOTHING, key: "reading" | "elapsed", gauge: Gauge, instruments: Instruments) {
  const { occurred } = entry;
  const value = readFigure(gauge.read(entry[key]));
  const isOdd = !isMissing(occurred) && occurred !== true;
  const doubt = isOdd || (value !== null && doubtGauge(value, gauge, entry, instruments) !== undefined);
  return { occurred, value, doubt };
}

function readHold(entry: Entry = NOTHING, instruments: Instruments) {
  const start = readFigure(readPressure(entry.start));
  const end = readFigure(readPressure(entry.end));
  const doubt = (value: number | null) =>
    value !== null && doubtGauge(value, SET_GAUGE, entry, instruments) !== undefined;
  return { start, end, held: readFigure(readDuration(entry.held)), startDoubt: doubt(start), endDoubt: doubt(end) };
}
