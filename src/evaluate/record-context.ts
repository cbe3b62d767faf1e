import type { ScopePlan } from "../model/index.js";
import type { Quantity } from "../quantities/index.js";
import {
  firstReason,
  isJsonObject,
  isMissing,
  type JsonObject,
  type JudgeContext,
  type Member,
  readMember,
  type ScopeState,
  type TextFact,
} from "../steps/index.js";
import { saysAnything, type UndecidedReason } from "../terms/index.js";
import { isAccepted } from "./is-accepted.js";
import type { PreparedPolicy } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";
import { type ReadFact, readFact } from "./read-fact.js";
import { readMembers } from "./read-members.js";

const QUANTITY_FIELDS = {
  "rated-pressure": { field: "ratedPressure", dimension: "pressure" },
  "water-capacity": { field: "waterCapacity", dimension: "volume" },
} as const;

/** Makes the facts of one record available to the judge halves; each is read once. */
export function createJudgeContext(policy: PreparedPolicy, envelope: Envelope): JudgeContext {
  const { subject, record } = envelope;
  const instruments = isJsonObject(subject.instruments) ? subject.instruments : {};
  const known = new Map<string, ReadFact>();
  const lists = new Map<string, readonly Member[]>();
  const read = (name: string): ReadFact => {
    const before = known.get(name);
    if (before !== undefined) return before;
    const fact = policy.facts.get(name);
    const value: ReadFact =
      fact === undefined ? { value: undefined, reason: "fact-missing" } : readFact(fact, record, policy.readQuantity);
    known.set(name, value);
    return value;
  };
  const textFact = (name: string): TextFact => {
    if (name.startsWith("subject.")) return readSubjectText(subject, name.slice("subject.".length));
    const { value, reason } = read(name);
    if (typeof value === "string") return { text: value, reason: undefined };
    return { text: undefined, reason: reason ?? "unreadable" };
  };
  return {
    recordDate: envelope.time.date,
    gapsAsOutside: policy.gapsAsOutside,
    readQuantity: policy.readQuantity,
    instrumentRecorded: (name) => readMember(instruments, name),
    textFact,
    fact: (name, member) =>
      name === "rated-pressure" || name === "water-capacity" ? readBuiltIn(name, member, subject, policy) : read(name),
    formerText: (name) => (policy.facts.get(name)?.isKind === true ? envelope.formerKind : undefined),
    quantityFact: (name, member) => {
      if (name === "rated-pressure" || name === "water-capacity") {
        const { value, reason } = readBuiltIn(name, member, subject, policy);
        return value ?? reason;
      }
      const { value, reason } = read(name);
      return typeof value === "object" && "quanta" in value ? value : (reason ?? "unreadable");
    },
    scopeState: (scope) => readScope(scope, policy, envelope, textFact),
    members(pointer) {
      const before = lists.get(pointer);
      if (before !== undefined) return before;
      const members = readMembers(pointer, subject);
      lists.set(pointer, members);
      return members;
    },
    isAttested: (step) => isAttested(record.attested, step),
  };
}

function readSubjectText(subject: JsonObject, key: string): TextFact {
  const value = readMember(subject, key);
  if (isMissing(value)) return { text: undefined, reason: "fact-missing" };
  if (typeof value !== "string") return { text: undefined, reason: "unreadable" };
  if (!saysAnything(value)) return { text: undefined, reason: "fact-missing" };
  return { text: value.trim(), reason: undefined };
}

/** False as soon as one fact is known to have another value, else open while one is missing. */
function readScope(
  scope: ScopePlan,
  { facts }: PreparedPolicy,
  envelope: Envelope,
  textFact: (name: string) => TextFact,
): ScopeState {
  let open: UndecidedReason | undefined;
  for (const [name, accepted] of Object.entries(scope)) {
    const fact = textFact(name);
    const state = fact.text === undefined ? undefined : isAccepted(facts.get(name), fact.text, accepted, envelope);
    if (state === false) return false;
    if (state === undefined) open = firstReason(open, fact.reason ?? "unknown-word");
  }
  return open ?? true;
}

/** An attestation names its steps, the words used and who vouches; one that lacks any of them attests nothing. */
function isAttested(attested: unknown, step: string): boolean {
  if (!isJsonObject(attested)) return false;
  const { steps, wording, by } = attested;
  const isSaid = (value: unknown) => typeof value === "string" && value.trim() !== "";
  return isSaid(wording) && isSaid(by) && Array.isArray(steps) && steps.includes(step);
}

type BuiltInQuantity =
  | { readonly value: Quantity; readonly reason: undefined }
  | { readonly value: undefined; readonly reason: UndecidedReason };

/**
 * Under `each` the member's own figure. Otherwise the subject's own, and where it lists cylinders the one figure that all of
 * them have: figures that differ give no fact. A figure of 0 or below is no fact, since every reading would satisfy a share of it.
 */
function readBuiltIn(
  name: keyof typeof QUANTITY_FIELDS,
  member: JsonObject | undefined,
  subject: JsonObject,
  policy: PreparedPolicy,
): BuiltInQuantity {
  const { field, dimension } = QUANTITY_FIELDS[name];
  const fail = (reason: UndecidedReason): BuiltInQuantity => ({ value: undefined, reason });
  const read = (value: unknown): BuiltInQuantity => {
    const parsed = policy.readQuantity(value, dimension);
    if (!parsed.ok) return fail(parsed.fault === "missing" ? "fact-missing" : parsed.fault);
    return parsed.quantity.quanta > 0 ? { value: parsed.quantity, reason: undefined } : fail("unreadable");
  };
  if (member !== undefined) return read(member[field]);
  const cylinders = Array.isArray(subject.cylinders) ? subject.cylinders : [];
  const stated = [
    ...(isMissing(subject[field]) ? [] : [subject[field]]),
    ...cylinders.map((cylinder: unknown) => (isJsonObject(cylinder) ? cylinder[field] : undefined)),
  ].map(read);
  const [first = fail("fact-missing")] = stated;
  const failed = stated.find(({ value }) => value === undefined);
  if (failed !== undefined || first.value === undefined) return failed ?? first;
  const { quanta, unit } = first.value;
  const agree = stated.every(({ value }) => value?.quanta === quanta && value.unit.family === unit.family);
  return agree ? first : fail("facts-differ");
}
