import { describe, expect, it } from "vitest";
import { findConstants } from "../../src/rules/index.js";
import { findNearest } from "../../src/terms/index.js";
import { compileSample, compileValid, TYPES } from "./rule-samples.js";

const flag = { var: "trained" };
const pressure = { var: "leak.end" };
const lasting = { var: "hold.lasting" };
const keeper = { var: "keeper" };
const cylinders = { var: "subject.cylinders" };
const COMPARED = "a text, true or false, a date or a quantity";
const ORDERED = "a quantity or a date";
const SUMMED = "a quantity that can be added, such as a difference of temperatures";
const unknown = (kind: string) => `a value that JSON does not know (${kind})`;

/** What stands where a term or a name should. */
const FOUND: readonly (readonly [value: unknown, found: string])[] = [
  [null, "null"],
  [[], "an empty list"],
  [[flag], "a list"],
  [10n, unknown("bigint")],
  [() => 1, unknown("function")],
  [Symbol("x"), unknown("symbol")],
  [undefined, unknown("undefined")],
];

const FOUND_AS_NAME: typeof FOUND = [
  ...FOUND,
  ["", "an empty text"],
  [0, "a number"],
  [true, "true or false"],
  [{}, "an operator"],
];

/** Where a type is wrong, what it is, what is wanted, and the name for which `var` was probably forgotten. */
const WRONG: readonly (readonly [term: unknown, pointer: string, found: string, wanted: string, name?: string])[] = [
  ["", "", "a text", "true or false"],
  ["trained", "", "a text", "true or false", "trained"],
  ["traned", "", "a text", "true or false"],
  [1, "", "a count", "true or false"],
  [pressure, "", "a pressure", "true or false"],
  [cylinders, "", "a list", "true or false"],
  [{ var: "commissioned" }, "", "a date", "true or false"],
  [{ and: [flag, "stored"] }, "/and/1", "a text", "true or false", "stored"],
  [{ "!": "trained" }, "/!", "a text", "true or false", "trained"],
  [{ all: [flag, true] }, "/all/0", "true or false", "a list"],
  [{ all: ["subject.cylinders", true] }, "/all/0", "a text", "a list"],
  [{ all: [1, true] }, "/all/0", "a count", "a list"],
  [{ "==": [cylinders, cylinders] }, "/==/0", "a list", COMPARED],
  [{ "==": [{ var: "role" }, 1] }, "/==/1", "a count", "a text"],
  [{ "==": ["role", 1] }, "/==/1", "a count", "a text"],
  [{ "==": [flag, "stored"] }, "/==/1", "a text", "true or false", "stored"],
  [{ "==": [{ var: "commissioned" }, { var: "role" }] }, "/==/1", "a text", "a date"],
  [{ "<": ["a", { var: "role" }] }, "/</1", "a text", ORDERED],
  [{ "<": [1, flag] }, "/</1", "true or false", ORDERED],
  [{ "<": [true, false] }, "/</0", "true or false", ORDERED],
  [{ "<": ["9 bar", "10 bar"] }, "/</0", "a text", ORDERED],
  [{ "<": ["x", "leak.end"] }, "/</1", "a text", ORDERED, "leak.end"],
  [{ "<": ["leak.end", "10 bar"] }, "/</0", "a text", ORDERED, "leak.end"],
  [{ "<": [pressure, lasting] }, "/</1", "a duration", "a pressure"],
  [{ "<": [lasting, pressure] }, "/</1", "a pressure", "a duration"],
  [{ "<": [{ "+": [{ var: "indoors" }, { var: "outdoors" }] }, "300 K"] }, "/</0/+/0", "a temperature", SUMMED],
  [{ "<": [{ "+": ["1 bar", cylinders] }, pressure] }, "/</0", "a list", ORDERED],
  [{ "<": [{ "-": "x" }, "1 bar"] }, "/</0", "a text", ORDERED],
  [{ "==": [{ "+": [pressure, { var: "role" }] }, "1 bar"] }, "/==/0/+/1", "a text", "a pressure"],
  [{ "<": [{ min: [{ var: "commissioned" }] }, "2026-01-01"] }, "/</0/min/0", "a date", "a quantity"],
  [{ "<=": [{ count: [cylinders, true] }, pressure] }, "/<=/1", "a pressure", "a count"],
  [{ ">": [pressure, { count: [cylinders, true] }] }, "/>/1", "a count", "a pressure"],
  [{ in: [keeper, "Ash"] }, "/in/1", "a text", "a list of values"],
  [{ in: [keeper, []] }, "/in/1", "an empty list", "a list of values"],
  [{ in: [keeper, cylinders] }, "/in/1", "an operator", "a list of values"],
  [{ in: [keeper, 1] }, "/in/1", "a number", "a list of values"],
  [{ in: [keeper, null] }, "/in/1", "null", "a list of values"],
  [{ in: [keeper, true] }, "/in/1", "true or false", "a list of values"],
  [{ in: [keeper, ["Ash", { var: "role" }]] }, "/in/1/1", "an operator", "a plain value"],
  [{ in: [keeper, ["Ash", []]] }, "/in/1/1", "an empty list", "a plain value"],
  [{ in: [keeper, ["Ash", 3]] }, "/in/1/1", "a count", "a text"],
  [{ in: [flag, [true]] }, "/in/0", "true or false", "a text, a date or a quantity"],
];

