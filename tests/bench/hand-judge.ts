import { type Cylinder, isObject, readCylinders, ruleOnCylinders } from "./hand-cylinders.js";
import { type Entry, isMissing, leaveOpen, type Reason, type Ruling, ruleOutcome, withhold } from "./hand-ruling.js";
import {
  FULL_ALARM,
  type Instruments,
  LEAK,
  type Level,
  LINE,
  type Limits,
  MASK_SEAL,
  PRE_ALARM,
  readDay,
  readPressure,
  ruleOnConfirm,
  ruleOnDate,
  ruleOnHold,
  ruleOnMatch,
  ruleOnReading,
  ruleOnTiming,
  SET_GAUGE,
  TAPE,
  WHISTLE,
} from "./hand-steps.js";

const STEPS = [
  "monthly-seen",
  "set-number",
  "appearance",
  "harness",
  "torch",
  "line-full-length",
  "hoses-and-couplings",
  "cylinder-condition",
  "cylinder-number",
  "cylinder-in-date",
  "mask-condition",
  "demand-valve-condition",
  "charge",
  "leak",
  "whistle",
  "first-breath",
  "bypass",
  "mask-seal",
  "pre-alarm",
  "full-alarm",
  "hand-alarm",
  "finish",
  "log-book",
] as const;

const PLACE_OF: ReadonlyMap<string, number> = new Map(STEPS.map((step, place) => [step, place]));
export const NUMBER_PLACES = ["back-plate-left", "back-plate-right", "back-plate-rear", "mask", "log-book", "tally"];
export const CYLINDER_PLACES = ["cylinder", "log-book"];
export const MONTHLY = 30;
/** Of a record that is judged: objects and lists within each other, and entries. */
const MOST_DEPTH = 64;
const MOST_STEPS = 10_000;
export const MOST_APART = 2_000_000_000;
const TIME =
  /^(\d{4}-\d{2}-\d{2})(?:[Tt](?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,9})?)?(?:[Zz]|[+-](?:[01]\d|2[0-3]):[0-5]\d)?)?$/;
export const NO_ENTRIES: readonly Entry[] = [];

export interface Sorted {
  /** The entry of each step by its place in the check; the cylinders' steps may have more than one. */
  readonly entries: readonly (readonly Entry[])[];
  readonly order: OrderFacts;
}

interface OrderFacts {
  /** How many entries hold evidence. */
  readonly evident: number;
  /** Two of them stand the wrong way round. */
  readonly broken: boolean;
  /** So do two entries of which one holds none. */
  readonly open: boolean;
}

/**
 * The daily check of Lowmere, written for it alone: outcome and reason of every requirement in policy order; nothing for a record
 * that is broken or for another set. A step of the set has one entry, or the first counts.
 */
export function judgeByHand(record: unknown): readonly Ruling[] {
  if (
    !isObject(record) ||
    isDeeperThan(record) ||
    record.tenbar !== 1 ||
    isBlank(record.id) ||
    record.check !== "daily"
  )
    return [];
  const { subject, steps, at } = record;
  const time = typeof at === "string" ? TIME.exec(at) : null;
  const today = time === null ? undefined : readDay(time[1]);
  if (today === undefined || !isObject(subject) || !Array.isArray(steps) || steps.length > MOST_STEPS) return [];
  if (isBlank(subject.id) || subject.kind !== "set") return [];
  const setClass = subject.class;
  if (typeof setClass === "string" && setClass.trim() !== "" && setClass.trim() !== "open-circuit") return [];
  const sorted = sortEntries(steps);
  if (sorted === undefined) return [];
  const rulings = [ruleOnCompetence(record.by), ruleOnOrder(sorted.order)];
  judgeSteps(sorted.entries, subject, today, rulings);
  return rulings;
}

/** A record that nests deeper is not judged. */
export function isDeeperThan(value: object, most: number = MOST_DEPTH): boolean {
  if (most === 0) return true;
  if (Array.isArray(value)) {
    for (const member of value) {
      if (typeof member === "object" && member !== null && isDeeperThan(member, most - 1)) return true;
    }
    return false;
  }
  if (!isObject(value)) return false;
  for (const key in value) {
    const member = value[key];
    if (typeof member === "object" && member !== null && isDeeperThan(member, most - 1)) return true;
  }
  return false;
}

function isBlank(value: unknown): boolean {
  return typeof value !== "string" || value.trim() === "";
}

