import { type Picks, pickFrom } from "../generators/picks.js";
import { isMap, listMaps, type Path, readAt, replaceAt } from "../laws/evidence-path.js";
import type { Data } from "../laws/generated-step.js";
import { listSteps } from "./edge-evidence.js";

/** One thing that a child changes of its parent; undefined where the policy has nothing of the kind. */
export type Change = (policy: Data, picks: Picks) => Data | undefined;

const STEPS: Path = ["checks", "daily", "steps"];

export const CONSEQUENCES = ["note", "advise", "refer", "withdraw", undefined] as const;

/** Another value in place of one that a policy has, or a key more. */
export function change(policy: Data, path: Path, value: unknown): Data {
  return Object(replaceAt(policy, path, value));
}

/** Puts one of several values at a path whose owner is there. */
export function setAt(path: Path, values: readonly unknown[]): Change {
  return (policy, picks) => {
    const owner = readAt(policy, path.slice(0, -1));
    return isMap(owner) || Array.isArray(owner) ? change(policy, path, pickFrom(values, picks)) : undefined;
  };
}

/** Changes one of the steps for which it gives another; `edit` gives undefined for a step that it has nothing to do with. */
export function changeStep(edit: (step: Data, picks: Picks, policy: Data) => Data | undefined): Change {
  return (policy, picks) => {
    const steps = listSteps(policy);
    const start = picks.next();
    for (let turn = 0; turn < steps.length; turn += 1) {
      const index = (start + turn) % steps.length;
      const edited = edit(steps[index] ?? {}, picks, policy);
      if (edited !== undefined) return change(policy, [...STEPS, index], edited);
    }
    return undefined;
  };
}

/** Sets a key of a step of some kind. */
export function setOfStep(kind: string | undefined, key: string, values: readonly unknown[]): Change {
  return changeStep((step, picks) =>
    kind === undefined || step.kind === kind ? { ...step, [key]: pickFrom(values, picks) } : undefined,
  );
}

/** Replaces the list of steps. */
export function changeSteps(edit: (steps: readonly Data[], picks: Picks) => readonly Data[] | undefined): Change {
  return (policy, picks) => {
    const steps = edit(listSteps(policy), picks);
    return steps === undefined || steps.length === 0 ? undefined : change(policy, STEPS, steps);
  };
}

/** Every map in a document, with the path to it. */
export function* walkMaps(value: unknown, path: Path = []): Generator<readonly [Path, Data]> {
  if (typeof value !== "object" || value === null) return;
  if (isMap(value)) yield [path, value];
  for (const [key, member] of Object.entries(value)) {
    yield* walkMaps(member, [...path, Array.isArray(value) ? Number(key) : key]);
  }
}

/** The first rule of a policy that has any. */
export function changeRule(edit: (rule: Data, picks: Picks) => Data): Change {
  return (policy, picks) => {
    const [rule] = listMaps(policy.rules);
    return rule === undefined ? undefined : change(policy, ["rules"], [edit(rule, picks)]);
  };
}
