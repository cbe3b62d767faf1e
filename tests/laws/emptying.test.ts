import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/index.js";
import { isMap, type Path, readAt, replaceAt } from "./evidence-path.js";
import { generatedCase } from "./generated-case.js";
import { listNeeded } from "./needed-evidence.js";
import { countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

/** What may stand in place of evidence: nothing, another type, no unit, an unknown one, one of another dimension. */
const SPOILERS = [
  undefined,
  null,
  "",
  "   ",
  [],
  {},
  290,
  true,
  "290",
  "many bar",
  "5 parsec",
  "5 dB",
  "\uD800",
] as const;
type Spoiler = (typeof SPOILERS)[number];

const spoiler: fc.Arbitrary<Spoiler> = fc.constantFrom(...SPOILERS);

/** Slots of one record that are lost in turn, and how often one is without its unit, at the least. */
const [SLOTS_LOST, UNITS_LOST] = [14, 7];

const isTheSame = (record: unknown, path: Path, value: Spoiler) =>
  JSON.stringify(readAt(record, path)) === JSON.stringify(value);

/** `290 bar` without its unit; nothing where there is no unit to take away. */
function withoutUnit(value: unknown): string | undefined {
  return typeof value === "string" ? /^(-?[0-9.]+) [^ ]+$/.exec(value)?.[1] : undefined;
}

describe("evidence that is emptied or spoiled", () => {
  it("starts from records that meet", () => {
    fc.assert(
      fc.property(generatedCase, ({ policy, record }) => {
        expect(evaluate(policy, record).verdict).toBe("meets");
      }),
      { numRuns: countRuns(200) },
    );
  });

  it("never meets, whichever one slot that is needed is lost", () => {
    let tried = 0;
    fc.assert(
      fc.property(generatedCase, spoiler, ({ data, policy, record }, value) => {
        for (const path of listNeeded(data, record)) {
          if (isTheSame(record, path, value)) continue;
          tried += 1;
          countCase();
          const { verdict } = evaluate(policy, replaceAt(record, path, value));
          if (verdict === "meets") throw new Error(JSON.stringify({ path, value, data, record }));
        }
      }),
      { numRuns: countRuns(250, SLOTS_LOST) },
    );
    expect(tried).toBeGreaterThan(countRuns(250));
  });

  it("never meets, however many slots are lost", () => {
    let tried = 0;
    fc.assert(
      fc.property(
        generatedCase,
        several(fc.array(fc.tuple(fc.nat(), spoiler), { minLength: 2, maxLength: 6 })),
        (one, lost) => {
          const paths = listNeeded(one.data, one.record);
          for (const losses of lost) {
            let changed: unknown = one.record;
            for (const [pick, value] of losses) {
              const path = paths[pick % paths.length] ?? [];
              // A part of what was lost before cannot be lost again.
              const owner = readAt(changed, path.slice(0, -1));
              const lies = isMap(owner) && readAt(changed, path) !== undefined && !isTheSame(one.record, path, value);
              if (lies) changed = replaceAt(changed, path, value);
            }
            if (changed === one.record) continue;
            countCase();
            tried += 1;
            expect(evaluate(one.policy, changed).verdict).not.toBe("meets");
          }
        },
      ),
      { numRuns: countRuns(1000, RECORDS_EACH * 0.95) },
    );
    expect(tried).toBeGreaterThan(countRuns(1000) / 2);
  });

  it("never meets without a unit", () => {
    let tried = 0;
    fc.assert(
      fc.property(generatedCase, ({ data, policy, record }) => {
        for (const path of listNeeded(data, record)) {
          const bare = withoutUnit(readAt(record, path));
          if (bare === undefined) continue;
          tried += 1;
          for (const value of [bare, Number(bare)]) {
            countCase();
            expect(evaluate(policy, replaceAt(record, path, value)).verdict).not.toBe("meets");
          }
        }
      }),
      { numRuns: countRuns(200, UNITS_LOST) },
    );
    expect(tried).toBeGreaterThan(countRuns(200, UNITS_LOST));
  });
});
