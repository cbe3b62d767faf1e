import {
  type CalendarDate,
  compareDates,
  compareRational,
  parseDate,
  type Quantity,
  rationalOfQuantity,
} from "../quantities/index.js";
import { isJsonObject, isMissing, readMember } from "../steps/index.js";
import { saysAnything, type UndecidedReason } from "../terms/index.js";
import type { PreparedFact } from "./prepared-fact.js";
import type { PreparedPolicy } from "./prepared-policy.js";

export type FactValue = string | boolean | CalendarDate | Quantity;

/** A fact as the record states it, or why there is none. */
export type ReadFact =
  | { readonly value: FactValue; readonly reason: undefined }
  | { readonly value: undefined; readonly reason: UndecidedReason };

type ReadQuantity = PreparedPolicy["readQuantity"];

const MISSING: ReadFact = { value: undefined, reason: "fact-missing" };
const UNREADABLE: ReadFact = { value: undefined, reason: "unreadable" };

/** Reads one fact of a record. A fact over a list needs the list, and the fact in every member. */
export function readFact(fact: PreparedFact, record: unknown, readQuantity: ReadQuantity): ReadFact {
  if (fact.each === undefined) return readValue(fact, followPointer(record, fact.at), readQuantity);
  const list = followPointer(record, fact.each);
  if (isMissing(list)) return MISSING;
  if (!Array.isArray(list)) return UNREADABLE;
  let taken: ReadFact | undefined;
  for (const member of list) {
    const read = readValue(fact, followPointer(member, fact.at), readQuantity);
    if (read.value === undefined) return read;
    taken = taken?.value === undefined ? read : takeValue(fact, taken.value, read.value);
    if (taken.value === undefined) return taken;
  }
  return taken ?? MISSING;
}

/** Follows the keys of a JSON Pointer; undefined where there is nothing. */
function followPointer(value: unknown, keys: readonly string[]): unknown {
  let current = value;
  for (const key of keys) {
    if (Array.isArray(current)) current = /^(0|[1-9]\d*)$/.test(key) ? current[Number(key)] : undefined;
    else current = isJsonObject(current) ? readMember(current, key) : undefined;
  }
  return current;
}

/** A quantity of 0 or below is no fact, since every reading would satisfy a share of it. */
function readValue(fact: PreparedFact, value: unknown, readQuantity: ReadQuantity): ReadFact {
  if (isMissing(value)) return MISSING;
  switch (fact.kind) {
    case "flag":
      return typeof value === "boolean" ? { value, reason: undefined } : UNREADABLE;
    case "date": {
      const date = parseDate(value);
      return date === undefined ? UNREADABLE : { value: date, reason: undefined };
    }
    case "quantity":
      return readQuantityValue(fact, value, readQuantity);
    case "text": {
      if (typeof value !== "string") return UNREADABLE;
      const text = value.trim();
      if (fact.words?.has(text) === false) return { value: undefined, reason: "unknown-word" };
      // Why: a dash or a question mark is no other word, to which other limits or none apply.
      if (fact.words === undefined && !saysAnything(text)) return MISSING;
      return { value: text, reason: undefined };
    }
  }
}

function readQuantityValue(fact: PreparedFact, value: unknown, readQuantity: ReadQuantity): ReadFact {
  if (fact.dimension === undefined) return UNREADABLE;
  const parsed = readQuantity(value, fact.dimension);
  if (!parsed.ok) return { value: undefined, reason: parsed.fault === "missing" ? "fact-missing" : parsed.fault };
  return { value: parsed.quantity, reason: undefined };
}

/** Chooses between the values of two members; members that differ give no fact unless one is asked for by its size. */
function takeValue(fact: PreparedFact, one: FactValue, other: FactValue): ReadFact {
  const order = compareValues(one, other);
  if (order === 0) return { value: one, reason: undefined };
  if (fact.take === "only" || order === undefined) return { value: undefined, reason: "facts-differ" };
  const lower = order === -1 ? one : other;
  const higher = order === -1 ? other : one;
  return { value: fact.take === "lowest" ? lower : higher, reason: undefined };
}

function compareValues(one: FactValue, other: FactValue): -1 | 0 | 1 | undefined {
  if (typeof one === "object" && typeof other === "object") {
    if ("quanta" in one && "quanta" in other)
      return compareRational(rationalOfQuantity(one), rationalOfQuantity(other));
    if ("year" in one && "year" in other) return compareDates(one, other);
    return undefined;
  }
  return one === other ? 0 : undefined;
}
