import type { Random } from "./random.js";
import { SPOILS } from "./spoil-records.js";

/** A record under construction; once parsed it is any JSON. */
export interface DailyRecord {
  [key: string]: unknown;
  subject: Record<string, unknown>;
  steps: Record<string, unknown>[];
}

export interface DailyShares {
  /** Share of records with two cylinders. */
  readonly twins: number;
  /** Share of records that something is wrong with. */
  readonly spoiled: number;
  /** At most so many things are wrong with one record. */
  readonly mostSpoils: number;
}

/** Generated records of the daily check, parsed from JSON text as a record store would give them. */
export function makeDailyRecords(count: number, random: Random, shares: DailyShares): readonly unknown[] {
  return Array.from({ length: count }, (_, index) => {
    const record = makeCleanRecord(index, random.chance(shares.twins), random);
    if (random.chance(shares.spoiled)) {
      const spoils = 1 + random.below(shares.mostSpoils);
      for (let spoil = 0; spoil < spoils; spoil += 1) random.pick(SPOILS)(record, random);
    }
    return JSON.parse(JSON.stringify(record));
  });
}

/** A record in which everything is within. */
function makeCleanRecord(index: number, isTwin: boolean, random: Random): DailyRecord {
  const number = String(1 + random.below(180)).padStart(3, "0");
  const day = String(1 + random.below(28)).padStart(2, "0");
  const minute = String(random.below(60)).padStart(2, "0");
  const rated = random.pick([300, 300, 300, 200]);
  const hasTorch = random.chance(0.9);
  const cylinders = Array.from({ length: isTwin ? 2 : 1 }, () => ({
    id: `C-${1000 + random.below(9000)}`,
    waterCapacity: random.pick(["6.8 L", "6 L", "9 L"]),
    ratedPressure: `${rated} bar`,
    manufacturedOn: `20${10 + random.below(15)}-0${1 + random.below(9)}`,
  }));
  return {
    tenbar: 1,
    id: `lm${1 + random.below(9)}-s${number}-${String(index).padStart(6, "0")}`,
    check: "daily",
    at: `2026-05-${day}T07:${minute}:00+01:00`,
    station: `Lowmere ${1 + random.below(9)}`,
    by: { id: `W-${100 + random.below(800)}`, competence: "wearer" },
    subject: {
      kind: "set",
      id: `S-${number}`,
      marking: number,
      class: "open-circuit",
      role: random.pick(["front-line", "front-line", "spare", "training"]),
      fitted: { "personal-line": true, torch: hasTorch, "motion-alarm": true, telemetry: false },
      cylinders,
    },
    steps: makeSteps(
      cylinders.map(({ id }) => id),
      number,
      rated,
      random,
    ).filter(({ step }) => hasTorch || step !== "torch"),
    decision: random.pick(["ready for the run", "on the run", "returned to its rack"]),
    local: { shift: random.pick(["red", "white", "blue", "green"]), appliance: "rescue pump" },
  };
}

function makeSteps(ids: readonly string[], number: string, rated: number, random: Random): Record<string, unknown>[] {
  const fine = (step: string) => ({ step, result: "satisfactory" });
  const noted = (step: string) =>
    random.chance(0.7)
      ? { ...fine(step), note: random.pick(["wiped down", "looked at twice", "as it was the day before"]) }
      : fine(step);
  const full = Math.ceil((rated * 0.95) / 10) * 10;
  const level = full + 10 * random.below((rated - full) / 10 + 1);
  const places = ["back-plate-left", "back-plate-right", "back-plate-rear", "mask", "log-book", "tally"];
  const each = (step: string, evidence: (id: string) => object) => ids.map((of) => ({ step, of, ...evidence(of) }));
  return [
    { step: "monthly-seen", on: `2026-04-${29 + random.below(2)}` },
    { step: "set-number", seen: Object.fromEntries(places.map((place) => [place, number])) },
    noted("appearance"),
    noted("harness"),
    fine("torch"),
    { step: "line-full-length", reading: random.pick(["6 m", "5.98 m", "6.02 m", "600 cm"]) },
    noted("hoses-and-couplings"),
    ...each("cylinder-condition", () => ({ result: "satisfactory" })),
    ...each("cylinder-number", (id) => ({ seen: { cylinder: id, "log-book": id } })),
    ...each("cylinder-in-date", () => ({ on: `2027-0${1 + random.below(9)}-28` })),
    noted("mask-condition"),
    fine("demand-valve-condition"),
    ...each("charge", () => ({ reading: `${level} bar` })),
    { step: "leak", start: `${level} bar`, end: `${level} bar`, held: `${60 + random.below(20)} s` },
    { step: "whistle", reading: random.pick(["50 bar", "60 bar"]) },
    fine("first-breath"),
    noted("bypass"),
    { step: "mask-seal", start: "150 bar", end: "150 bar", held: `${8 + random.below(5)} s` },
    { step: "pre-alarm", elapsed: `${25 + random.below(11)} s` },
    { step: "full-alarm", elapsed: `${5 + random.below(11)} s` },
    fine("hand-alarm"),
    fine("finish"),
    fine("log-book"),
  ];
}
