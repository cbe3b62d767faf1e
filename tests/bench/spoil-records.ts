import type { DailyRecord } from "./daily-records.js";
import type { Random } from "./random.js";

type Spoil = (record: DailyRecord, random: Random) => void;
type Entry = Record<string, unknown>;

const EVIDENCE = ["result", "reading", "start", "end", "held", "elapsed", "on", "seen"] as const;
const QUANTITIES = ["reading", "start", "end", "held", "elapsed"] as const;

/** Texts and values that are no quantity, or one that is odd; `#` stands for the figure that was there. */
const ODD_QUANTITIES: readonly string[] = [
  "#",
  "# s",
  "# bar",
  "# m",
  "# knots",
  "# Bar",
  "#  bar",
  "about # bar",
  "#,5 bar",
  "0# bar",
  "#.000000000001 bar",
  "#0 bar",
  "-# bar",
  "-# s",
  "# kPa",
  "#000 mbar",
  "# min",
];

/** Everything that may be wrong with a generated record. */
export const SPOILS: readonly Spoil[] = [
  leaveOutStep,
  emptyEvidence,
  writeOddQuantity,
  writeOddQuantity,
  writeOtherWord,
  writeOtherWord,
  recordDefect,
  readOtherFigure,
  readOtherFigure,
  readOtherFigure,
  seeOtherText,
  writeOtherDate,
  swapSteps,
  changeCylinders,
  changeCylinders,
  changeMember,
  changeFitted,
  changeEnvelope,
];

function pickEntry(record: DailyRecord, random: Random, keys: readonly string[]): Entry | undefined {
  const found = record.steps.filter((entry) => keys.some((key) => entry[key] !== undefined));
  return found.length === 0 ? undefined : random.pick(found);
}

function pickKey(entry: Entry, random: Random, keys: readonly string[]): string {
  return random.pick(keys.filter((key) => entry[key] !== undefined));
}

function leaveOutStep({ steps }: DailyRecord, random: Random): void {
  if (steps.length > 1) steps.splice(random.below(steps.length), 1 + random.below(3));
}

function emptyEvidence(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, EVIDENCE);
  if (entry === undefined) return;
  const key = pickKey(entry, random, EVIDENCE);
  const blank = random.pick([null, "", " ", []]);
  if (random.chance(0.3)) delete entry[key];
  else entry[key] = blank;
  if (random.chance(0.3)) entry.result = "not-done";
}

function writeOddQuantity(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, QUANTITIES);
  if (entry === undefined) return;
  const key = pickKey(entry, random, QUANTITIES);
  const figure = String(entry[key]).split(" ")[0] ?? "";
  entry[key] = random.chance(0.15)
    ? random.pick<unknown>([Number(figure), true, [figure], false])
    : random.pick(ODD_QUANTITIES).replace("#", figure);
}

function writeOtherWord(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, ["result"]);
  if (entry !== undefined)
    entry.result = random.pick<unknown>(["ok", "not-done", "not-done", "Satisfactory", 5, "defect"]);
}

function recordDefect(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, ["result"]);
  if (entry === undefined) return;
  entry.defect = random.pick(["pad-torn", "strap-frayed", "cap-missing", "cover-torn", "something else"]);
  if (random.chance(0.7)) entry.result = "defect";
}

/** A figure that is a plain reading, yet may be outside or close to a limit. */
function readOtherFigure(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, QUANTITIES);
  if (entry === undefined) return;
  const key = pickKey(entry, random, QUANTITIES);
  const [figure = "", unit = ""] = String(entry[key]).split(" ");
  const shift = random.pick([-200, -60, -20, -12, -10, -5, -1, 1, 5, 6, 10, 20, 60, 200]);
  entry[key] = `${Math.max(0, Number(figure) + shift)} ${unit}`;
  if (random.chance(0.05)) entry.occurred = random.pick<unknown>([false, true, "yes"]);
  if (random.chance(0.1)) entry.instrument = random.pick(["set-gauge", "wall-gauge", "stopwatch", "tape"]);
}

