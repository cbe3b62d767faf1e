import { parseRecordTime } from "../quantities/index.js";
import {
  isMissing,
  type JsonObject,
  makeNotApplicable,
  makeRow,
  type PreparedRequirement,
  type Row,
} from "../steps/index.js";
import { hasEvidence } from "./judge-step.js";
import type { BrokenPair } from "./judgement.js";
import type { PreparedCheck } from "./prepared-policy.js";
import type { StepEntry } from "./read-envelope.js";

/** An entry that takes part in the order: its place in the policy and in the record. */
interface Ordered {
  readonly step: string;
  readonly listed: number;
  readonly place: number;
  readonly entry: JsonObject;
  readonly hasEvidence: boolean;
}

interface Order {
  readonly row: Row;
  readonly brokenPairs: readonly BrokenPair[];
}

/**
 * Judges the order of a check's steps: as listed, by the record's positions or by their instants; under `any` only what
 * `after` names, by instants. Equal instants are in order. An entry without evidence takes no part, but where it alone would
 * stand out of place the order is unknown. Each pair that stands the wrong way round is one finding.
 */
export function judgeOrder(requirement: PreparedRequirement, check: PreparedCheck, steps: readonly StepEntry[]): Order {
  const { order } = check.plan;
  if (order === "any" && check.steps.every(({ plan }) => plan.after.length === 0)) {
    return { row: makeNotApplicable(requirement, "only-one"), brokenPairs: [] };
  }
  const all: Ordered[] = [];
  const evident: Ordered[] = [];
  for (let place = 0; place < steps.length; place += 1) {
    const one = steps[place];
    const placed = one && placeEntry(check, one, place);
    if (placed === undefined) continue;
    all.push(placed);
    if (placed.hasEvidence) evident.push(placed);
  }
  if (order === "any") return judgeAfter(requirement, check, evident);
  if (evident.length < 2) {
    return { row: makeNotApplicable(requirement, "only-one"), brokenPairs: [] };
  }
  if (order === "at") return judgeByTime(requirement, evident);
  const brokenPairs = findDescents(evident);
  const open = brokenPairs.length === 0 && findDescents(all).length > 0;
  return { row: makeOrderRow(requirement, brokenPairs, open), brokenPairs };
}

function placeEntry(check: PreparedCheck, { step: name, entry }: StepEntry, place: number): Ordered | undefined {
  const listed = check.placeOf.get(name);
  const step = listed === undefined ? undefined : check.steps[listed];
  if (listed === undefined || step === undefined) return undefined;
  const evident = !isMissing(entry.result) || !isMissing(entry.defect) || hasEvidence(step, entry);
  return { step: step.plan.step, listed, place, entry, hasEvidence: evident };
}

/** Neighbours in sequence of which the second is listed before the first. */
function findDescents(sequence: readonly Ordered[]): readonly BrokenPair[] {
  const pairs: BrokenPair[] = [];
  let previous: Ordered | undefined;
  for (const entry of sequence) {
    if (previous !== undefined && entry.listed < previous.listed) {
      pairs.push({ late: entry.step, lateEntry: entry.place, early: previous.step });
    }
    previous = entry;
  }
  return pairs;
}

function makeOrderRow(requirement: PreparedRequirement, pairs: readonly BrokenPair[], open: boolean): Row {
  const row =
    pairs.length > 0
      ? makeRow(requirement, "outside")
      : makeRow(requirement, open ? "undecided" : "within", open ? "order-unknown" : undefined);
  row.entries = pairs.map(({ lateEntry }) => lateEntry);
  return row;
}

/** Sorted by instant; listed place decides between equal instants, so that those are in order. */
function judgeByTime(requirement: PreparedRequirement, evident: readonly Ordered[]): Order {
  const clocks = readClocks(evident);
  const timed = evident
    .map((entry, index) => ({ entry, clock: clocks[index] }))
    .filter((one): one is { entry: Ordered; clock: number } => one.clock !== undefined)
    .sort(
      (one, other) =>
        one.clock - other.clock || one.entry.listed - other.entry.listed || one.entry.place - other.entry.place,
    )
    .map(({ entry }) => entry);
  const brokenPairs = findDescents(timed);
  return { row: makeOrderRow(requirement, brokenPairs, timed.length < evident.length), brokenPairs };
}

/** Milliseconds on one clock for all: instants where every entry has an offset, else local times where none has. */
function readClocks(entries: readonly Ordered[]): readonly (number | undefined)[] {
  const times = entries.map(({ entry }) => parseRecordTime(entry.at));
  const anyOffset = times.some((time) => time?.epochMilliseconds !== undefined);
  return times.map((time) => (anyOffset ? time?.epochMilliseconds : time?.localMilliseconds));
}

/** Under `any` a step comes after those it names: its first entry is no earlier than their last. */
function judgeAfter(requirement: PreparedRequirement, check: PreparedCheck, evident: readonly Ordered[]): Order {
  const clocks = new Map(readClocks(evident).map((clock, index) => [evident[index]?.place, clock]));
  const brokenPairs: BrokenPair[] = [];
  let compared = 0;
  let open = false;
  check.steps.forEach(({ plan }, listed) => {
    for (const name of plan.after) {
      const earlier = check.placeOf.get(name);
      const first = evident.filter((entry) => entry.listed === listed);
      const before = evident.filter((entry) => entry.listed === earlier);
      if (first.length === 0 || before.length === 0) continue;
      compared += 1;
      const own = first.map((entry) => clocks.get(entry.place));
      const others = before.map((entry) => clocks.get(entry.place));
      if (own.includes(undefined) || others.includes(undefined)) open = true;
      const start = Math.min(...own.filter((clock) => clock !== undefined));
      const end = Math.max(...others.filter((clock) => clock !== undefined));
      const late = before.find((entry) => clocks.get(entry.place) === end);
      if (start < end && late !== undefined) brokenPairs.push({ late: name, lateEntry: late.place, early: plan.step });
    }
  });
  if (compared === 0) return { row: makeNotApplicable(requirement, "only-one"), brokenPairs };
  return { row: makeOrderRow(requirement, brokenPairs, open), brokenPairs };
}
