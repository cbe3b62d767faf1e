import { parseDate, parseRecordTime } from "../quantities/index.js";
import { isJsonObject, isMissing, type JsonObject, type JudgeContext, type Row } from "../steps/index.js";
import { STEP_RESULTS, weighConsequence } from "../terms/index.js";
import { listLapsed, weighStep } from "./judge-adopted.js";
import type { Remark } from "./judgement.js";
import { listPlaces } from "./prepared-check-step.js";
import type { PreparedCheck, PreparedPolicy } from "./prepared-policy.js";
import type { Envelope, StepEntry } from "./read-envelope.js";

const NOTE = weighConsequence("note");
const REFER = weighConsequence("refer");

const RECORD_KEYS: ReadonlySet<string> = new Set([
  "tenbar",
  "id",
  "check",
  "at",
  "station",
  "by",
  "subject",
  "steps",
  "attested",
  "local",
  "decision",
  "supersedes",
]);
const BY_KEYS: ReadonlySet<string> = new Set(["id", "competence"]);
const STEP_KEYS: ReadonlySet<string> = new Set(["step", "result", "defect", "note", "at", "of", "instrument"]);
/** Keys of a step that hold texts. */
const TEXT_KEYS = ["note", "instrument", "of"] as const;
/** Evidence keys of every kind; on a step of another kind they are no evidence. */
const EVIDENCE_KEYS: ReadonlySet<string> = new Set([
  "seen",
  "reading",
  "occurred",
  "start",
  "end",
  "held",
  "startTemperature",
  "endTemperature",
  "trace",
  "elapsed",
  "events",
  "on",
]);

/** Everything about the record that no requirement asks for: unknown keys and steps, and bad news beside what was asked. */
export function collectRemarks(
  envelope: Envelope,
  check: PreparedCheck,
  policy: PreparedPolicy,
  rows: readonly Row[],
  context: JudgeContext,
): readonly Remark[] {
  const notDone = markEntries(envelope, rows, ({ undecidedFor }) => undecidedFor === "not-done");
  const judged = markEntries(envelope, rows, ({ outcome }) => outcome !== "not-applicable");
  const remarks: Remark[] = [];
  const { record, subject } = envelope;
  noteUnknownKeys(record, RECORD_KEYS, "", remarks);
  noteUnknownKeys(subject, check.subjectKeys, "/subject", remarks);
  if (isJsonObject(record.by)) noteUnknownKeys(record.by, BY_KEYS, "/by", remarks);
  else if (!isMissing(record.by)) remarks.push(noteUnreadable("/by", "by"));
  remarks.push(...noteWrongKinds(envelope, policy));
  remarks.push(...noteAttestation(record.attested, check));
  envelope.steps.forEach((placed, place) => {
    const marks = { isJudged: judged[place] === true, isNotDoneJudged: notDone[place] === true };
    collectStepRemarks(placed, place, check, marks, context, remarks);
  });
  return remarks;
}

/** For each entry of the record whether one of such rows judged it. */
function markEntries(
  { steps }: Envelope,
  rows: readonly Row[],
  isWanted: (row: Row) => boolean,
): readonly (boolean | undefined)[] {
  const marks: boolean[] = new Array(steps.length);
  for (const row of rows) {
    if (!isWanted(row)) continue;
    for (const place of row.entries) marks[place] = true;
  }
  return marks;
}

function isTextOrMissing(value: unknown): boolean {
  return typeof value === "string" || isMissing(value);
}

