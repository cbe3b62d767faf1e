import fc from "fast-check";
import { listMaps, replaceAt, walkLeaves } from "./evidence-path.js";
import type { Data } from "./generated-step.js";

type Mutation = (record: unknown) => unknown;

const NAMES = ["__proto__", "constructor", "toString", "hasOwnProperty"] as const;

const value = fc.oneof(
  fc.constantFrom<unknown>(null, "", "  ", [], {}, 290, true, false, "290", "290 bar", "4200 psi", "900 bar", "5 dB"),
  fc.constantFrom<unknown>(
    "not-done",
    "defect",
    "fine",
    "satisfactory",
    "014",
    "14",
    "2026-05-01",
    "2024-01-01",
    "\uD800",
  ),
  fc.constantFrom<unknown>({ atMost: "300 bar" }, { between: ["10 bar", "300 bar"] }, "C-1", "C-9", "scrapped"),
  fc.jsonValue({ maxDepth: 2 }),
);

const withSteps = (record: unknown, change: (steps: readonly Data[]) => readonly unknown[]) =>
  replaceAt(record, ["steps"], change(listMaps(Object(record).steps)));

/** Puts a value in place of one leaf of the steps, the subject or the person; never of the envelope. */
const spoilLeaf = fc.tuple(fc.nat(), value).map(
  ([pick, spoiler]): Mutation =>
    (record) => {
      const paths = [...walkLeaves(record)].filter(
        ([first, second, third]) =>
          first === "by" ||
          (first === "steps" && third !== "step") ||
          (first === "subject" && second !== "kind" && second !== "id"),
      );
      const path = paths[pick % Math.max(1, paths.length)];
      return path === undefined ? record : replaceAt(record, path, spoiler);
    },
);

const swapSteps: fc.Arbitrary<Mutation> = fc.nat().map(
  (pick) => (record) =>
    withSteps(record, (steps) => {
      const cut = pick % Math.max(1, steps.length);
      return [...steps.slice(cut), ...steps.slice(0, cut)];
    }),
);

const repeatStep: fc.Arbitrary<Mutation> = fc.tuple(fc.nat(), value).map(
  ([pick, spoiler]) =>
    (record) =>
      withSteps(record, (steps) => {
        const entry = steps[pick % Math.max(1, steps.length)];
        const keys = Object.keys(entry ?? {}).filter((key) => key !== "step");
        return [
          ...steps,
          { ...entry, step: entry?.step ?? "charge", [keys[pick % Math.max(1, keys.length)] ?? "note"]: spoiler },
        ];
      }),
);

const leaveOut: fc.Arbitrary<Mutation> = fc
  .nat()
  .map(
    (pick) => (record) =>
      withSteps(record, (steps) => steps.filter((_step, index) => index !== pick % Math.max(1, steps.length))),
  );

/** Bad news, stray members, other instruments and keys named like those of every object. */
const addKey: fc.Arbitrary<Mutation> = fc
  .tuple(fc.nat(), fc.constantFrom("result", "defect", "of", "instrument", "occurred", ...NAMES), value)
  .map(
    ([pick, key, spoiler]) =>
      (record) =>
        withSteps(record, (steps) =>
          steps.map((step, index) =>
            index === pick % steps.length ? Object.fromEntries([...Object.entries(step), [key, spoiler]]) : step,
          ),
        ),
  );

const addStranger: fc.Arbitrary<Mutation> = fc
  .tuple(fc.constantFrom("stranger", ...NAMES), fc.constantFrom("defect", "not-done", "satisfactory", null))
  .map(
    ([step, result]) =>
      (record) =>
        withSteps(record, (steps) => [...steps, { step, result }]),
  );

/** None to four changes of a good record. */
export const mutations = fc.array(fc.oneof(spoilLeaf, swapSteps, repeatStep, leaveOut, addKey, addStranger), {
  maxLength: 4,
});

export function mutate(record: unknown, changes: readonly Mutation[]): unknown {
  return changes.reduce<unknown>((changed, change) => change(changed), record);
}
