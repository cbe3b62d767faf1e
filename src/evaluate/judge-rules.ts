import { parseDate } from "../quantities/index.js";
import type { RuleFacts, RuleValue } from "../rules/index.js";
import {
  isJsonObject,
  isMissing,
  type JsonObject,
  type JudgeContext,
  listSlots,
  MEMBER_SLOTS,
  type Member,
  makeNotApplicable,
  makeRow,
  type PreparedStep,
  type Row,
  readMember,
  type SlotType,
} from "../steps/index.js";
import { doubtMember, type EntryGroups, type PlacedEntry } from "./judge-step.js";
import type { PreparedCheck } from "./prepared-policy.js";
import type { PreparedRule } from "./prepared-rule.js";
import type { Envelope } from "./read-envelope.js";
import { writeStableText } from "./stable-text.js";

/** Judges one rule: not asked where it is out of scope or its condition is false; a fact that is missing leaves it open. */
export function judgeRule(
  { plan, requirement, when, require }: PreparedRule,
  facts: RuleFacts,
  context: JudgeContext,
): Row {
  const scope = plan.for === undefined ? true : context.scopeState(plan.for);
  if (scope === false) return makeNotApplicable(requirement, "out-of-scope");
  const condition = when === undefined ? true : when(facts);
  if (condition === false) return makeNotApplicable(requirement, "condition-false");
  const required = require(facts);
  if (required === true) return makeRow(requirement, "within");
  if (required === undefined || condition === undefined || scope !== true) {
    return makeRow(requirement, "undecided", scope === true ? "rule-incomplete" : scope);
  }
  return makeRow(requirement, "outside");
}

/** What the rules of a check may read: facts of the record, slots of its steps, lists of its subject. */
export function createRuleFacts(
  check: PreparedCheck,
  groups: EntryGroups,
  envelope: Envelope,
  context: JudgeContext,
): RuleFacts {
  const readStep = (name: string) => {
    const place = check.placeOf.get(name);
    const step = place === undefined ? undefined : check.steps[place];
    return step === undefined || place === undefined ? undefined : { step, entries: groups[place] ?? [] };
  };
  return {
    read(name) {
      const dot = name.indexOf(".");
      if (dot === -1) return readNamed(name, context);
      if (name.startsWith("subject.")) return context.textFact(name, undefined).text;
      const found = readStep(name.slice(0, dot));
      return found && readSlot(found.step, found.entries, name.slice(dot + 1), context);
    },
    members(name) {
      const found = readStep(name);
      if (found !== undefined) {
        const { step, entries } = found;
        if (entries.length === 0) return undefined;
        const recorded = entries.map((placed) => readEntryMember(step, placed, context));
        return [...recorded, ...findUnrecorded(step, entries, context)];
      }
      const list = readMember(envelope.subject, name.slice("subject.".length));
      if (!Array.isArray(list) || list.length === 0) return undefined;
      return list.map((member: unknown) => readListMember(isJsonObject(member) ? member : {}, context));
    },
  };
}

function readNamed(name: string, context: JudgeContext): RuleValue | undefined {
  const { value } = context.fact(name, undefined);
  const formerly = context.formerText(name);
  return typeof value === "string" && formerly !== undefined ? { text: value, formerly } : value;
}

const NOTHING_RECORDED: RuleFacts = { read: () => undefined, members: () => undefined };

/** Why: of a member that no entry speaks for nothing is known, so what a rule asks of all is open for it. */
function findUnrecorded(
  { plan }: PreparedStep,
  entries: readonly PlacedEntry[],
  context: JudgeContext,
): readonly RuleFacts[] {
  const members = plan.each === undefined ? [] : context.members(plan.each);
  const isRecorded = (member: Member) =>
    member.fault === undefined && entries.some(({ entry }) => doubtMember(entry, member, members) === undefined);
  return members.filter((member) => !isRecorded(member)).map(() => NOTHING_RECORDED);
}

function readEntryMember(step: PreparedStep, placed: PlacedEntry, context: JudgeContext): RuleFacts {
  return {
    read: (field) =>
      field === "of" ? readTyped(placed.entry.of, { kind: "text" }, context) : readSlot(step, [placed], field, context),
    members: () => undefined,
  };
}

function readListMember(member: JsonObject, context: JudgeContext): RuleFacts {
  return {
    read(field) {
      const type = Object.hasOwn(MEMBER_SLOTS, field) ? MEMBER_SLOTS[field] : undefined;
      return type && readTyped(readMember(member, field), type, context);
    },
    members: () => undefined,
  };
}

/** The value of a slot, where every entry of the step that states it states the same. */
function readSlot(
  step: PreparedStep,
  entries: readonly PlacedEntry[],
  slot: string,
  context: JudgeContext,
): RuleValue | undefined {
  const slots = listSlots(step.plan);
  const type = Object.hasOwn(slots, slot) ? slots[slot] : undefined;
  const values = entries.map(({ entry }) => readMember(entry, slot));
  const [first] = values;
  if (type === undefined || values.some((value) => writeStableText(value) !== writeStableText(first))) return undefined;
  return readTyped(first, type, context);
}

function readTyped(value: unknown, type: SlotType, context: JudgeContext): RuleValue | undefined {
  if (isMissing(value)) return undefined;
  switch (type.kind) {
    case "text": {
      if (typeof value !== "string") return undefined;
      const text = value.trim();
      return type.words === undefined || type.words.includes(text) ? text : undefined;
    }
    case "date":
      return parseDate(value);
    case "quantity": {
      const parsed = context.readQuantity(value, type.dimension);
      return parsed.ok ? parsed.quantity : undefined;
    }
  }
}
