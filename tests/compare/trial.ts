import { isMap, readAt } from "../laws/evidence-path.js";
import type { Data } from "../laws/generated-step.js";
import { listSteps } from "./edge-evidence.js";

/** What a record is to try. */
export interface Trial {
  readonly policies: readonly Data[];
  /** The steps in which the policies differ, as either states them; all where they differ in none. */
  readonly steps: readonly Data[];
  readonly stepsDiffer: boolean;
  /** All steps of both. */
  readonly allSteps: readonly Data[];
  /** Values of the record beside its steps: those that what differs speaks of; all where there are none. */
  readonly beside: readonly Beside[];
}

interface Beside {
  /** What a policy says where it speaks of the value. */
  readonly word: string;
  readonly path: readonly (string | number)[];
  readonly values: readonly unknown[];
}

const beside = (word: string, path: Beside["path"], ...values: readonly unknown[]): Beside => ({ word, path, values });

/** Values at their edges, the last one missing. */
const BESIDE: readonly Beside[] = [
  beside("effective", ["at"], "2026-04-13T00:00:00Z", "2026-03-31T23:59:00Z", "2026-05-02T07:00:00Z"),
  beside("competence", ["by", "competence"], "technician", "visitor", undefined),
  beside("shift", ["local", "shift"], "white", undefined),
  beside("attestable", ["attested"], { steps: ["harness", "torch"], wording: "all sound", by: "W-231" }),
  beside("old-set", ["subject", "kind"], "old-set", "ladder"),
  beside("role", ["subject", "role"], "spare", "training", "scrapped", undefined),
  beside("marking", ["subject", "marking"], "B014", undefined),
  beside("removed", ["subject", "removed"], "B-014", "b-014", undefined),
  beside("when-fitted", ["subject", "fitted", "alarm"], false, undefined),
  beside("gauge", ["subject", "instruments"], { "set-gauge": "dial" }, { "set-gauge": "digital" }),
  beside("dial", ["subject", "instruments"], { dial: "stranger" }),
  beside("rated-pressure", ["subject", "ratedPressure"], "200 bar", "many", undefined),
  beside("each", ["subject", "cylinders"], [], [{ id: "C-1", ratedPressure: "300 bar" }], undefined),
  beside("rated-pressure", ["subject", "cylinders", 0, "ratedPressure"], "200 bar", "301 bar", undefined),
  ...["intervals", "serviced"].map((word) =>
    beside(
      word,
      ["subject", "servicedOn"],
      ...["2025-04-12", "2025-04-11", "2025-04-13", "2025-04-17", "2025-04-18", "2026-05", undefined],
    ),
  ),
  ...["intervals", "requalified"].map((word) =>
    beside(
      word,
      ["subject", "cylinders", 0, "requalifiedOn"],
      ...["2021-04-12", "2021-04-11", "2024-04-12", "2024-04-11", "2025-04-11", "2026-05", undefined],
    ),
  ),
];

/** Finds where two policies differ, so that most of what is tried is tried there. */
export function makeTrial(parent: Data, child: Data): Trial {
  const write = (policy: Data, name: unknown) => {
    const step = listSteps(policy).find((one) => one.step === name);
    const use = step?.tolerance;
    const tolerance = typeof use === "string" ? readAt(policy, ["tolerances", use]) : undefined;
    return JSON.stringify([step, tolerance, step?.instrument === undefined ? undefined : policy.instruments]);
  };
  const all = [...listSteps(parent), ...listSteps(child)];
  const differing = all.filter(({ step }) => write(parent, step) !== write(child, step));
  const stepsDiffer = differing.length > 0;
  const words = writeDifference(parent, child);
  const spoken = BESIDE.filter(({ word }) => words.includes(word));
  return {
    policies: [parent, child],
    steps: stepsDiffer ? differing : all,
    stepsDiffer,
    allSteps: all,
    beside: spoken.length > 0 ? spoken : BESIDE,
  };
}

/** Every part in which two documents differ, as text; of lists of equal length, the members that do. */
function writeDifference(one: unknown, other: unknown): string {
  if (JSON.stringify(one) === JSON.stringify(other)) return "";
  if (isMap(one) && isMap(other)) {
    const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
    return keys
      .map((key) => [key, writeDifference(one[key], other[key])] as const)
      .map(([key, words]) => (words === "" ? "" : `${key} ${words}`))
      .join(" ");
  }
  if (Array.isArray(one) && Array.isArray(other) && one.length === other.length)
    return one.map((member: unknown, index) => writeDifference(member, other[index])).join(" ");
  return JSON.stringify([one, other]);
}
