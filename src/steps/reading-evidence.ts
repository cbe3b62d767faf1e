import type { Dimension, Family, Quantity } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import { isJsonObject, isMissing, type JsonObject, readMember } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";

/** What a record step says about one quantity. `doubt` keeps it from being accepted, never from being outside. */
export type ReadingEvidence =
  | { readonly form: "value"; readonly quantity: Quantity; readonly doubt: UndecidedReason | undefined }
  | {
      readonly form: "interval";
      /** Whole quanta of `family`, ends included; -Infinity where the evidence has no lower end. */
      readonly low: number;
      readonly high: number;
      readonly family: Family;
      readonly ends: readonly Quantity[];
      readonly doubt: UndecidedReason | undefined;
    }
  | { readonly form: "fault"; readonly reason: UndecidedReason };

/** Reads `reading`: a quantity, `{ atMost }` or `{ between }`. `occurred` must be a truth value where it is given. */
export function readEvidence(entry: JsonObject, dimension: Dimension, context: JudgeContext): ReadingEvidence {
  const { reading, occurred } = entry;
  const doubt = !isMissing(occurred) && occurred !== true ? ("unreadable" as const) : undefined;
  if (isJsonObject(reading)) return readInterval(reading, dimension, doubt, context);
  const parsed = context.readQuantity(reading, dimension);
  if (parsed.ok) return { form: "value", quantity: parsed.quantity, doubt };
  if (parsed.fault !== "missing") return { form: "fault", reason: parsed.fault };
  return { form: "fault", reason: entry.result === "not-done" ? "not-done" : (doubt ?? "missing") };
}

function readInterval(
  reading: JsonObject,
  dimension: Dimension,
  doubt: UndecidedReason | undefined,
  context: JudgeContext,
): ReadingEvidence {
  const atMost = readMember(reading, "atMost");
  const between = readMember(reading, "between");
  const texts = between === undefined ? [atMost] : between;
  if (!Array.isArray(texts) || texts.length !== (between === undefined ? 1 : 2) || Object.keys(reading).length !== 1) {
    return { form: "fault", reason: "unreadable" };
  }
  const ends: Quantity[] = [];
  for (const text of texts) {
    const parsed = context.readQuantity(text, dimension);
    if (!parsed.ok) return { form: "fault", reason: parsed.fault };
    ends.push(parsed.quantity);
  }
  const [first, last = first] = ends;
  if (first === undefined || last === undefined) return { form: "fault", reason: "unreadable" };
  const { family } = last.unit;
  if (first.unit.family !== family) return { form: "fault", reason: "mixed-units" };
  if (between !== undefined && first.quanta > last.quanta) return { form: "fault", reason: "conflicting" };
  const low = between === undefined ? Number.NEGATIVE_INFINITY : first.quanta;
  return { form: "interval", low, high: last.quanta, family, ends, doubt };
}