/** Terms beside others from which no type can be told: each mistake is reported by itself and no type is made up. */
const INSIDE: readonly (readonly [term: unknown, faults: readonly string[]])[] = [
  [{ "==": [[], 1] }, ["/==/0 rule/no-term"]],
  [{ "==": [null, null] }, ["/==/0 rule/no-term", "/==/1 rule/no-term"]],
  [{ "==": [{}, "x"] }, ["/==/0 rule/one-operator"]],
  [{ "==": [{ and: [flag], or: [flag] }, "x"] }, ["/==/0 rule/one-operator"]],
  [{ "==": [{ var: 1 }, "x"] }, ["/==/0/var rule/no-name"]],
  [{ "==": [{ cat: [1] }, "x"] }, ["/==/0/cat rule/unknown-operator"]],
  [{ in: [keeper, ["Ash", null]] }, ["/in/1/1 rule/no-term"]],
];

/** Parts that read nothing: where, the text that was probably meant as a name, and the name. */
const CONSTANTS: readonly (readonly [term: unknown, ...found: (readonly [string, string?, string?])[]])[] = [
  [{ "!": { "==": ["role", 1] } }, ["/!/==", "role", "role"]],
  [{ and: [[{ "==": ["role", "x"] }], flag] }, ["/and/0/0/==", "role", "role"]],
  [{ and: { "==": ["role", "x"] } }, ["/and/==", "role", "role"]],
  [{ "==": [1, 2] }, ["/=="]],
  [{ "==": [[1, null], "x"] }, ["/=="]],
  [{ "==": ["traine", "trained"] }, ["/==", "trained", "trained"]],
  [{ and: [{ "==": ["x", "y"] }, { "!=": ["shifts", "y"] }] }, ["/and/0/=="], ["/and/1/!=", "shifts", "shift"]],
  [
    { if: [{ "==": ["x", "rol"] }, flag, { ">": ["leak.ends", "1 bar"] }] },
    ["/if/0/==", "rol", "role"],
    ["/if/2/>", "leak.ends", "leak.end"],
  ],
  // In a list the names are those of a member; where the list is none that is known, they stay those of the rule.
  [{ all: [cylinders, { and: [{ var: "lined" }, { "==": ["lind", "role"] }] }] }, ["/all/1/and/1/==", "lind", "lined"]],
  [{ some: [flag, { "==": ["id", "LM 1"] }] }, ["/some/1/=="]],
  [{ all: [null, { "==": ["id", "role"] }] }, ["/all/1/==", "role", "role"]],
  [{ all: [{ if: [flag, cylinders, cylinders] }, { "==": ["id", "role"] }] }, ["/all/1/==", "role", "role"]],
  [{ all: ["subject.cylinders", { "==": ["id", "role"] }] }, ["/all/1/==", "role", "role"]],
  [{ all: [cylinders, { "<": [{ var: "id" }, "x"] }] }],
  [{ some: cylinders }],
  [{ in: [null, flag] }],
  [{ "<": ["a", { "+": [1, flag] }] }],
  [null, [""]],
  [5, [""]],
];