function ruleOnCompetence(by: unknown): Ruling {
  const competence = isObject(by) ? by.competence : undefined;
  if (isMissing(competence)) return leaveOpen("fact-missing");
  if (typeof competence !== "string") return leaveOpen("unreadable");
  return ruleOutcome(competence.trim() === "wearer" ? "within" : "outside");
}

/** Sorts the entries by step and sees whether they stand as listed; undefined where one is broken. */
export function sortEntries(steps: readonly unknown[]): Sorted | undefined {
  const entries: (readonly Entry[])[] = STEPS.map(() => NO_ENTRIES);
  let evident = 0;
  let lastEvident = -1;
  let last = -1;
  let isBroken = false;
  let isOpen = false;
  for (const entry of steps) {
    if (!isObject(entry) || typeof entry.step !== "string" || isBlank(entry.step)) return undefined;
    const place = PLACE_OF.get(entry.step) ?? PLACE_OF.get(entry.step.trim());
    if (place === undefined) continue;
    const others = entries[place] ?? NO_ENTRIES;
    entries[place] = others.length === 0 ? [entry] : [...others, entry];
    if (place < last) isOpen = true;
    last = place;
    if (!isEvident(entry, place)) continue;
    if (place < lastEvident) isBroken = true;
    lastEvident = place;
    evident += 1;
  }
  return { entries, order: { evident, broken: isBroken, open: isOpen } };
}

function ruleOnOrder({ evident, broken, open }: OrderFacts): Ruling {
  if (evident < 2) return { outcome: "not-applicable", reason: "only-one" };
  if (broken) return ruleOutcome("outside");
  return open ? leaveOpen("order-unknown") : ruleOutcome("within");
}

/** The key, or keys, that hold the evidence of each step, beside `result` and `defect`. */
const EVIDENCE: readonly (readonly string[])[] = STEPS.map((step) => {
  if (step === "monthly-seen" || step === "cylinder-in-date") return ["on"];
  if (step === "set-number" || step === "cylinder-number") return ["seen"];
  if (step === "leak" || step === "mask-seal") return ["start", "end", "held"];
  if (step === "pre-alarm" || step === "full-alarm") return ["elapsed", "occurred"];
  return step === "charge" || step === "whistle" || step === "line-full-length" ? ["reading", "occurred"] : [];
});

function isEvident(entry: Entry, place: number): boolean {
  if (!isMissing(entry.result) || !isMissing(entry.defect)) return true;
  for (const key of EVIDENCE[place] ?? []) if (!isMissing(entry[key])) return true;
  return false;
}

function judgeSteps(entries: readonly (readonly Entry[])[], subject: Entry, today: number, rulings: Ruling[]): void {
  const instruments = isObject(subject.instruments) ? subject.instruments : undefined;
  const confirm = (place: number) => rulings.push(ruleOnConfirm(entries[place]?.[0]));
  const fitted = (place: number, name: string, rule: (entry: Entry | undefined) => Ruling) =>
    rulings.push(ruleOnFitted(entries[place]?.[0], place, subject.fitted, name, rule));
  rulings.push(ruleOnDate(entries[0]?.[0], today, MONTHLY));
  rulings.push(ruleOnMatch(entries[1]?.[0], NUMBER_PLACES, readMarking(subject.marking)));
  confirm(2);
  confirm(3);
  fitted(4, "torch", ruleOnConfirm);
  fitted(5, "personal-line", (entry) => ruleOnReading(entry, TAPE, LINE, instruments));
  confirm(6);
  const cylinders = readCylinders(subject.cylinders);
  const hasList = Array.isArray(subject.cylinders) && subject.cylinders.length > 0;
  const each = (place: number, rule: (entry: Entry | undefined) => Ruling) => {
    for (const { worst } of ruleOnCylinders(entries[place] ?? NO_ENTRIES, cylinders, hasList, rule))
      rulings.push(worst);
  };
  each(7, ruleOnConfirm);
  each(8, (entry) => ruleOnMatch(entry, CYLINDER_PLACES));
  each(9, (entry) => ruleOnDate(entry, today, undefined));
  confirm(10);
  confirm(11);
  judgeCharge(entries[12] ?? NO_ENTRIES, cylinders, hasList, instruments, rulings);
  ruleOnHold(entries[13]?.[0], LEAK, instruments, rulings);
  rulings.push(ruleOnReading(entries[14]?.[0], SET_GAUGE, WHISTLE, instruments));
  confirm(15);
  confirm(16);
  ruleOnHold(entries[17]?.[0], MASK_SEAL, instruments, rulings);
  fitted(18, "motion-alarm", (entry) => ruleOnTiming(entry, PRE_ALARM, instruments));
  fitted(19, "motion-alarm", (entry) => ruleOnTiming(entry, FULL_ALARM, instruments));
  fitted(20, "motion-alarm", ruleOnConfirm);
  confirm(21);
  confirm(22);
}