/** Values beside the steps that no requirement reads, or reads only in part, and that are not what they should be. */
function noteWrongKinds({ record, subject }: Envelope, policy: PreparedPolicy): readonly Remark[] {
  const isMap = (value: unknown) => isMissing(value) || isJsonObject(value);
  const isDate = (value: unknown) => isMissing(value) || parseDate(value) !== undefined;
  const isQuantity = (dimension: "pressure" | "volume") => (value: unknown) =>
    isMissing(value) || policy.readQuantity(value, dimension).ok;
  const remarks: Remark[] = [];
  const check = (object: JsonObject, base: string, key: string, isRight: (value: unknown) => boolean) => {
    if (!isRight(object[key])) remarks.push(noteUnreadable(`${base}/${escapePointer(key)}`, key));
  };
  for (const key of ["station", "decision", "supersedes"]) check(record, "", key, isTextOrMissing);
  check(record, "", "local", isMap);
  if (isJsonObject(record.by)) check(record.by, "/by", "id", isTextOrMissing);
  for (const key of ["marking", "removed", "class", "role"]) check(subject, "/subject", key, isTextOrMissing);
  for (const key of ["fitted", "instruments"]) check(subject, "/subject", key, isMap);
  const { instruments, fitted, cylinders = [] } = subject;
  if (isJsonObject(instruments)) {
    for (const key of Object.keys(instruments)) check(instruments, "/subject/instruments", key, isTextOrMissing);
  }
  if (isJsonObject(fitted)) {
    const isFlag = (value: unknown) => isMissing(value) || typeof value === "boolean";
    for (const key of Object.keys(fitted)) check(fitted, "/subject/fitted", key, isFlag);
  }
  check(subject, "/subject", "cylinders", (value) => isMissing(value) || Array.isArray(value));
  const things = [{ object: subject, base: "/subject" }];
  for (const [index, cylinder] of (Array.isArray(cylinders) ? cylinders : []).entries()) {
    const base = `/subject/cylinders/${index}`;
    if (isJsonObject(cylinder)) things.push({ object: cylinder, base });
    else remarks.push(noteUnreadable(base, String(index)));
  }
  for (const { object, base } of things) {
    check(object, base, "ratedPressure", isQuantity("pressure"));
    check(object, base, "waterCapacity", isQuantity("volume"));
    check(object, base, "manufacturedOn", isDate);
    check(object, base, "requalifiedOn", isDate);
  }
  return remarks;
}

function noteUnknownKeys(object: JsonObject, known: ReadonlySet<string>, base: string, remarks: Remark[]): void {
  for (const key of Object.keys(object)) {
    if (known.has(key)) continue;
    remarks.push({
      code: "record/unknown-key",
      weight: NOTE,
      pointer: `${base}/${escapePointer(key)}`,
      params: { key },
    });
  }
}

function escapePointer(key: string): string {
  return key.replaceAll("~", "~0").replaceAll("/", "~1");
}

function noteUnreadable(pointer: string, key: string, step?: string): Remark {
  return { code: "record/unreadable-value", weight: NOTE, pointer, step, params: { key } };
}

/** What the rows of requirements already say of an entry. */
interface EntryMarks {
  readonly isJudged: boolean;
  readonly isNotDoneJudged: boolean;
}

function collectStepRemarks(
  { step: name, entry }: StepEntry,
  place: number,
  check: PreparedCheck,
  { isJudged, isNotDoneJudged }: EntryMarks,
  context: JudgeContext,
  remarks: Remark[],
): void {
  const index = check.placeOf.get(name);
  const step = index === undefined ? undefined : check.steps[index];
  const pointer = `/steps/${place}`;
  const stepName = step?.plan.step ?? name;
  if (step === undefined) {
    remarks.push({ code: "record/unknown-step", weight: NOTE, pointer, step: name, params: { step: name } });
  }
  // Why: a step that was not asked, or was left out under an adoption, took nothing of this into account.
  if (!isJudged || step?.evidenceKeys.has("result") !== true) {
    const weigh = () => (index === undefined ? REFER : Math.max(REFER, weighStep(index, check, context)));
    collectBadNews(entry, pointer, stepName, weigh, isNotDoneJudged, remarks);
  }
  for (const key of TEXT_KEYS) {
    if (!isTextOrMissing(entry[key])) remarks.push(noteUnreadable(`${pointer}/${key}`, key, stepName));
  }
  if (!isMissing(entry.at) && parseRecordTime(entry.at) === undefined) {
    remarks.push(noteUnreadable(`${pointer}/at`, "at", stepName));
  }
  if (step === undefined) return;
  for (const key of Object.keys(entry)) {
    if (STEP_KEYS.has(key) || step.evidenceKeys.has(key) || isMissing(entry[key])) continue;
    const at = { pointer: `${pointer}/${escapePointer(key)}`, step: stepName, params: { key } };
    if (key === "trace") remarks.push({ ...at, code: "step/trace-not-judged", weight: REFER });
    else if (EVIDENCE_KEYS.has(key)) remarks.push({ ...at, code: "step/unused-evidence", weight: NOTE });
    else remarks.push({ ...at, code: "record/unknown-key", weight: NOTE });
  }
  const asked = index === undefined ? undefined : check.placesAt[index];
  const { seen } = entry;
  if (index === undefined || asked === undefined || !isJsonObject(seen)) return;
  const unknown = listUnknownPlaces(asked, seen);
  // Why: where an order has lapsed, a place that only this policy asks for is to the parent a place too many.
  const lapsed = listLapsed(index, check, context).flatMap(({ adoption }) => {
    const places = listPlaces(adoption.otherwise.plan);
    return places === undefined ? [] : listUnknownPlaces(places, seen);
  });
  const contradicting = lapsed.filter((one) => !one.agrees && !unknown.some(({ place }) => place === one.place));
  for (const { place, agrees } of [...unknown, ...contradicting]) {
    remarks.push({
      code: "step/unknown-place",
      weight: agrees ? NOTE : REFER,
      pointer: `${pointer}/seen/${escapePointer(place)}`,
      step: stepName,
      params: { place },
    });
  }
}

