import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Assessment, compilePolicy, evaluate } from "../../src/index.js";

const POLICY = "policies/common-practice/open-circuit.yaml";
const { policy } = compilePolicy(readFileSync(POLICY, "utf8"), { file: POLICY });
if (policy === undefined) throw new Error("the shipped policy does not compile");

/** Every sample record that meets the policy without a remark. */
const clean = readdirSync("examples/records")
  .filter((file) => file.endsWith(".json"))
  .map((file) => JSON.parse(readFileSync(`examples/records/${file}`, "utf8")))
  .filter((record) => evaluate(policy, record).findings.length === 0 && evaluate(policy, record).judged);

/** Keys that are no evidence of any requirement: notes, names of people, what the log book said, the times under a listed order. */
const ASIDE = new Set([
  "note",
  "by.id",
  "decision",
  "supersedes",
  "station",
  "local",
  "steps.at",
  "subject.role",
  // This policy asks for no fact of a cylinder but its rated pressure.
  "cylinders.waterCapacity",
  "cylinders.manufacturedOn",
  "cylinders.requalifiedOn",
]);
/** Keys without which a record cannot be judged at all. */
const ENVELOPE = ["tenbar", "id", "check", "at", "subject.kind", "subject.id"];

type Path = readonly (string | number)[];

function* walkLeaves(value: unknown, path: Path = []): Generator<Path> {
  yield path;
  if (typeof value !== "object" || value === null) return;
  for (const [key, member] of Object.entries(value)) {
    yield* walkLeaves(member, [...path, Array.isArray(value) ? Number(key) : key]);
  }
}

function nameKey(path: Path): string {
  return path.filter((part) => typeof part === "string").join(".");
}

function readAt(record: unknown, path: Path): unknown {
  return path.reduce<unknown>((here, part) => Object(here)[part], record);
}

function replaceAt(record: unknown, path: Path, value: unknown): unknown {
  const copy = structuredClone(record);
  let here = copy;
  for (const part of path.slice(0, -1)) here = Object(here)[part];
  const last = path[path.length - 1];
  if (last === undefined) return value;
  if (value === undefined) delete Object(here)[last];
  else Object(here)[last] = value;
  return copy;
}

/** True for what this record's check does not need: a fitting that it never asks about, `of` beside a single cylinder. */
function isUnneeded(record: { check: string; subject: { cylinders?: readonly unknown[] } }, path: Path): boolean {
  const check = policy?.plan.checks.find((one) => one.check === record.check);
  const steps = check?.steps ?? [];
  if (path[1] === "marking") return !steps.some((step) => step.kind === "match" && step.equals === "subject.marking");
  if (path[1] === "fitted" && path.length === 2) return steps.every(({ whenFitted }) => whenFitted === undefined);
  if (path[1] === "fitted" && path.length === 3) return steps.every(({ whenFitted }) => whenFitted !== path[2]);
  return path[3] === undefined && path[2] === "of" && record.subject.cylinders?.length === 1;
}

/** The weight that failing it would have, of the step that a path lies in; steps that only advise may be left out. */
function isMild(record: { steps: readonly { step: string }[] }, path: Path, { results }: Assessment): boolean {
  if (path[0] !== "steps" || typeof path[1] !== "number") return false;
  const step = record.steps[path[1]]?.step;
  const asked = results.filter((result) => result.step === step);
  return asked.every(({ consequence }) => consequence === "note" || consequence === "advise");
}

const SPOILERS: readonly unknown[] = [undefined, null, "", "   ", [], {}, 290, "290", true, "many bar", "\uD800"];

describe("a record whose evidence is emptied or spoiled", () => {
  it("has clean samples to begin with", () => {
    expect(clean.length).toBeGreaterThanOrEqual(5);
  });

  it.each(clean.map((record) => [record.id, record]))("never meets the policy: %s", (_id, record) => {
    const before = evaluate(policy, record);
    const escaped: string[] = [];
    let tried = 0;
    for (const path of walkLeaves(record)) {
      const key = nameKey(path);
      if (key === "" || isMild(record, path, before) || isUnneeded(record, path)) continue;
      if ([...ASIDE].some((aside) => key === aside || key.endsWith(`.${aside}`) || key.startsWith(`${aside}.`)))
        continue;
      for (const spoiler of SPOILERS) {
        if (spoiler === undefined && typeof path[path.length - 1] === "number") continue;
        if (JSON.stringify(readAt(record, path)) === JSON.stringify(spoiler)) continue;
        // Any text that is not blank names a thing.
        if (/(^|\.)id$/.test(key) && typeof spoiler === "string" && spoiler.trim() !== "") continue;
        // A fitting that is there after all, with its evidence recorded, is judged like any other.
        if (path[1] === "fitted" && spoiler === true) continue;
        tried += 1;
        const after = evaluate(policy, replaceAt(record, path, spoiler));
        if (after.verdict === "meets") escaped.push(`${path.join("/")} = ${JSON.stringify(spoiler)}`);
      }
    }
    expect(tried).toBeGreaterThan(200);
    expect(escaped).toEqual([]);
  });

  it.each(ENVELOPE)("cannot be judged without %s", (key) => {
    const [record] = clean;
    const assessment = evaluate(policy, replaceAt(record, key.split("."), undefined));
    expect(assessment).toMatchObject({ judged: false, verdict: "refer", results: [] });
    expect(assessment.problems).toHaveLength(1);
  });
});