function seeOtherText(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, ["seen"]);
  const seen = entry?.seen;
  if (entry === undefined || typeof seen !== "object" || seen === null || Array.isArray(seen)) return;
  if (random.chance(0.1)) entry.seen = random.pick<unknown>(["014", {}]);
  else {
    const place = random.pick([...Object.keys(seen), "mask"]);
    entry.seen = { ...seen, [place]: random.pick<unknown>(["999", " 7 ", null, "", 14]) };
  }
}

function writeOtherDate(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, ["on"]);
  const dates = [
    "2026-04-01",
    "2026-05-14",
    "2027-05",
    "2026-03-31",
    "2026-02-30",
    "14 May",
    "2026-05-00",
    20260514,
    "2026-04",
  ];
  if (entry !== undefined) entry.on = random.pick<unknown>(dates);
}

function swapSteps({ steps }: DailyRecord, random: Random): void {
  const place = random.below(Math.max(1, steps.length - 1));
  const [one, other] = [steps[place], steps[place + 1]];
  if (one !== undefined && other !== undefined) steps.splice(place, 2, other, one);
}

/** Too few cylinders, none, or no list at all. */
function changeCylinders({ subject }: DailyRecord, random: Random): void {
  const { cylinders } = subject;
  if (!Array.isArray(cylinders)) return;
  const others: readonly unknown[] = [
    [],
    undefined,
    "C-301",
    cylinders.slice(1),
    cylinders.slice(0, 1),
    [...cylinders, ...cylinders],
  ];
  const changed = random.pick([...others, [cylinders[0], { id: "C-1", ratedPressure: "300 bar" }]]);
  subject.cylinders = changed;
}

function changeMember(record: DailyRecord, random: Random): void {
  const entry = pickEntry(record, random, ["of"]);
  if (entry !== undefined && random.chance(0.5)) {
    entry.of = random.pick<unknown>([undefined, "", "C-999", ` ${String(entry.of)} `, 7]);
    return;
  }
  const { cylinders } = record.subject;
  if (!Array.isArray(cylinders) || cylinders.length === 0) return;
  const place = random.below(cylinders.length);
  const change = random.pick<unknown>([
    { id: "" },
    { id: 7 },
    { ratedPressure: null },
    { ratedPressure: "300" },
    { ratedPressure: "0 bar" },
  ]);
  record.subject.cylinders = cylinders.map((one: unknown, index) =>
    index === place && typeof one === "object" ? { ...one, ...Object(change) } : one,
  );
}

function changeFitted({ subject }: DailyRecord, random: Random): void {
  const { fitted } = subject;
  if (typeof fitted !== "object" || fitted === null || random.chance(0.1)) {
    subject.fitted = random.pick<unknown>([undefined, "all", null]);
    return;
  }
  const name = random.pick(["torch", "personal-line", "motion-alarm"]);
  subject.fitted = { ...fitted, [name]: random.pick<unknown>([undefined, false, "yes", null]) };
}

function changeEnvelope(record: DailyRecord, random: Random): void {
  const changes: readonly (() => void)[] = [
    () => {
      record.by = random.pick<unknown>([undefined, { id: "W-1" }, { competence: "recruit" }, { competence: 3 }, "W-1"]);
    },
    () => {
      record.subject.marking = random.pick<unknown>([undefined, "998", 14, ""]);
    },
    () => {
      record.subject.class = random.pick<unknown>([undefined, "closed-circuit", 3]);
    },
    () => {
      record.subject.instruments = { "set-gauge": random.pick<unknown>(["set-gauge", "wall-gauge", 3, ""]) };
    },
    () => {
      record.at = random.pick(["2026-05-14", "2026-05-14T07:04", "14 May 2026", "2026-05-14T24:00:00Z"]);
    },
    () => {
      record.id = random.pick<unknown>(["", undefined, 7]);
    },
  ];
  random.pick(changes)();
}
