import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findNearest } from "../../src/terms/index.js";

const KINDS = ["confirm", "match", "reading", "hold", "timing", "in-date"];

describe("the nearest word", () => {
  it.each([
    ["timeing", "timing"],
    ["confrim", "confirm"],
    ["hodl", "hold"],
    ["readng", "reading"],
    ["Match", "match"],
    ["in_date", "in-date"],
    ["In Date", "in-date"],
  ])("to %s is %s", (word, expected) => {
    expect(findNearest(word, KINDS)).toBe(expected);
  });

  it.each(["", "pressure", "x", "mold-and-match", "holdingring"])("to `%s` is none", (word) => {
    expect(findNearest(word, KINDS)).toBeUndefined();
  });

  it("is not proposed for a word of one or two letters that has nothing in common with it", () => {
    expect(findNearest("at", ["to", "by"])).toBeUndefined();
    expect(findNearest("a", ["b"])).toBeUndefined();
  });

  it("is the first of equally close ones, and the closest of all", () => {
    expect(findNearest("belw", ["below", "bel"])).toBe("below");
    expect(findNearest("belw", ["bel", "below"])).toBe("bel");
    expect(findNearest("abov", ["abo", "xbov", "above", "abov-e"])).toBe("abo");
    expect(findNearest("above", ["abo", "abowe", "aboxe"])).toBe("abowe");
  });

  // Common examples of the two distances, from memory: `ca` to `abc` is 3 edits by the restricted distance, so one
  // swap is one edit and nothing is edited twice.
  it("counts a swap of neighbours as one edit", () => {
    expect(findNearest("ihgh", ["high"])).toBe("high");
    expect(findNearest("hgih", ["high"])).toBe("high");
    expect(findNearest("ca", ["abc"])).toBeUndefined();
  });

  it("is found again when one letter of a longer word is left out, doubled or swapped", () => {
    const known = ["tolerance", "consequence", "instrument", "competence", "deference", "intervals"];
    const slip = fc.record({ word: fc.constantFrom(...known), at: fc.nat({ max: 7 }), kind: fc.nat({ max: 2 }) });
    fc.assert(
      fc.property(slip, ({ word, at, kind }) => {
        const letters = [...word];
        if (kind === 0) letters.splice(at, 1);
        else if (kind === 1) letters.splice(at, 0, letters[at] ?? "");
        else letters.splice(at, 2, letters[at + 1] ?? "", letters[at] ?? "");
        expect(findNearest(letters.join(""), known)).toBe(word);
      }),
    );
  });
});
