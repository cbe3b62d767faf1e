import type { PolicyStep, StepPlanOf } from "../model/index.js";
import { saysAnything, type UndecidedReason } from "../terms/index.js";
import type { LimitWords } from "../words/index.js";
import type { CompileContext, CompiledStep } from "./compile-context.js";
import { firstReason } from "./first-reason.js";
import { isJsonObject, isMissing, type JsonObject, readMember, trimText } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import { makeRow, type Row } from "./row.js";
import { sayPlainly } from "./row-words.js";
import { compileCommon, compilePlainRequirement, finishStep } from "./step-common.js";
import type { StepField } from "./step-field.js";

type MatchPlan = StepPlanOf<"match">;

/** The same text is found in every place, and equals or differs from a fact. */
export function compileMatch(
  step: Extract<PolicyStep, { kind: "match" }>,
  context: CompileContext,
): CompiledStep | undefined {
  const places = step.places.map((place) =>
    typeof place === "string" ? { place, formerly: [] } : { place: place.place, formerly: [...place.formerly] },
  );
  const names = places.flatMap(({ place, formerly }, index) => [place, ...formerly].map((name) => ({ name, index })));
  let usable = true;
  names.forEach(({ name, index }, position) => {
    if (names.findIndex((one) => one.name === name) === position) return;
    const place = context.place(`${context.pointer}/places/${index}`);
    context.diagnostics.report("plan/duplicate-name", place, { thing: "place", name });
    usable = false;
  });
  if (places.length === 1 && step.equals === undefined && step["differs-from"] === undefined) {
    context.diagnostics.report("plan/nothing-to-compare", context.place(`${context.pointer}/places`), {});
    usable = false;
  }
  if (!usable) return undefined;
  const limitAt = step.equals === undefined ? undefined : `${context.pointer}/equals`;
  return finishStep(
    (requirements) => ({
      ...compileCommon(step),
      kind: "match",
      places,
      ignore: [...(step.ignore ?? [])],
      ...(step.equals === undefined ? {} : { equals: step.equals }),
      ...(step["differs-from"] === undefined ? {} : { differsFrom: step["differs-from"] }),
      requirements,
    }),
    [compilePlainRequirement("match", step, `${context.pointer}/places`, limitAt, context)],
  );
}

export function prepareMatch(plan: MatchPlan, requirements: readonly PreparedRequirement[]): PreparedStep {
  const [match] = requirements;
  if (match === undefined) throw new Error(`${plan.step} has no requirement`);
  const fold = makeFold(plan.ignore);
  return {
    plan,
    requirements,
    evidenceKeys: new Set(["seen"]),
    judge(entry, member, context, rows) {
      rows.push(judgeMatch(match, plan, entry, member, context, fold));
    },
    describe(row, entry, _member, _context, words) {
      const observed = isJsonObject(entry?.seen) ? describeSeen(plan, entry.seen) : "";
      return sayPlainly(observed === "" ? undefined : observed, describeWanted(plan, row, words));
    },
  };
}

function describeWanted(plan: MatchPlan, row: Row, words: LimitWords): string {
  let said = words.sameInEveryPlace;
  if (plan.equals !== undefined) said += `, ${words.equalTo(row.details?.equals ?? plan.equals)}`;
  if (plan.differsFrom !== undefined) said += `, ${words.otherThan(row.details?.differsFrom ?? plan.differsFrom)}`;
  return said;
}

function describeSeen(plan: MatchPlan, seen: JsonObject): string {
  let said = "";
  for (const { place, formerly } of plan.places) {
    // Why: the first name that is recorded stands under the place's present name, whichever it is.
    let name: string | undefined = place;
    for (const one of [place, ...formerly]) {
      const text = readMember(seen, one);
      if (isMissing(text)) continue;
      if (typeof text === "string") said += `${said === "" ? "" : ", "}${name ?? one} ${trimText(text)}`;
      name = undefined;
    }
  }
  return said;
}

/** Exact code points after trimming; only what `ignore` names is folded, and never leading zeros. */
function makeFold(ignore: MatchPlan["ignore"]): (text: string) => string {
  if (ignore.length === 0) return trimText;
  return (text) => {
    let folded = trimText(text);
    if (ignore.includes("case")) folded = folded.toLowerCase();
    if (ignore.includes("blanks")) folded = folded.replace(/\s+/gu, "");
    if (ignore.includes("hyphens")) folded = folded.replace(/[-\u2010\u2011]/gu, "");
    return folded;
  };
}

/** What stands under the name of a place and under each former name; a record that has several is held to all of them. */
function readPlace(seen: JsonObject, { place, formerly }: MatchPlan["places"][number]): readonly unknown[] {
  const own = readMember(seen, place);
  const read = isMissing(own) ? [] : [own];
  for (const name of formerly) {
    const text = readMember(seen, name);
    if (!isMissing(text)) read.push(text);
  }
  return read;
}

function judgeMatch(
  match: PreparedRequirement,
  plan: MatchPlan,
  entry: JsonObject | undefined,
  member: JsonObject | undefined,
  context: JudgeContext,
  fold: (text: string) => string,
): Row {
  const seen = entry?.seen;
  const texts: string[] = [];
  let reason: UndecidedReason | undefined;
  if (isJsonObject(seen)) reason = collectTexts(plan, seen, fold, texts);
  else if (isMissing(seen)) reason = entry?.result === "not-done" ? "not-done" : "missing";
  else reason = "unreadable";
  const equals = plan.equals === undefined ? undefined : context.textFact(plan.equals, member);
  const differs = plan.differsFrom === undefined ? undefined : context.textFact(plan.differsFrom, member);
  reason = firstReason(firstReason(reason, equals?.reason), differs?.reason);
  const equal = equals?.text === undefined ? undefined : fold(equals.text);
  const other = differs?.text === undefined ? undefined : fold(differs.text);
  let differ = false;
  let notEqual = false;
  let notOther = false;
  for (const text of texts) {
    if (text !== texts[0]) differ = true;
    if (equal !== undefined && text !== equal) notEqual = true;
    if (text === other) notOther = true;
  }
  const outside = differ || notEqual || notOther;
  const row = outside
    ? makeRow(match, "outside")
    : makeRow(match, reason === undefined ? "within" : "undecided", reason);
  if (equals?.text !== undefined || differs?.text !== undefined) {
    row.details = {
      ...(equals?.text === undefined ? {} : { equals: equals.text }),
      ...(differs?.text === undefined ? {} : { differsFrom: differs.text }),
    };
  }
  return row;
}

/** Adds the folded text of every place to `texts`; gives the first reason for which a place has none. */
function collectTexts(
  { places }: MatchPlan,
  seen: JsonObject,
  fold: (text: string) => string,
  texts: string[],
): UndecidedReason | undefined {
  let reason: UndecidedReason | undefined;
  for (const place of places) {
    const read = readPlace(seen, place);
    if (read.length === 0) reason = firstReason(reason, "missing");
    for (const text of read) {
      if (typeof text !== "string") {
        reason = firstReason(reason, "unreadable");
        continue;
      }
      const folded = fold(text);
      texts.push(folded);
      // Why: two dashes, or two question marks, are no number that was read twice.
      if (folded === "" || !saysAnything(text)) reason = firstReason(reason, "missing");
    }
  }
  return reason;
}

export function listMatchFields({ places }: MatchPlan): readonly StepField[] {
  return [{ key: "seen", type: "places", places: places.map(({ place }) => place) }];
}