/**
 * `not-done`, a defect, and a result that cannot be understood weigh at least `refer` wherever they stand; on a step that weighs
 * more, what the step weighs.
 */
function collectBadNews(
  entry: JsonObject,
  pointer: string,
  step: string,
  weigh: () => number,
  notDoneIsJudged: boolean,
  remarks: Remark[],
): void {
  const { result, defect } = entry;
  if (result === undefined && defect === undefined) return;
  if (!isMissing(defect) || result === "defect") {
    const name = typeof defect === "string" && defect.trim() !== "" ? defect.trim() : "defect";
    remarks.push({ code: "step/defect", weight: weigh(), pointer, step, defect: name, params: { defect: name } });
  }
  if (result === "not-done") {
    if (!notDoneIsJudged) remarks.push({ code: "step/not-done", weight: REFER, pointer, step, params: {} });
  } else if (!isMissing(result) && !STEP_RESULTS.some((word) => word === result)) {
    const recorded = typeof result === "string" ? result : JSON.stringify(result);
    remarks.push({
      code: "step/unknown-result",
      weight: REFER,
      pointer: `${pointer}/result`,
      step,
      params: { recorded },
    });
  }
}

/** Places that are not asked for, and whether the text there says to the letter what each place says that is. */
function listUnknownPlaces(
  asked: ReadonlySet<string>,
  seen: JsonObject,
): readonly { place: string; agrees: boolean }[] {
  if (Object.keys(seen).every((place) => asked.has(place))) return [];
  const texts = Object.entries(seen)
    .filter(([place, text]) => asked.has(place) && !isMissing(text))
    .map(([, text]) => String(text).trim());
  return Object.entries(seen).flatMap(([place, text]) => {
    if (asked.has(place) || isMissing(text)) return [];
    return [{ place, agrees: typeof text === "string" && texts.every((known) => known === text.trim()) }];
  });
}

/** Steps that are attested though the policy does not let them be; an attestation that cannot be read. */
function noteAttestation(attested: unknown, check: PreparedCheck): readonly Remark[] {
  if (isMissing(attested)) return [];
  const steps = isJsonObject(attested) ? attested.steps : undefined;
  if (!Array.isArray(steps)) return [noteUnreadable("/attested", "attested")];
  return steps.flatMap((step: unknown, index): Remark[] => {
    const pointer = `/attested/steps/${index}`;
    if (typeof step !== "string") return [noteUnreadable(pointer, "attested")];
    const found = check.steps.find(({ plan }) => plan.step === step);
    if (found?.plan.kind === "confirm" && found.plan.attestable) return [];
    return [{ code: "record/not-attestable", weight: NOTE, pointer, step, params: { step } }];
  });
}
