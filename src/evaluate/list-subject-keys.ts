import type { CheckPlan, IntervalPlan, Plan } from "../model/index.js";
import type { PreparedFact } from "./prepared-fact.js";

/** Keys that every subject may have. */
const SUBJECT_KEYS: readonly string[] = [
  "kind",
  "id",
  "marking",
  "removed",
  "class",
  "role",
  "ratedPressure",
  "waterCapacity",
  "fitted",
  "instruments",
  "cylinders",
];

/** Every key of a subject that is known: of all, and those named in steps, in facts, and as dates from which something falls due. */
export function listSubjectKeys(
  check: CheckPlan,
  plan: Plan,
  facts: ReadonlyMap<string, PreparedFact>,
): ReadonlySet<string> {
  const inSteps = check.steps.flatMap((step) => {
    const named = [step.each, ...(step.kind === "match" ? [step.equals, step.differsFrom] : [])];
    return named.flatMap((name) => (name?.startsWith("subject.") === true ? [name.slice("subject.".length)] : []));
  });
  const inFacts = [...facts.values()].flatMap(({ at, each }) => {
    const [first, second] = each ?? at;
    return first === "subject" && second !== undefined ? [second] : [];
  });
  const dates = plan.checks.flatMap(({ intervals }) => intervals.flatMap(listIntervalKeys));
  return new Set([...SUBJECT_KEYS, ...inSteps, ...inFacts, ...dates]);
}

function listIntervalKeys({ date, of, adoptions }: IntervalPlan): readonly string[] {
  return [{ date, of }, ...adoptions.flatMap(({ otherwise }) => otherwise ?? [])].flatMap((one) => [
    one.date,
    `${one.of}s`,
  ]);
}