export function readMarking(marking: unknown): { text?: string; reason?: Reason } {
  if (isMissing(marking)) return { reason: "fact-missing" };
  return typeof marking === "string" ? { text: marking.trim() } : { reason: "unreadable" };
}

function ruleOnFitted(
  entry: Entry | undefined,
  place: number,
  fitted: unknown,
  name: string,
  rule: (entry: Entry | undefined) => Ruling,
): Ruling {
  const said = isObject(fitted) && Object.hasOwn(fitted, name) ? fitted[name] : undefined;
  const hasEvidence = () => entry !== undefined && hasOwnEvidence(entry, place);
  if (said === false && !hasEvidence()) return { outcome: "not-applicable", reason: "not-fitted" };
  const ruling = rule(entry);
  if (typeof said === "boolean") return ruling;
  const isUnreadable = isMissing(said) ? !isMissing(fitted) && !isObject(fitted) : true;
  withhold(ruling, isUnreadable ? "unreadable" : "fitting-not-recorded");
  return ruling;
}

/** Evidence of the step's own kind; a `result` is that of a confirmation alone. */
export function hasOwnEvidence(entry: Entry, place: number): boolean {
  const keys = EVIDENCE[place] ?? [];
  return (keys.length === 0 ? ["result", "defect"] : keys).some((key) => !isMissing(entry[key]));
}

/** At least 90 % of the rated pressure, caution below 95 %; both as whole quanta. */
export function readChargeLimits({ object }: Cylinder): Limits | Reason {
  const rated = readPressure(object?.ratedPressure);
  if (typeof rated === "string") return rated === "missing" ? "fact-missing" : rated;
  if (rated <= 0) return "unreadable";
  const share = (percent: number) => Math.ceil((rated * percent) / 100);
  return {
    least: share(90),
    most: Number.POSITIVE_INFINITY,
    cautionBelow: share(95),
    cautionAbove: Number.POSITIVE_INFINITY,
  };
}

function judgeCharge(
  entries: readonly Entry[],
  cylinders: readonly Cylinder[],
  hasList: boolean,
  instruments: Instruments,
  rulings: Ruling[],
): void {
  const levels = ruleOnCylinders(entries, cylinders, hasList, (entry, cylinder) =>
    ruleOnReading(entry, SET_GAUGE, readChargeLimits(cylinder), instruments),
  );
  for (const { worst } of levels) rulings.push({ outcome: worst.outcome, reason: worst.reason });
  rulings.push(ruleOnApart(levels, hasList));
}

/** The rulings of one cylinder's charge: the one that stands, and that of every entry. */
export interface CylinderLevels {
  readonly worst: Level;
  readonly all: readonly Level[];
}

function ruleOnApart(levels: readonly CylinderLevels[], hasList: boolean): Ruling {
  if (levels.length === 1)
    return hasList ? { outcome: "not-applicable", reason: "only-one" } : leaveOpen("fact-missing");
  const apart = measureApart(levels);
  if (apart > MOST_APART) return ruleOutcome("outside");
  const ruling: Ruling = ruleOutcome("within");
  for (const { worst, all } of levels) {
    if (worst.doubt !== undefined) withhold(ruling, worst.doubt);
    for (const { doubt, quanta, reason } of all) {
      if (doubt !== undefined) withhold(ruling, doubt);
      if (Number.isNaN(quanta)) withhold(ruling, reason ?? "uncertainty");
    }
  }
  return ruling;
}

/** The furthest that the readings of two cylinders lie apart; NaN where there are no two. */
export function measureApart(levels: readonly CylinderLevels[]): number {
  const known = levels.map(({ all }) => all.map(({ quanta }) => quanta).filter((quanta) => !Number.isNaN(quanta)));
  let apart = Number.NaN;
  known.forEach((ones, index) => {
    known.forEach((others, otherIndex) => {
      if (index === otherIndex || ones.length === 0 || others.length === 0) return;
      const between = Math.max(...ones) - Math.min(...others);
      if (!(apart >= between)) apart = between;
    });
  });
  return apart;
}
