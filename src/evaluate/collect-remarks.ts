import { parseRecordTime } from "../quantities/index.js";
import {
  isJsonObject,
  isMissing,
  type JsonObject,
  type JudgeContext,
  type PreparedStep,
  type Row,
} from "../steps/index.js";
import { findNearest, STEP_RESULTS, weighConsequence } from "../terms/index.js";
import { listLapsed, weighStep } from "./judge-adopted.js";
import type { PlacedEntry } from "./judge-step.js";
import type { Remark } from "./judgement.js";
import { pointToStep } from "./point-to-step.js";
import { listPlaces } from "./prepared-check-step.js";
import { ENTRY_KEYS, type PreparedCheck, type PreparedPolicy } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

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
/** Keys of a subject that hold texts. */
const SUBJECT_TEXTS = ["marking", "removed", "class", "role"] as const;
const BY_KEYS: ReadonlySet<string> = new Set(["id", "competence"]);
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

/** Keys of an entry that count on every step, whatever its kind. */
const COMMON_KEYS = ["result", "defect", "of", "instrument"] as const;
/** A shorter key is one letter from too many others. */
const SHORTEST_MISSPELT = 3;

/** Everything about the record that no requirement asks for: unknown keys and steps, and bad news beside what was asked. */
export function collectRemarks(
  envelope: Envelope,
  entries: readonly PlacedEntry[],
  check: PreparedCheck,
  policy: PreparedPolicy,
  rows: readonly Row[],
  context: JudgeContext,
): readonly Remark[] {
  const { judged, notDone } = markEntries(entries.length, rows);
  const remarks: Remark[] = [];
  const { record, subject } = envelope;
  noteUnknownKeys(record, RECORD_KEYS, "", remarks);
  noteUnknownKeys(subject, check.subjectKeys, "/subject", remarks);
  if (isJsonObject(record.by)) noteUnknownKeys(record.by, BY_KEYS, "/by", remarks);
  else if (!isMissing(record.by)) remarks.push(noteUnreadable("/by", "by"));
  noteWrongKinds(envelope, policy, remarks);
  remarks.push(...noteAttestation(record.attested, check));
  for (const placed of entries) {
    const marks = { isJudged: judged[placed.place] === true, isNotDoneJudged: notDone[placed.place] === true };
    collectStepRemarks(placed, check, marks, context, remarks);
  }
  return remarks;
}

/** Whether each entry was judged at all, and whether a row is undecided about it because it was not done. */
function markEntries(count: number, rows: readonly Row[]): { judged: readonly boolean[]; notDone: readonly boolean[] } {
  const judged = new Array<boolean>(count).fill(false);
  const notDone = new Array<boolean>(count).fill(false);
  for (const { outcome, undecidedFor, entries } of rows) {
    if (outcome === "not-applicable") continue;
    for (const place of entries) {
      judged[place] = true;
      if (undecidedFor === "not-done") notDone[place] = true;
    }
  }
  return { judged, notDone };
}

function isTextOrMissing(value: unknown): boolean {
  return typeof value === "string" || isMissing(value);
}

function isMapOrMissing(value: unknown): boolean {
  return isJsonObject(value) || isMissing(value);
}

function isFlagOrMissing(value: unknown): boolean {
  return typeof value === "boolean" || isMissing(value);
}

