import { isObject } from "./hand-cylinders.js";
import type { Random } from "./random.js";

const KEYS = ["Defect", "reslut", "trace", "remark", "a/b", "fitted"];
/** Levels that a value nests: most of them harmless, those about the most that is judged, and one that is far beyond. */
const DEPTHS = [1, 2, 5, 59, 60, 61, 62, 63, 64, 65, 500];

/** The same records with a key that no step and no record has, and a value under it that nests; some so deep that nothing is judged. */
export function addOddKeys(records: readonly unknown[], random: Random): readonly unknown[] {
  return records.map((record) => {
    const copy: unknown = JSON.parse(JSON.stringify(record));
    const things = isObject(copy)
      ? [copy, copy.subject, copy.by, copy.local, ...listOf(copy.steps)].filter(isObject)
      : [];
    if (things.length > 0) Object.assign(random.pick(things), { [random.pick(KEYS)]: nest(random) });
    return copy;
  });
}

/** A record of one entry more than is judged. */
export function overfillRecord(record: unknown): unknown {
  return { ...Object(record), steps: new Array(10_001).fill({ step: "finish", result: "satisfactory" }) };
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function nest(random: Random): unknown {
  let value: unknown = random.pick<unknown>(["as it was", 7, null, {}, []]);
  for (let level = random.pick(DEPTHS); level > 0; level -= 1) value = random.chance(0.5) ? [value] : { within: value };
  return value;
}
