import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/index.js";
import { listMaps, replaceAt } from "./evidence-path.js";
import { generatedCase } from "./generated-case.js";
import type { Data } from "./generated-step.js";
import { mutate, mutations } from "./mutated-record.js";
import { countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

const VERDICTS = ["meets", "refer", "withdraw"] as const;
const ASIDE = new Set(["step", "at", "note", "of"]);

const other = fc.constantFrom<unknown>(
  "290 bar",
  "70 bar",
  "20 s",
  "2026-04-02",
  "not-done",
  "defect",
  null,
  "",
  5,
  {},
);

/** A second entry for the same thing that differs from it in one field of its evidence. */
function repeat(entry: Data, pick: number, value: unknown): Data | undefined {
  const keys = Object.keys(entry).filter((key) => !ASIDE.has(key));
  const key = keys[pick % Math.max(1, keys.length)];
  if (key === undefined || JSON.stringify(entry[key]) === JSON.stringify(value)) return undefined;
  return { ...entry, [key]: value };
}

describe("a step that is recorded once more, otherwise", () => {
  it("is never better than undecided", () => {
    let tried = 0;
    fc.assert(
      fc.property(generatedCase, several(fc.tuple(fc.nat(), other)), ({ policy, record }, extras) => {
        const entries = listMaps(record.steps);
        for (const [pick, value] of extras) {
          const entry = entries[pick % entries.length] ?? {};
          const extra = repeat(entry, pick, value);
          if (extra === undefined) continue;
          countCase();
          tried += 1;
          const { results } = evaluate(policy, replaceAt(record, ["steps"], [...entries, extra]));
          // Members of a list are told apart by `part`; what is asked across them has none, and is judged of them all.
          const asked = results.filter(({ step, part }) => step === entry.step && (part ?? entry.of) === entry.of);
          expect(asked.length).toBeGreaterThan(0);
          for (const { outcome } of asked) expect(["undecided", "outside"]).toContain(outcome);
        }
      }),
      { numRuns: countRuns(1000, RECORDS_EACH * 0.95) },
    );
    expect(tried).toBeGreaterThan(countRuns(1000) / 2);
  });

  it("never improves a verdict", () => {
    let tried = 0;
    fc.assert(
      fc.property(generatedCase, several(fc.tuple(mutations, fc.nat(), other)), ({ policy, record }, extras) => {
        const rank = (judged: unknown) => VERDICTS.indexOf(evaluate(policy, judged).verdict ?? "meets");
        for (const [changes, pick, value] of extras) {
          const changed = mutate(record, changes);
          const entries = listMaps(Object(changed).steps);
          const extra = repeat(entries[pick % Math.max(1, entries.length)] ?? {}, pick, value);
          if (extra === undefined) continue;
          countCase();
          tried += 1;
          expect(rank(replaceAt(changed, ["steps"], [...entries, extra]))).toBeGreaterThanOrEqual(rank(changed));
        }
      }),
      { numRuns: countRuns(1000, RECORDS_EACH * 0.95) },
    );
    expect(tried).toBeGreaterThan(countRuns(1000) / 2);
  });
});