/** Values beside the steps that no requirement reads, or reads only in part, and that are not what they should be. */
function noteWrongKinds({ record, subject }: Envelope, policy: PreparedPolicy, remarks: Remark[]): void {
  const note = (base: string, key: string) => remarks.push(noteUnreadable(`${base}/${escapePointer(key)}`, key));
  const { station, decision, supersedes } = record;
  if (!isTextOrMissing(station)) note("", "station");
  if (!isTextOrMissing(decision)) note("", "decision");
  if (!isTextOrMissing(supersedes)) note("", "supersedes");
  if (!isMapOrMissing(record.local)) note("", "local");
  if (isJsonObject(record.by) && !isTextOrMissing(record.by.id)) note("/by", "id");
  for (const key of SUBJECT_TEXTS) if (!isTextOrMissing(subject[key])) note("/subject", key);
  const { instruments, fitted, cylinders } = subject;
  if (!isMapOrMissing(fitted)) note("/subject", "fitted");
  if (!isMapOrMissing(instruments)) note("/subject", "instruments");
  noteMembers(instruments, "/subject/instruments", isTextOrMissing, note);
  noteMembers(fitted, "/subject/fitted", isFlagOrMissing, note);
  if (!isMissing(cylinders) && !Array.isArray(cylinders)) note("/subject", "cylinders");
  const things = [{ object: subject, base: "/subject" }];
  for (const [index, cylinder] of (Array.isArray(cylinders) ? cylinders : []).entries()) {
    const base = `/subject/cylinders/${index}`;
    if (isJsonObject(cylinder)) things.push({ object: cylinder, base });
    else remarks.push(noteUnreadable(base, String(index)));
  }
  for (const { object, base } of things) {
    const { ratedPressure, waterCapacity, manufacturedOn, requalifiedOn } = object;
    if (!isMissing(ratedPressure) && !policy.readQuantity(ratedPressure, "pressure").ok) note(base, "ratedPressure");
    if (!isMissing(waterCapacity) && !policy.readQuantity(waterCapacity, "volume").ok) note(base, "waterCapacity");
    if (!isMissing(manufacturedOn) && policy.readDate(manufacturedOn) === undefined) note(base, "manufacturedOn");
    if (!isMissing(requalifiedOn) && policy.readDate(requalifiedOn) === undefined) note(base, "requalifiedOn");
  }
}

/** Notes the members of a map whose names the author chose. */
function noteMembers(
  map: unknown,
  base: string,
  isRight: (value: unknown) => boolean,
  note: (base: string, key: string) => void,
): void {
  if (!isJsonObject(map)) return;
  for (const key of Object.keys(map)) if (!isRight(map[key])) note(base, key);
}

