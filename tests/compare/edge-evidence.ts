import { type Picks, pickFrom } from "../generators/picks.js";
import { isMap, listMaps, readAt } from "../laws/evidence-path.js";
import type { Data } from "../laws/generated-step.js";

/** A share of the rated pressure of 300 bar, in bar. */
const BAR_OF_PERCENT = 3;
const GOOD_BAR = 280;
/** Limits below this are of a difference. */
const LEAST_LEVEL = 40;

interface Edge {
  readonly amount: number;
  readonly unit: string;
}

/** Every limit that a step states itself or by its tolerance, and those of what its instruments show. */
function listEdges(step: Data, policy: Data, isOfGauge: boolean): readonly Edge[] {
  const named = [step.tolerance, step.drop, step.change, step.rise].filter((use) => typeof use === "string");
  const gauges = step.instrument === undefined || !isOfGauge ? [] : [policy.instruments];
  const text = JSON.stringify([step, ...gauges, ...named.map((name) => readAt(policy, ["tolerances", String(name)]))]);
  const quantities = [...text.matchAll(/(\d+) (bar|s)"/g)].map(([, amount, unit]) => ({
    amount: Number(amount),
    unit: String(unit),
  }));
  const shares = [...text.matchAll(/(\d+) % of rated-pressure"/g)].map(([, percent]) => ({
    amount: Number(percent) * BAR_OF_PERCENT,
    unit: "bar",
  }));
  return [...quantities, ...shares];
}

const DATES = [
  ..."2026-04-12 2026-04-13 2026-04-11 2026-04-02 2026-04-03 2026-03-13 2026-03-12 2026-03-11 2026-03-15 2026-03-14".split(
    " ",
  ),
  ..."2026-03-16 2026-02-12 2026-02-11 2026-04 2026-03 2025-12-31".split(" "),
  "soon",
  null,
] as const;

const TEXTS = ["B-014", "b-014", "B014", "B 014", "B-13", "b-013", "014", " B-014 ", "", 14, null] as const;

const BAD = [null, "280", "many", "280 furlong", "12 s", "900 bar", "4061 psi", "280.0000001 bar", 280] as const;

/** Evidence for a step that stands at a limit of it, just beside one, or is none at all. */
export function makeEdgeEvidence(step: Data, policy: Data, picks: Picks): Data {
  const edge = pickFrom(listEdges(step, policy, picks.next() % 4 === 0), picks) ?? { amount: GOOD_BAR, unit: "bar" };
  const amount = edge.amount + (pickFrom([-1, 0, 0, 1, 10, -10], picks) ?? 0);
  switch (step.kind) {
    case "confirm":
      return {
        result: pickFrom(["satisfactory", "defect", "defect", "not-done", "fine", null], picks),
        defect: pickFrom([undefined, undefined, "torn", "soiled", "other"], picks),
      };
    case "match":
      return { seen: makeSeen(picks) };
    case "in-date":
      return { on: pickFrom(DATES, picks) };
    case "timing":
      return makeTimes(amount, picks);
    case "hold":
      return makeHold({ ...edge, amount }, picks);
    default:
      return { reading: makeReading(amount, picks) };
  }
}

function makeReading(amount: number, picks: Picks): unknown {
  const text = `${amount} bar`;
  const apart = [`${GOOD_BAR - amount} bar`, `${GOOD_BAR + amount} bar`];
  const interval = [
    { atMost: text },
    { between: [text, `${amount + 5} bar`] },
    { between: [`${amount - 5} bar`, text] },
  ];
  return pickFrom(
    [text, text, ...(amount < LEAST_LEVEL ? apart : [text, text]), ...interval, pickFrom(BAD, picks)],
    picks,
  );
}

function makeHold({ amount, unit }: Edge, picks: Picks): Data {
  if (unit === "s") return { held: `${amount} s` };
  if (amount > LEAST_LEVEL) return { start: `${amount} bar`, end: `${amount - 5} bar` };
  const end = pickFrom([GOOD_BAR - amount, GOOD_BAR - amount, GOOD_BAR + amount], picks);
  return { start: `${GOOD_BAR} bar`, end: pickFrom([`${end} bar`, `${end} bar`, pickFrom(BAD, picks)], picks) };
}

function makeTimes(amount: number, picks: Picks): Data {
  const events = {
    still: "2026-04-12T07:00:00Z",
    sound: `2026-04-12T07:00:${String(Math.max(amount, 0)).padStart(2, "0")}Z`,
  };
  return (
    pickFrom<Data>(
      [
        { elapsed: `${amount} s` },
        { elapsed: `${amount} s` },
        { events, elapsed: null },
        { occurred: false },
        { elapsed: null },
      ],
      picks,
    ) ?? {}
  );
}

function makeSeen(picks: Picks): Data {
  const places = ["back", "mask", "tally", "face", "tag"];
  const good = { back: "B-014", mask: "B-014", ...(pickFrom([0, 1], picks) === 1 ? { tally: "B-014" } : {}) };
  return {
    ...good,
    [String(pickFrom(places, picks))]: pickFrom(TEXTS, picks),
    ...(pickFrom([0, 1, 2], picks) === 0 ? { [String(pickFrom(places, picks))]: pickFrom(TEXTS, picks) } : {}),
  };
}

/** What a record says of a step where all is well. */
export function makeGoodEvidence(step: Data): Data {
  switch (step.kind) {
    case "confirm":
      return { result: "satisfactory" };
    case "match":
      return { seen: { back: "B-014", mask: "B-014", tally: "B-014" } };
    case "in-date":
      return { on: step["not-past"] === true ? "2026-12-31" : "2026-04-01" };
    case "timing":
      return { elapsed: "30 s" };
    case "hold":
      return { start: "280 bar", end: step.rise === undefined ? "276 bar" : "284 bar", held: "60 s" };
    default:
      return { reading: step.step === "whistle" ? "55 bar" : step.step === "medium" ? "8 bar" : "280 bar" };
  }
}

/** The steps of the check `daily`. */
export function listSteps(policy: Data): readonly Data[] {
  return listMaps(readAt(policy, ["checks", "daily", "steps"])).filter(isMap);
}
