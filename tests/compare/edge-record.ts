import { type Picks, pickFrom } from "../generators/picks.js";
import { isMap, listMaps, readAt, replaceAt } from "../laws/evidence-path.js";
import type { Data } from "../laws/generated-step.js";
import { listSteps, makeEdgeEvidence, makeGoodEvidence } from "./edge-evidence.js";
import { tidy } from "./generated-parent.js";
import type { Trial } from "./trial.js";

const CYLINDERS = ["C-1", "C-2"] as const;

/** A record under which most of what the parent asks is well, with an entry of every step that either policy has. */
function makeGoodRecord({ policies }: Trial, picks: Picks): Data {
  const steps = policies.flatMap(listSteps);
  const first = steps.filter(({ step }, index) => steps.findIndex((one) => one.step === step) === index);
  const entries = first.flatMap((step) =>
    (step.each === undefined ? [undefined] : CYLINDERS).map((of) => ({
      step: step.step,
      of,
      ...makeGoodEvidence(step),
    })),
  );
  return tidy({
    tenbar: 1,
    id: "r",
    check: picks.next() % 12 === 0 ? pickFrom(["start-of-shift", "after-use"], picks) : "daily",
    at: "2026-04-12T07:50:00Z",
    by: { id: "W-231", competence: "wearer" },
    local: { shift: "red" },
    subject: {
      kind: "set",
      id: "S-014",
      marking: "B-014",
      removed: "B-013",
      role: "front-line",
      ratedPressure: "300 bar",
      servicedOn: "2025-09-01",
      fitted: { alarm: true },
      cylinders: CYLINDERS.map((id) => ({ id, ratedPressure: "300 bar", requalifiedOn: "2025-05-02" })),
    },
    steps: entries.map((entry, index) => ({ ...entry, at: `2026-04-12T07:${10 + index}:00Z` })),
  });
}

type Edit = (record: Data, trial: Trial, picks: Picks) => Data;

const withSteps = (record: Data, change: (steps: readonly Data[]) => readonly unknown[]): Data => ({
  ...record,
  steps: change(listMaps(record.steps)),
});

/** Most often a step that differs. */
function pickStep({ steps, allSteps }: Trial, picks: Picks): Data | undefined {
  return pickFrom(picks.next() % 3 === 0 ? allSteps : steps, picks);
}

/** Puts evidence at a limit into one entry of a step, or makes a second entry of it. */
const meetEdge: Edit = (record, trial, picks) => {
  const step = pickStep(trial, picks) ?? {};
  const evidence = makeEdgeEvidence(step, pickFrom(trial.policies, picks) ?? {}, picks);
  return withSteps(record, (steps) => {
    const target = pickFrom(
      steps.filter((entry) => entry.step === step.step),
      picks,
    );
    if (target === undefined || picks.next() % 12 === 0) return [...steps, { ...target, step: step.step, ...evidence }];
    return steps.map((entry) => (entry === target ? { ...entry, ...evidence } : entry));
  });
};

const leaveOut: Edit = (record, trial, picks) => {
  const step = pickStep(trial, picks);
  return withSteps(record, (steps) => {
    const target = pickFrom(
      steps.filter((entry) => entry.step === step?.step),
      picks,
    );
    return steps.filter((entry) => entry !== target);
  });
};

const KEYS: readonly (readonly [string, unknown])[] = [
  ["result", "defect"],
  ["result", "not-done"],
  ["result", "satisfactory"],
  ["defect", "torn"],
  ["defect", "soiled"],
  ["of", undefined],
  ["of", "C-9"],
  ["of", "C-1"],
  ["instrument", "dial"],
  ["instrument", "digital"],
  ["instrument", "stranger"],
  ["at", undefined],
  ["at", "2026-04-12T07:10:00"],
  ["at", "2026-04-12T07:00:00Z"],
  ["at", "2026-04-12T07:49:00Z"],
];

const setKey: Edit = (record, trial, picks) => {
  const step = pickStep(trial, picks);
  const [key, value] = pickFrom(KEYS, picks) ?? ["note", ""];
  return withSteps(record, (steps) =>
    steps.map((entry) => (entry.step === step?.step ? { ...entry, [key]: value } : entry)),
  );
};

const turnSteps: Edit = (record, _trial, picks) =>
  withSteps(record, (steps) => {
    const cut = picks.next() % Math.max(1, steps.length);
    return [...steps.slice(cut), ...steps.slice(0, cut)];
  });

const renameStep: Edit = (record, trial, picks) => {
  const step = pickStep(trial, picks);
  const name = pickFrom(["old-name", "torch", "stranger"], picks);
  return withSteps(record, (steps) =>
    steps.map((entry) => (entry.step === step?.step ? { ...entry, step: name } : entry)),
  );
};

const isThere = (record: Data, path: Trial["beside"][number]["path"]) => {
  const owner = path.reduce<unknown>(
    (here, part) => (isMap(here) || Array.isArray(here) ? readAt(here, [part]) : undefined),
    record,
  );
  return isMap(owner);
};

const setBeside: Edit = (record, trial, picks) => {
  const one = pickFrom(trial.beside, picks);
  if (one === undefined || !isThere(record, one.path.slice(0, -1))) return record;
  return tidy(replaceAt(record, one.path, pickFrom(one.values, picks)));
};

const STEP_EDITS = [meetEdge, meetEdge, meetEdge, meetEdge, meetEdge, setKey, leaveOut, turnSteps, renameStep] as const;

/** A good record with none to three changes, most of them where the policies differ. */
export function makeEdgeRecord(trial: Trial, picks: Picks): Data {
  let record = makeGoodRecord(trial, picks);
  for (let edits = pickFrom([0, 1, 1, 1, 2, 2, 2, 3], picks) ?? 0; edits > 0; edits -= 1) {
    const isBeside = picks.next() % 6 < (trial.stepsDiffer ? 2 : 5);
    const edit = isBeside ? setBeside : pickFrom(STEP_EDITS, picks);
    record = edit?.(record, trial, picks) ?? record;
  }
  return tidy(record);
}
