import Fraction from "fraction.js";
import type { Data } from "./generated-step.js";
import { readLimit, readSlowly, type SlowValue } from "./slow-quantity.js";

// Judges readings, holds and timings by the words of the language alone, slowly and plainly, in exact fractions.

export interface SlowTolerance {
  readonly accept: Data;
  readonly caution?: Data | undefined;
}

export interface SlowGauge {
  readonly division: string;
  readonly range: readonly [string, string];
}

type Sense = (value: Fraction) => boolean;

/** The bounds of a map, one by one: those with a limit that counts, and those without. */
function listSenses(bounds: Data): readonly Sense[] {
  return Object.entries(bounds).flatMap(([name, limit]): readonly Sense[] => {
    switch (name) {
      case "at-least":
        return [(value) => value.gte(readLimit(limit))];
      case "at-most":
        return [(value) => value.lte(readLimit(limit))];
      case "above":
        return [(value) => value.gt(readLimit(limit))];
      case "below":
        return [(value) => value.lt(readLimit(limit))];
      case "between": {
        const [low, high] = Array.isArray(limit) ? limit : [];
        return [(value) => value.gte(readLimit(low)) && value.lte(readLimit(high))];
      }
      case "nominal": {
        const middle = readLimit(limit);
        const reach = readLimit(bounds["plus-minus"]);
        return [(value) => value.gte(middle.sub(reach)) && value.lte(middle.add(reach))];
      }
      default:
        return [];
    }
  });
}

/** Both of two bounds accept; either of two cautions. */
function place(value: Fraction, { accept, caution }: SlowTolerance): string {
  if (!listSenses(accept).every((holds) => holds(value))) return "outside";
  return caution !== undefined && listSenses(caution).some((holds) => holds(value)) ? "caution" : "within";
}

function isOffRange(value: Fraction, gauge: SlowGauge | undefined): boolean {
  return gauge !== undefined && (value.lt(readLimit(gauge.range[0])) || value.gt(readLimit(gauge.range[1])));
}

/** Outside as recorded is settled before anything that the gauge says. */
export function judgeReading(evidence: unknown, tolerance: SlowTolerance, gauge: SlowGauge | undefined): string {
  const read = readSlowly(evidence, "pressure");
  if ("reason" in read) return `undecided: ${read.reason}`;
  const outcome = place(read.value, tolerance);
  return outcome !== "outside" && isOffRange(read.value, gauge) ? "undecided: off-range" : outcome;
}

/** A time below zero is never within. */
export function judgeElapsed(evidence: unknown, tolerance: SlowTolerance): string {
  const read = readSlowly(evidence, "duration");
  if ("reason" in read) return `undecided: ${read.reason}`;
  const outcome = place(read.value, tolerance);
  return outcome !== "outside" && read.value.lt(0) ? "undecided: conflicting" : outcome;
}

export interface SlowHold {
  readonly name: "drop" | "rise" | "change";
  readonly tolerance: SlowTolerance;
  readonly start?: Data | undefined;
  readonly lasting?: Data | undefined;
  readonly gauge?: SlowGauge | undefined;
}

/** Those reasons of the closed list that a hold can have; where several hold, the first is given. */
const REASONS = [
  ...["missing", "unreadable", "no-unit", "unknown-unit", "wrong-dimension", "too-fine", "off-range", "mixed-units"],
  ...["start-too-low", "hold-too-short", "moved-the-wrong-way"],
];

/** The requirements of a hold that are asked for, by name. */
export function judgeHold(entry: Data, hold: SlowHold): Readonly<Record<string, string>> {
  const start = hold.start && judgeReading(entry.start, { accept: hold.start }, hold.gauge);
  const lasting = hold.lasting && judgeElapsed(entry.held, { accept: hold.lasting });
  const [outcome, reasons] = judgeMovement(entry, hold);
  if (start !== undefined && start !== "within") reasons.add("start-too-low");
  if (lasting !== undefined && lasting !== "within") reasons.add("hold-too-short");
  const first = REASONS.find((reason) => reasons.has(reason));
  return {
    ...(start === undefined ? {} : { start }),
    ...(lasting === undefined ? {} : { lasting }),
    // Outside as recorded is settled first.
    [hold.name]: outcome === "outside" || first === undefined ? outcome : `undecided: ${first}`,
  };
}

/** The outcome as recorded, and whatever keeps it from being decided. */
function judgeMovement(entry: Data, hold: SlowHold): readonly [string, Set<string>] {
  const reads: readonly SlowValue[] = [readSlowly(entry.start, "pressure"), readSlowly(entry.end, "pressure")];
  const reasons = new Set(reads.flatMap((read) => ("reason" in read ? [read.reason] : [])));
  const values = reads.flatMap((read) => ("value" in read ? [read] : []));
  const [start, end] = values;
  if (values.some(({ value }) => isOffRange(value, hold.gauge))) reasons.add("off-range");
  if (start === undefined || end === undefined) return ["undecided", reasons];
  if (start.family !== end.family) return ["undecided", reasons.add("mixed-units")];
  const risen = end.value.sub(start.value);
  const moved = hold.name === "drop" ? risen.neg() : hold.name === "rise" ? risen : risen.abs();
  const division = hold.gauge === undefined ? undefined : readLimit(hold.gauge.division);
  const isSmall = division !== undefined && moved.neg().lte(division);
  if (moved.lt(0) && !isSmall) reasons.add("moved-the-wrong-way");
  // None of the changes is ever negative.
  return [place(moved.lt(0) ? new Fraction(0) : moved, hold.tolerance), reasons];
}