/** What else a message is told. */
const PARAMS: readonly (readonly [term: unknown, params: Readonly<Record<string, unknown>>])[] = [
  [{ "!": [flag, flag] }, { operator: "!", count: 2, least: 1, most: 1 }],
  [{ and: [flag], or: [flag] }, { operators: ["and", "or"] }],
  [{ and: [] }, { operator: "and", count: 0, least: 1, most: undefined }],
  [{ "<": [pressure] }, { operator: "<", count: 1, least: 2, most: 3 }],
  [{ and: Array.from({ length: 10_000 }, () => true) }, { depth: 64, terms: 10_000 }],
  [{ "<": [{ var: "commissioned" }, "2026-02-30"] }, { found: "2026-02-30" }],
  [{ "<=": [pressure, 10] }, { found: "10", fault: "no-unit", dimension: "pressure", mend: "10 bar" }],
  [{ "<=": [pressure, true] }, { found: "true", fault: "unreadable", mend: undefined }],
  [{ "<=": [pressure, "leak.start"] }, { found: "leak.start", mend: '{"var": "leak.start"}' }],
  [{ "==": [{ var: "crew" }, "crew"] }, { found: "crew", dimension: "count", mend: '{"var": "crew"}' }],
  [{ "<=": [pressure, "leak.stat"] }, { found: "leak.stat", mend: undefined }],
  [{ "===": [flag, true] }, { operator: "===", origin: "JsonLogic", nearest: "==" }],
  ...[
    "?:",
    "!!",
    "%",
    "*",
    "/",
    "cat",
    "substr",
    "map",
    "filter",
    "reduce",
    "merge",
    "missing",
    "missing_some",
    "log",
  ].map((operator) => [{ [operator]: [flag] }, { operator, origin: "JsonLogic" }] as const),
  [{ xor: [flag] }, { operator: "xor", origin: undefined, nearest: "!=" }],
];

function name(term: unknown): string {
  return typeof term === "object" ? JSON.stringify(term) : String(term);
}

describe("the words of a mistake in a rule", () => {
  it.each(FOUND.map((row) => [name(row[0]), ...row] as const))("%s as a term", (_name, value, found) => {
    expect(compileSample(value).faults).toEqual([{ code: "rule/no-term", pointer: "", params: { found } }]);
    const inner = compileSample({ and: [flag, value] }).faults;
    expect(inner).toEqual([{ code: "rule/no-term", pointer: "/and/1", params: { found } }]);
  });

  it.each(FOUND_AS_NAME.map((row) => [name(row[0]), ...row] as const))("%s as a name", (_name, value, found) => {
    expect(compileSample({ var: value }).faults).toEqual([
      { code: "rule/no-name", pointer: "/var", params: { found } },
    ]);
  });

  it.each(WRONG.map((row) => [name(row[0]), ...row] as const))(
    "%s",
    (_name, term, pointer, found, wanted, forgotten) => {
      const { faults } = compileSample(term);
      expect(faults).toEqual([{ code: "rule/wrong-type", pointer, params: { found, wanted, name: forgotten } }]);
    },
  );

  it.each(PARAMS.map((row) => [name(row[0]).slice(0, 60), ...row] as const))("%s", (_name, term, params) => {
    const [fault, ...others] = compileSample(term).faults;
    expect(others).toEqual([]);
    for (const [key, value] of Object.entries(params)) expect([key, fault?.params[key]]).toEqual([key, value]);
  });

  it.each(INSIDE.map((row) => [name(row[0]), ...row] as const))("%s", (_name, term, faults) => {
    expect(compileSample(term).faults.map(({ code, pointer }) => `${pointer} ${code}`)).toEqual(faults);
  });
});

describe("what reads nothing in a rule", () => {
  it.each(CONSTANTS.map(([term, ...found]) => [name(term), term, found] as const))("%s", (_name, term, found) => {
    expect(findConstants(term, { types: TYPES, nearest: findNearest })).toEqual(
      found.map(([pointer, literal, meant]) => ({ pointer, literal, name: meant })),
    );
  });
});

describe("literals beside a term", () => {
  it.each([
    [{ "<": [1, 2] }],
    [{ "<": ["1 K", { "-": [{ var: "indoors" }, { var: "outdoors" }] }] }],
    [{ "<": ["280 K", { "-": [{ var: "indoors" }, "1 K"] }] }],
    [{ "==": [true, { "==": [1, 2] }] }],
    [{ in: ["keeper", ["Ash"]] }],
  ])("%j is read by what it stands beside", (term) => {
    expect(compileValid(term)).toBeDefined();
  });
});
