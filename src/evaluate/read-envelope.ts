import type { CheckPlan } from "../model/index.js";
import { parseRecordTime, type RecordTime } from "../quantities/index.js";
import { isJsonObject, type JsonObject, trimText } from "../steps/index.js";
import type { ProblemCode, ProblemParams } from "../words/index.js";

/** Why a record cannot be judged at all. */
export interface Problem extends ProblemParams {
  readonly pointer: string;
  readonly code: ProblemCode;
}

const NO_PARAMS: ProblemParams = { key: "", count: 0, most: 0 };

/** What every record must have; all else is evidence. */
export interface Envelope {
  readonly record: JsonObject;
  readonly id: string;
  readonly check: string;
  readonly time: RecordTime;
  readonly subject: JsonObject;
  readonly subjectKind: string;
  /** The name under which the record states the kind of its subject, where the check has another for it now. */
  readonly formerKind: string | undefined;
  readonly subjectId: string;
  readonly steps: readonly StepEntry[];
}

export interface StepEntry {
  /** The name of the step without blanks around it. */
  readonly step: string;
  readonly entry: JsonObject;
}

const MOST_STEPS = 10_000;
const MOST_DEPTH = 64;

/** Reads the envelope, or says everything that is wrong with it. */
export function readEnvelope(value: unknown): { envelope: Envelope } | { problems: readonly Problem[] } {
  const problems: Problem[] = [];
  if (!isJsonObject(value)) return { problems: [{ ...NO_PARAMS, pointer: "", code: "no-object" }] };
  if (isDeeperThan(value, MOST_DEPTH)) {
    return { problems: [{ ...NO_PARAMS, pointer: "", code: "too-deep", most: MOST_DEPTH }] };
  }
  if (value.tenbar !== 1) problems.push({ ...NO_PARAMS, pointer: "/tenbar", code: "not-this-format" });
  const id = readText(value, "id", "", problems);
  const check = readText(value, "check", "", problems);
  const time = parseRecordTime(value.at);
  if (time === undefined) problems.push({ ...NO_PARAMS, pointer: "/at", code: "no-time" });
  const subject = isJsonObject(value.subject) ? value.subject : undefined;
  if (subject === undefined) problems.push({ ...NO_PARAMS, pointer: "/subject", code: "no-subject" });
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
  return {
    envelope: { record: value, id, check, time, subject, subjectKind, formerKind: undefined, subjectId, steps },
  };
}

/**
 * The envelope with the present name of its subject's kind in place of a former one: as its check says, else as any check does.
 * Why for all that reads it: what is asked of the present kind alone would else pass over every old record.
 */
export function renameKind(
  envelope: Envelope,
  kind: CheckPlan["subject"],
  presentKinds: ReadonlyMap<string, string>,
): Envelope {
  const formerKind = envelope.subjectKind.trim();
  const known = kind?.formerly.includes(formerKind) === true ? kind.kind : undefined;
  const present = kind === undefined ? presentKinds.get(formerKind) : known;
  if (present === undefined || present === formerKind) return envelope;
  const subject = { ...envelope.subject, kind: present };
  return { ...envelope, record: { ...envelope.record, subject }, subject, subjectKind: present, formerKind };
}

function readText(object: JsonObject, key: string, base: string, problems: Problem[]): string | undefined {
  const text = object[key];
  if (typeof text === "string" && text.trim() !== "") return text;
  problems.push({ ...NO_PARAMS, pointer: `${base}/${key}`, code: "blank-text", key });
  return undefined;
}

function readSteps(value: unknown, problems: Problem[]): readonly StepEntry[] {
  if (!Array.isArray(value)) {
    problems.push({ ...NO_PARAMS, pointer: "/steps", code: "no-steps" });
    return [];
  }
  if (value.length > MOST_STEPS) {
    const params = { key: "", count: value.length, most: MOST_STEPS };
    problems.push({ ...params, pointer: "/steps", code: "too-many-steps" });
    return [];
  }
  const steps: StepEntry[] = [];
  for (let index = 0; index < value.length; index += 1) {
    const entry: unknown = value[index];
    const step = isJsonObject(entry) && typeof entry.step === "string" ? trimText(entry.step) : "";
    if (isJsonObject(entry) && step !== "") steps.push({ step, entry });
    else problems.push({ ...NO_PARAMS, pointer: `/steps/${index}`, code: "no-step" });
  }
  return steps;
}

function isDeeperThan(value: object, most: number): boolean {
  if (most === 0) return true;
  if (Array.isArray(value)) {
    for (const member of value) if (isObject(member) && isDeeperThan(member, most - 1)) return true;
    return false;
  }
  if (!isJsonObject(value)) return false;
  // Why: `Object.values` would make a list of every object of every record.
  for (const key in value) {
    const member = value[key];
    if (isObject(member) && isDeeperThan(member, most - 1)) return true;
  }
  return false;
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
