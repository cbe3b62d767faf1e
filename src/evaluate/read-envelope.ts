import { parseRecordTime, type RecordTime } from "../quantities/index.js";
import { isJsonObject, type JsonObject } from "../steps/index.js";

/** Why a record cannot be judged at all. */
export interface Problem {
  readonly pointer: string;
  readonly message: string;
}

/** What every record must have; all else is evidence. */
export interface Envelope {
  readonly record: JsonObject;
  readonly id: string;
  readonly check: string;
  readonly time: RecordTime;
  readonly subject: JsonObject;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly steps: readonly StepEntry[];
}

export interface StepEntry {
  readonly step: string;
  readonly entry: JsonObject;
}

const MOST_STEPS = 10_000;
const MOST_DEPTH = 64;

/** Reads the envelope, or says everything that is wrong with it. */
export function readEnvelope(value: unknown): { envelope: Envelope } | { problems: readonly Problem[] } {
  const problems: Problem[] = [];
  if (!isJsonObject(value)) return { problems: [{ pointer: "", message: "a record is a JSON object" }] };
  if (isDeeperThan(value, MOST_DEPTH)) {
    return { problems: [{ pointer: "", message: `a record nests at most ${MOST_DEPTH} levels deep` }] };
  }
  if (value.tenbar !== 1) problems.push({ pointer: "/tenbar", message: "`tenbar` must be the number 1" });
  const id = readText(value, "id", "", problems);
  const check = readText(value, "check", "", problems);
  const time = parseRecordTime(value.at);
  if (time === undefined) {
    const message = "`at` must be an instant with offset, a local time, or a date, such as `2026-04-12T07:04:00+01:00`";
    problems.push({ pointer: "/at", message });
  }
  const subject = isJsonObject(value.subject) ? value.subject : undefined;
  if (subject === undefined) problems.push({ pointer: "/subject", message: "`subject` must be an object" });
  const subjectKind = subject && readText(subject, "kind", "/subject", problems);
  const subjectId = subject && readText(subject, "id", "/subject", problems);
  const steps = readSteps(value.steps, problems);
  if (
    id === undefined ||
    check === undefined ||
    time === undefined ||
    subject === undefined ||
    subjectKind === undefined ||
    subjectId === undefined ||
    problems.length > 0
  ) {
    return { problems };
  }
  return { envelope: { record: value, id, check, time, subject, subjectKind, subjectId, steps } };
}

function readText(object: JsonObject, key: string, base: string, problems: Problem[]): string | undefined {
  const text = object[key];
  if (typeof text === "string" && text.trim() !== "") return text;
  problems.push({ pointer: `${base}/${key}`, message: `\`${key}\` must be a text that is not blank` });
  return undefined;
}

function readSteps(value: unknown, problems: Problem[]): readonly StepEntry[] {
  if (!Array.isArray(value)) {
    problems.push({ pointer: "/steps", message: "`steps` must be a list" });
    return [];
  }
  if (value.length > MOST_STEPS) {
    problems.push({
      pointer: "/steps",
      message: `a record has at most ${MOST_STEPS} steps; this one has ${value.length}`,
    });
    return [];
  }
  const steps: StepEntry[] = [];
  value.forEach((entry: unknown, index) => {
    const step = isJsonObject(entry) ? entry.step : undefined;
    if (isJsonObject(entry) && typeof step === "string" && step.trim() !== "") steps.push({ step, entry });
    else problems.push({ pointer: `/steps/${index}`, message: "a step must be an object with a text `step`" });
  });
  return steps;
}

function isDeeperThan(value: unknown, most: number): boolean {
  if (typeof value !== "object" || value === null) return false;
  if (most === 0) return true;
  for (const member of Array.isArray(value) ? value : Object.values(value)) {
    if (isDeeperThan(member, most - 1)) return true;
  }
  return false;
}
