import { parseRecordTime } from "../quantities/index.js";
import { isMissing, makeNotApplicable, makeRow, type PreparedRequirement, type Row } from "../steps/index.js";
import { hasEvidence, type PlacedEntry } from "./judge-step.js";
import type { BrokenPair } from "./judgement.js";
import type { PreparedCheck } from "./prepared-policy.js";

interface Order {
  readonly row: Row;
  readonly brokenPairs: readonly BrokenPair[];
}

/**
 * Judges the order of a check's steps: as listed, by the record's positions or by their instants; under `any` only what
 * `after` names, by instants. Equal instants are in order. An entry without evidence takes no part, but where it alone would
 * stand out of place the order is unknown. Each pair that stands the wrong way round is one finding.
 */
export function judgeOrder(
  requirement: PreparedRequirement,
  check: PreparedCheck,
  entries: readonly PlacedEntry[],
): Order {
  const { order } = check.plan;
  if (order === "any" && check.steps.every(({ plan }) => plan.after.length === 0)) {
    return { row: makeNotApplicable(requirement, "only-one"), brokenPairs: [] };
  }
  const evident = entries.filter((placed) => isEvident(placed, check));
  if (order === "any") return judgeAfter(requirement, check, evident);
  if (evident.length < 2) {
    return { row: makeNotApplicable(requirement, "only-one"), brokenPairs: [] };
  }
  if (order === "at") return judgeByTime(requirement, check, evident);
  const brokenPairs = findDescents(evident, check);
  const open = brokenPairs.length === 0 && findDescents(entries, check).length > 0;
  return { row: makeOrderRow(requirement, brokenPairs, open), brokenPairs };
}

/** An entry of a step of the check that holds evidence of any kind. */
function isEvident({ listed, entry }: PlacedEntry, check: PreparedCheck): boolean {
  const step = check.steps[listed];
  if (step === undefined) return false;
  return !isMissing(entry.result) || !isMissing(entry.defect) || hasEvidence(step, entry);
}

/** Neighbours in sequence of which the second is listed before the first. */
function findDescents(sequence: readonly PlacedEntry[], check: PreparedCheck): readonly BrokenPair[] {
  const pairs: BrokenPair[] = [];
  const nameStep = ({ listed, name }: PlacedEntry) => check.steps[listed]?.plan.step ?? name;
  let previous: PlacedEntry | undefined;
  for (const entry of sequence) {
    if (entry.listed === -1) continue;
    if (previous !== undefined && entry.listed < previous.listed) {
      pairs.push({ late: nameStep(entry), lateEntry: entry.place, early: nameStep(previous) });
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
function judgeByTime(requirement: PreparedRequirement, check: PreparedCheck, evident: readonly PlacedEntry[]): Order {
  const clocks = readClocks(evident);
  const timed = evident
    .map((entry, index) => ({ entry, clock: clocks[index] }))
    .filter((one): one is { entry: PlacedEntry; clock: number } => one.clock !== undefined)
    .sort(
      (one, other) =>
        one.clock - other.clock || one.entry.listed - other.entry.listed || one.entry.place - other.entry.place,
    )
    .map(({ entry }) => entry);
  const brokenPairs = findDescents(timed, check);
  return { row: makeOrderRow(requirement, brokenPairs, timed.length < evident.length), brokenPairs };
}

/** Milliseconds on one clock for all: instants where every entry has an offset, else local times where none has. */
function readClocks(entries: readonly PlacedEntry[]): readonly (number | undefined)[] {
  const times = entries.map(({ entry }) => parseRecordTime(entry.at));
  const anyOffset = times.some((time) => time?.epochMilliseconds !== undefined);
  return times.map((time) => (anyOffset ? time?.epochMilliseconds : time?.localMilliseconds));
}

/** Under `any` a step comes after those it names: its first entry is no earlier than their last. */
function judgeAfter(requirement: PreparedRequirement, check: PreparedCheck, evident: readonly PlacedEntry[]): Order {
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