function noteUnknownKeys(object: JsonObject, known: ReadonlySet<string>, base: string, remarks: Remark[]): void {
  // Why: `Object.keys` would make a list of every object of every record.
  for (const key in object) {
    if (known.has(key) || !Object.hasOwn(object, key)) continue;
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
  { place, entry, name, listed }: PlacedEntry,
  check: PreparedCheck,
  { isJudged, isNotDoneJudged }: EntryMarks,
  context: JudgeContext,
  remarks: Remark[],
): void {
  const step = check.steps[listed];
  const pointer = pointToStep(place);
  const stepName = step?.plan.step ?? name;
  if (step === undefined) {
    remarks.push({ code: "record/unknown-step", weight: NOTE, pointer, step: name, params: { step: name } });
  }
  // Why: a step that was not asked, or was left out under an adoption, took nothing of this into account.
  if (!isJudged || step?.evidenceKeys.has("result") !== true) {
    const weigh = () => (step === undefined ? REFER : Math.max(REFER, weighStep(listed, check, context)));
    collectBadNews(entry, pointer, stepName, weigh, isNotDoneJudged, remarks);
  }
  const known = check.entryKeysAt[listed] ?? ENTRY_KEYS;
  for (const key in entry) {
    const use = known.get(key);
    if (use === undefined) noteUnknownEvidence(entry, key, pointer, stepName, step, remarks);
    else if (use !== "judged" && !isReadable(use, entry[key]))
      remarks.push(noteUnreadable(`${pointer}/${key}`, key, stepName));
  }
  const asked = check.placesAt[listed];
  if (asked === undefined || !isJsonObject(entry.seen)) return;
  // Why: nearly no step is covered by an adoption, and then none can lapse.
  const isCovered = (check.adoptionsAt[listed]?.coverings.length ?? 0) > 0;
  const lapsed = isCovered ? listLapsed(listed, check, context) : [];
  for (const { place: found, agrees } of findUnknownPlaces(asked, entry.seen, lapsed)) {
    remarks.push({
      code: "step/unknown-place",
      weight: agrees ? NOTE : REFER,
      pointer: `${pointer}/seen/${escapePointer(found)}`,
      step: stepName,
      params: { place: found },
    });
  }
}

function isReadable(use: "text" | "time", value: unknown): boolean {
  return use === "text" ? isTextOrMissing(value) : isMissing(value) || parseRecordTime(value) !== undefined;
}

/**
 * A key of an entry that is none of its step's: evidence of another kind, or unknown; what says nothing is passed over.
 * Why a key that was probably misspelt weighs `refer`: `Defect` or `reslut` would else be bad news that nobody reads.
 */
function noteUnknownEvidence(
  entry: JsonObject,
  key: string,
  pointer: string,
  name: string,
  step: PreparedStep | undefined,
  remarks: Remark[],
): void {
  if (!Object.hasOwn(entry, key) || isMissing(entry[key])) return;
  const at = { pointer: `${pointer}/${escapePointer(key)}`, step: name };
  const nearest = findMisspelt(key, step);
  if (nearest !== undefined) {
    remarks.push({ ...at, code: "step/misspelt-key", weight: REFER, params: { key, nearest } });
  } else if (step === undefined || ENTRY_KEYS.has(key)) return;
  else if (key === "trace") remarks.push({ ...at, code: "step/trace-not-judged", weight: REFER, params: { key } });
  else if (EVIDENCE_KEYS.has(key)) remarks.push({ ...at, code: "step/unused-evidence", weight: NOTE, params: { key } });
  else remarks.push({ ...at, code: "record/unknown-key", weight: NOTE, params: { key } });
}

/** The key that was probably meant: but for case, blanks and hyphens the same, or one letter away. */
function findMisspelt(key: string, step: PreparedStep | undefined): string | undefined {
  if (key.length < SHORTEST_MISSPELT || ENTRY_KEYS.has(key) || EVIDENCE_KEYS.has(key)) return undefined;
  const nearest = findNearest(key, [...COMMON_KEYS, ...(step?.evidenceKeys ?? [])], 1);
  return nearest === undefined || nearest.length < SHORTEST_MISSPELT ? undefined : nearest;
}

/**
 * `not-done`, a defect, and a result that cannot be understood weigh at least `refer` wherever they stand; on a step that weighs
 * more, what the step weighs. `false` in place of a defect's name cannot be understood either.
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
  if (defect === false && result !== "defect") {
    const params = { recorded: "defect: false" };
    remarks.push({ code: "step/unknown-result", weight: REFER, pointer: `${pointer}/defect`, step, params });
  } else if (!isMissing(defect) || result === "defect") {
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

/** A place that is not asked for, and whether the text there says to the letter what each place says that is. */
interface UnknownPlace {
  readonly place: string;
  readonly agrees: boolean;
}

/** Why by the parent too where an order has lapsed: a place that only this policy asks for is to the parent one too many. */
function findUnknownPlaces(
  asked: ReadonlySet<string>,
  seen: JsonObject,
  lapsed: ReturnType<typeof listLapsed>,
): readonly UnknownPlace[] {
  const unknown = listUnknownPlaces(asked, seen);
  if (lapsed.length === 0) return unknown;
  const parents = lapsed.flatMap(({ adoption }) => {
    const places = listPlaces(adoption.otherwise.plan);
    return places === undefined ? [] : listUnknownPlaces(places, seen);
  });
  return [...unknown, ...parents.filter((one) => !one.agrees && !unknown.some(({ place }) => place === one.place))];
}

function listUnknownPlaces(asked: ReadonlySet<string>, seen: JsonObject): readonly UnknownPlace[] {
  if (hasOnly(seen, asked)) return [];
  const texts = Object.entries(seen)
    .filter(([place, text]) => asked.has(place) && !isMissing(text))
    .map(([, text]) => String(text).trim());
  return Object.entries(seen).flatMap(([place, text]) => {
    if (asked.has(place) || isMissing(text)) return [];
    return [{ place, agrees: typeof text === "string" && texts.every((known) => known === text.trim()) }];
  });
}

function hasOnly(object: JsonObject, known: ReadonlySet<string>): boolean {
  for (const key in object) if (!known.has(key)) return false;
  return true;
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
