import { describe, expect, it } from "vitest";
import { describeRule, listRuleNames } from "../../src/rules/index.js";
import { compileValid } from "./rule-samples.js";

const a = { var: "leak.start" };
const b = { var: "leak.end" };
const training = { "==": [{ var: "role" }, "training"] };
const white = { "==": [{ var: "shift" }, "white"] };
const cylinders = { var: "subject.cylinders" };

const WORDS: readonly (readonly [unknown, string, readonly string[]])[] = [
  [
    { or: [{ "!=": [{ var: "role" }, "training"] }, white] },
    "role is not training, or shift is white",
    ["role", "shift"],
  ],
  [
    { and: [{ or: [training, white] }, { var: "trained" }] },
    "(role is training, or shift is white), and trained",
    ["role", "shift", "trained"],
  ],
  [{ and: [training] }, "role is training", ["role"]],
  [
    { and: [{ or: [{ and: [training, white] }] }, true] },
    "(role is training, and shift is white), and true",
    ["role", "shift"],
  ],
  [{ "!": { or: [training, { var: "stored" }] } }, "not (role is training, or stored)", ["role", "stored"]],
  [{ "!": { var: "stored" } }, "not stored", ["stored"]],
  [{ "==": [{ "!": { var: "stored" } }, { var: "trained" }] }, "(not stored) is trained", ["stored", "trained"]],
  [{ "<=": [{ "-": [a, b] }, "10 bar"] }, "leak.start - leak.end is at most 10 bar", ["leak.start", "leak.end"]],
  [
    { ">": [{ "-": [a, { "-": [b, "1 bar"] }] }, "0 bar"] },
    "leak.start - (leak.end - 1 bar) is above 0 bar",
    ["leak.start", "leak.end"],
  ],
  [
    { ">=": [{ abs: { "+": [a, b] } }, { "-": a }] },
    "the size of (leak.start + leak.end) is at least -leak.start",
    ["leak.start", "leak.end"],
  ],
  [
    { "<": [{ min: [a, b] }, { max: [a, "9 bar"] }] },
    "the least of (leak.start, leak.end) is below the greatest of (leak.start, 9 bar)",
    ["leak.start", "leak.end"],
  ],
  [
    { or: [{ "<=": ["10 bar", a, b] }, false] },
    "(10 bar is at most leak.start, and leak.start is at most leak.end), or false",
    ["leak.start", "leak.end"],
  ],
  [{ "<": [{ var: "commissioned" }, "2026-04-01"] }, "commissioned is before 2026-04-01", ["commissioned"]],
  [{ ">=": [{ var: "commissioned" }, "2026-04-01"] }, "commissioned is not before 2026-04-01", ["commissioned"]],
  [{ in: [{ var: "keeper" }, ["Ash", "Lowmere 3", ""]] }, "keeper is one of (Ash, `Lowmere 3`, ``)", ["keeper"]],
  [
    { if: [training, white, { var: "trained" }] },
    "shift is white if role is training, else trained",
    ["role", "shift", "trained"],
  ],
  [
    { all: [cylinders, { ">=": [{ var: "ratedPressure" }, "200 bar"] }] },
    "for every member of subject.cylinders (ratedPressure is at least 200 bar)",
    ["subject.cylinders"],
  ],
  [
    { some: [cylinders, { var: "lined" }] },
    "for at least one member of subject.cylinders (lined)",
    ["subject.cylinders"],
  ],
  [{ none: [cylinders, { var: "lined" }] }, "for no member of subject.cylinders (lined)", ["subject.cylinders"]],
  [
    { "==": [{ count: [cylinders, { var: "lined" }] }, { var: "crew" }] },
    "the number of members of subject.cylinders (lined) is crew",
    ["subject.cylinders", "crew"],
  ],
];

describe("a rule in words", () => {
  it.each(WORDS)("%j", (term, words, names) => {
    const expression = compileValid(term);
    expect(describeRule(expression)).toBe(words);
    expect(listRuleNames(expression)).toEqual(names);
  });
});
