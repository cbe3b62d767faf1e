import fc from "fast-check";
import { createPicks, type Picks, pickFrom } from "../generators/picks.js";
import type { Data } from "../laws/generated-step.js";
import type { Change } from "./change.js";
import { makeEdgeRecord } from "./edge-record.js";
import { generatedParent, tidy } from "./generated-parent.js";
import { LIMIT_CHANGES } from "./limit-changes.js";
import { POLICY_CHANGES } from "./policy-changes.js";
import { STEP_CHANGES } from "./step-changes.js";
import { makeTrial } from "./trial.js";

const CHANGES: readonly (readonly [string, Change])[] = Object.entries({
  ...LIMIT_CHANGES,
  ...STEP_CHANGES,
  ...POLICY_CHANGES,
});

/** Drawn more often: those that come in many forms, of which each needs records of its own. */
const MANY_FORMS = [
  "a limit is moved",
  "a bound includes its limit or not",
  "a step is added",
  "the places of a match",
];
const DRAWN = [...CHANGES, ...[0, 1, 2].flatMap(() => CHANGES.filter(([name]) => MANY_FORMS.includes(name)))];

export const CHANGE_NAMES: readonly string[] = CHANGES.map(([name]) => name);

/** A policy that differs from its parent in one to three things, their names, and records at the limits of both. */
export interface GeneratedChild {
  readonly child: Data;
  readonly changes: readonly string[];
  readonly records: readonly Data[];
}

export interface GeneratedFamily {
  readonly parent: Data;
  readonly children: readonly GeneratedChild[];
}

/** Children of one parent, which is then compiled once for all of them. */
export const CHILDREN = 4;
/** Records of each child. */
export const RECORDS = 10;
const MOST_TURNS = 100;

// Why: the small numbers that are drawn more often by themselves would choose the same changes over and over.
const choices = fc.noBias(fc.nat()).map(createPicks);

/** Makes a change that is drawn, and draws again where the policy has nothing for it. */
function makeChange(policy: Data, picks: Picks): readonly [string, Data] | undefined {
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const [name, change] = pickFrom(DRAWN, picks) ?? [];
    const changed = change?.(policy, picks);
    if (name !== undefined && changed !== undefined && JSON.stringify(tidy(changed)) !== JSON.stringify(policy)) {
      return [name, tidy(changed)];
    }
  }
  return undefined;
}

const drawn = fc.record({
  count: fc.constantFrom(1, 1, 1, 1, 2, 3),
  picks: choices,
  records: fc.array(choices, { minLength: RECORDS, maxLength: RECORDS }),
});

function makeChild(parent: Data, count: number, picks: Picks, records: readonly Picks[]): GeneratedChild {
  let child = parent;
  const changes: string[] = [];
  while (changes.length < count) {
    const [name, changed] = makeChange(child, picks) ?? [];
    if (name === undefined || changed === undefined) break;
    changes.push(name);
    child = changed;
  }
  const trial = makeTrial(parent, child);
  return { child, changes, records: records.map((own) => makeEdgeRecord(trial, own)) };
}

export const generatedFamily: fc.Arbitrary<GeneratedFamily> = fc
  .record({ parent: generatedParent, children: fc.array(drawn, { minLength: CHILDREN, maxLength: CHILDREN }) })
  .map(({ parent, children }) => ({
    parent,
    children: children.map(({ count, picks, records }) => makeChild(parent, count, picks, records)),
  }));
