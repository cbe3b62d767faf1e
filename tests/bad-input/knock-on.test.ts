import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { SOUND } from "./typing-mistakes.js";

/** Code and line of each diagnostic of the local policy of the language page with some stretches replaced. */
function compile(...changes: readonly (readonly [from: string, to: string])[]) {
  const text = changes.reduce((held, [from, to]) => {
    if (!held.includes(from)) throw new Error(`the policy has no ${from}`);
    return held.replace(from, () => to);
  }, SOUND.local);
  return compilePolicy(text).diagnostics.map(({ code, line }) => [code, line]);
}

const lineOf = (stretch: string) => SOUND.local.slice(0, SOUND.local.indexOf(stretch)).split("\n").length;

describe("a mistake brings no other with it", () => {
  it.each([
    ["a limit that cannot be read leaves its tolerance known", "above: 90 %", "above: 90 bars", "plan/bad-quantity"],
    [
      "a figure that cannot be read leaves its instrument known",
      "division: 1 bar",
      "division: 1bar",
      "plan/bad-quantity",
    ],
    [
      "an instrument of a group that is not there says nothing of the others",
      "[dial, digital]",
      "[dail, digital]",
      "plan/unknown-name",
    ],
    ["a date that is none leaves its interval known", "every: P5Y", "every: P5X", "plan/bad-span"],
    [
      "a fact of a case that is misspelt overlaps with nothing",
      "{ role: spare }",
      "{ rloe: spare }",
      "plan/unknown-name",
    ],
    [
      "a value of a case that is misspelt overlaps with nothing",
      "{ role: spare }",
      "{ role: spaer }",
      "plan/unknown-name",
    ],
    [
      "a step whose limit cannot be read is still there to be named",
      "at-most: 20 bar",
      "at-most: 20bar",
      "plan/bad-quantity",
    ],
    [
      "a step of a kind that is not known is not missed elsewhere",
      "kind: confirm",
      "kind: confrim",
      "read/unknown-kind",
    ],
  ])("%s", (_, from, to, code) => {
    expect(compile([from, to])).toEqual([[code, lineOf(from)]]);
  });

  it("and two mistakes are two", () => {
    expect(compile(["division: 1 bar", "division: 1bar"], ["every: P5Y", "every: P5X"])).toEqual([
      ["plan/bad-quantity", lineOf("division: 1 bar")],
      ["plan/bad-span", lineOf("every: P5Y")],
    ]);
  });

  it("but an instrument that shows something else than the others of its group is told", () => {
    const text = compile([
      "digital: { quantity: pressure, division: 1 bar, max-error: 4 bar, range: [0 bar, 350 bar] }",
      "digital: { quantity: duration, division: 1 s }",
    ]);
    expect(text).toEqual([["plan/instrument-quantity", lineOf("[dial, digital]")]]);
  });

  it("and cases that do overlap are told", () => {
    expect(compile(["{ role: spare }", "{ role: training }"])).toEqual([
      ["plan/cases-overlap", lineOf("{ role: spare }")],
    ]);
  });
});

describe("a comma between digits", () => {
  const limit = (written: string) =>
    compilePolicy(SOUND.local.replace("at-most: 20 bar", () => `at-most: ${written}`)).diagnostics.map(
      ({ code, nearest }) => [code, nearest],
    );

  it.each([
    ["5,5 mbar", "read/bad-text", "5.5 mbar"],
    ["-0,25 bar", "read/bad-text", "-0.25 bar"],
    ["0,125 bar", "read/bad-text", "0.125 bar"],
    ["89,5 % of rated-pressure", "read/bad-text", "89.5 % of rated-pressure"],
    // It may mean one bar or a thousand, so nothing is proposed.
    ["1,000 bar", "read/text-cut-by-comma", undefined],
    ["1,000,000 bar", "read/text-cut-by-comma", undefined],
    ["5, 5 bar", "read/text-cut-by-comma", undefined],
  ])("in %s is %s", (written, code, nearest) => {
    expect(limit(written)).toEqual([[code, nearest]]);
  });
});

describe("a text of blanks", () => {
  it.each([
    ["reason: New harnesses on trial", 'reason: " "'],
    ['order: "TO 26/11"', 'order: "\u00a0"'],
    ["by: Station officer operations", 'by: "\u200b"'],
    ["ask: Straps, buckles and back plate are sound", 'ask: "\\t"'],
    ["title: An example", 'title: "  "'],
  ])("in place of `%s` is empty", (from, to) => {
    expect(compile([from, to])).toEqual([["read/empty-text", lineOf(from)]]);
  });

  it("in a rule is a word, which the fact that it is compared with has or has not", () => {
    expect(compile(["{ var: harness.result }, satisfactory", '{ var: harness.result }, " "'])).toEqual([
      ["rule/unknown-word", lineOf("{ var: harness.result }")],
    ]);
  });
});
