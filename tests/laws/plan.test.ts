import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate, restorePlan } from "../../src/index.js";
import { type Path, readAt, replaceAt, walkLeaves } from "./evidence-path.js";
import { generatedCase } from "./generated-case.js";
import { mutate, mutations } from "./mutated-record.js";
import { countCase, countRuns, RECORDS_EACH, several } from "./run-count.js";

/** Another value of the same type, so that nothing but the digest can tell. */
function alter(value: unknown): unknown {
  if (typeof value === "string") return value === "any" ? "at" : `${value}x`;
  if (typeof value === "number") return value + 1;
  return typeof value === "boolean" ? !value : "x";
}

/** Places of a plan that hold maps. */
const PLACES: readonly Path[] = [[], ["policy"], ["checks", 0], ["checks", 0, "steps", 0]];
/** Leaves of one plan that are altered, at the least. */
const LEAVES_TRIED = 16;

const isGuarded = ([first]: Path) => first !== "positions";

describe("a saved plan", () => {
  it("judges as the original", () => {
    fc.assert(
      fc.property(generatedCase, several(mutations), ({ policy, record }, changed) => {
        const { policy: restored } = restorePlan(JSON.parse(JSON.stringify(policy.plan)));
        if (restored === undefined) throw new Error("the plan was refused");
        for (const changes of changed) {
          countCase();
          const one = mutate(record, changes);
          expect(JSON.stringify(evaluate(restored, one))).toBe(JSON.stringify(evaluate(policy, one)));
        }
      }),
      { numRuns: countRuns(300, RECORDS_EACH) },
    );
  });

  it("is refused when any one leaf is another, or is not there", () => {
    fc.assert(
      fc.property(generatedCase, fc.nat(), ({ policy }, pick) => {
        const plan: unknown = JSON.parse(JSON.stringify(policy.plan));
        const paths = [...walkLeaves(plan)].filter(isGuarded);
        // Every seventh leaf of each plan: over the runs each kind of leaf comes up many times.
        for (const path of paths.filter((_path, index) => index % 7 === pick % 7)) {
          countCase();
          const altered = replaceAt(plan, path, alter(readAt(plan, path)));
          expect(restorePlan(altered).policy, path.join("/")).toBeUndefined();
          if (typeof path[path.length - 1] === "number") continue;
          expect(restorePlan(replaceAt(plan, path, undefined)).policy, path.join("/")).toBeUndefined();
        }
      }),
      { numRuns: countRuns(80, LEAVES_TRIED) },
    );
  });

  it("is refused with a key too many", () => {
    fc.assert(
      fc.property(generatedCase, fc.constantFrom("gaps2", "constructor", "note"), ({ policy }, key) => {
        const plan: unknown = JSON.parse(JSON.stringify(policy.plan));
        for (const path of PLACES) {
          countCase();
          expect(restorePlan(replaceAt(plan, [...path, key], "x")).policy).toBeUndefined();
        }
      }),
      { numRuns: countRuns(50, PLACES.length) },
    );
  });
});
