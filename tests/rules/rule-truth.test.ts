import { describe, expect, it } from "vitest";
import { prepareRule } from "../../src/rules/index.js";
import { compileValid, makeFacts } from "./rule-samples.js";

type State = boolean | undefined;
const STATES: readonly State[] = [true, false, undefined];

function judge(term: unknown, ...facts: Parameters<typeof makeFacts>): State {
  return prepareRule(compileValid(term))(makeFacts(...facts));
}

/**
 * Source: the strong tables of S. C. Kleene, Introduction to Metamathematics (1952), section 64, from memory; written out
 * here by hand. Each row: first, second, `and`, `or`.
 */
const KLEENE: readonly (readonly [State, State, State, State])[] = [
  [true, true, true, true],
  [true, false, false, true],
  [true, undefined, undefined, true],
  [false, true, false, true],
  [false, false, false, false],
  [false, undefined, false, undefined],
  [undefined, true, undefined, true],
  [undefined, false, false, undefined],
  [undefined, undefined, undefined, undefined],
];

describe("three values", () => {
  it.each(KLEENE)("%s and/or %s gives %s/%s", (trained, stored, both, either) => {
    const facts = { trained, stored };
    const terms = [{ var: "trained" }, { var: "stored" }];
    expect([judge({ and: terms }, facts), judge({ or: terms }, facts)]).toEqual([both, either]);
  });

  it("negates what is known and leaves the rest open", () => {
    expect(STATES.map((trained) => judge({ "!": { var: "trained" } }, { trained }))).toEqual([false, true, undefined]);
  });

  it("lets a decisive term decide behind any number of open ones", () => {
    const open = { "==": [{ var: "role" }, "training"] };
    const terms = [open, open, { var: "trained" }, open];
    expect(judge({ and: terms }, { trained: false })).toBe(false);
    expect(judge({ or: terms }, { trained: true })).toBe(true);
    expect(judge({ and: terms }, { trained: true })).toBeUndefined();
    expect(judge({ or: terms }, { trained: false })).toBeUndefined();
  });
});

describe("`if`", () => {
  const choose = { if: [{ var: "trained" }, { var: "stored" }, { "==": [{ var: "shift" }, "red"] }] };

  it("takes the branch that its condition names, whatever is missing in the other", () => {
    expect(judge(choose, { trained: true, stored: true })).toBe(true);
    expect(judge(choose, { trained: true, shift: "red" })).toBeUndefined();
    expect(judge(choose, { trained: false, shift: "white" })).toBe(false);
  });

  it("decides without its condition only where both branches come to the same", () => {
    expect(judge(choose, { stored: true, shift: "red" })).toBe(true);
    expect(judge(choose, { stored: false, shift: "blue" })).toBe(false);
    expect(judge(choose, { stored: true, shift: "blue" })).toBeUndefined();
    expect(judge(choose, { stored: true })).toBeUndefined();
    expect(judge(choose, {})).toBeUndefined();
  });

  it("sees that quantities in different units are the same", () => {
    const limit = { if: [{ var: "trained" }, { var: "leak.start" }, { var: "leak.end" }] };
    const term = { ">=": [limit, "200 bar"] };
    expect(judge(term, { "leak.start": "20 MPa", "leak.end": "200 bar" })).toBe(true);
    expect(judge(term, { "leak.start": "20 MPa", "leak.end": "201 bar" })).toBeUndefined();
  });

  it("goes through a chain of conditions", () => {
    const term = { if: [{ var: "trained" }, false, { var: "stored" }, true, { "==": [{ var: "shift" }, "red"] }] };
    expect(judge(term, { trained: true })).toBe(false);
    expect(judge(term, { trained: false, stored: true })).toBe(true);
    expect(judge(term, { trained: false, stored: false, shift: "red" })).toBe(true);
    expect(judge(term, { trained: false, stored: false, shift: "blue" })).toBe(false);
  });
});

describe("comparisons", () => {
  it("are open wherever a side is missing, `!=` too", () => {
    for (const sign of ["==", "!=", "<", "<=", ">", ">="]) {
      expect(judge({ [sign]: [{ var: "leak.start" }, "10 bar"] }, {})).toBeUndefined();
      expect(judge({ [sign]: ["10 bar", { var: "leak.start" }] }, {})).toBeUndefined();
    }
    expect(judge({ in: [{ var: "role" }, ["training", "spare"]] }, {})).toBeUndefined();
  });

  it.each([
    ["<", [true, false, false]],
    ["<=", [true, true, false]],
    [">", [false, false, true]],
    [">=", [false, true, true]],
    ["==", [false, true, false]],
    ["!=", [true, false, true]],
  ])("`%s` below, on and above the limit", (sign, expected) => {
    const readings = ["9.99999999 bar", "1000 kPa", "10.00000001 bar"];
    const term = { [sign]: [{ var: "leak.end" }, "10 bar"] };
    expect(readings.map((reading) => judge(term, { "leak.end": reading }))).toEqual(expected);
  });

  it.each([
    // Source: 1 psi = 8896443230521/1290320000 Pa (NIST SP 811, appendix B.8), so 10 bar = 145.037737… psi.
    ["145.0377 psi", true],
    ["145.0378 psi", false],
  ])("are exact across families: %s is below 10 bar: %s", (reading, expected) => {
    expect(judge({ "<": [{ var: "leak.end" }, "10 bar"] }, { "leak.end": reading })).toBe(expected);
  });

  it("with three sides are false as soon as one pair is", () => {
    const between = { "<=": ["10 bar", { var: "leak.end" }, { var: "leak.start" }] };
    expect(judge(between, { "leak.end": "10 bar", "leak.start": "10 bar" })).toBe(true);
    expect(judge(between, { "leak.end": "9 bar" })).toBe(false);
    expect(judge(between, { "leak.end": "11 bar" })).toBeUndefined();
    expect(judge(between, { "leak.end": "11 bar", "leak.start": "10 bar" })).toBe(false);
  });

  it("of dates go by the calendar; one without a day counts from its first", () => {
    const term = { "<": [{ var: "commissioned" }, "2026-03"] };
    expect(judge(term, { commissioned: "2026-02-28" })).toBe(true);
    expect(judge(term, { commissioned: "2026-03-01" })).toBe(false);
    expect(judge({ "==": [{ var: "commissioned" }, "2026-03"] }, { commissioned: "2026-03-01" })).toBe(true);
  });

  it("are open between values of two kinds, which only a reader that breaks its word can give", () => {
    const facts = { read: (name: string) => (name === "leak.start" ? "10 bar" : true), members: () => undefined };
    for (const sign of ["==", "!=", "<"]) {
      expect(prepareRule(compileValid({ [sign]: [{ var: "leak.start" }, "10 bar"] }))(facts)).toBeUndefined();
      expect(prepareRule(compileValid({ [sign]: [{ var: "leak.end" }, "10 bar"] }))(facts)).toBeUndefined();
    }
    expect(prepareRule(compileValid({ "!=": [{ var: "keeper" }, "Ash"] }))(facts)).toBeUndefined();
  });
});

describe("arithmetic", () => {
  it("is exact where doubles are not: 0.1 + 0.2 is 0.3", () => {
    const term = { "==": [{ "+": [{ var: "leak.start" }, { var: "leak.end" }] }, "0.3 bar"] };
    expect(judge(term, { "leak.start": "0.1 bar", "leak.end": "0.2 bar" })).toBe(true);
    expect(0.1 + 0.2 === 0.3).toBe(false);
  });

  it("is exact beyond the integers that doubles hold", () => {
    const term = {
      ">": [
        { "+": [{ var: "leak.start" }, { var: "leak.start" }, "0.00000001 bar"] },
        { "+": [{ var: "leak.start" }, { var: "leak.start" }] },
      ],
    };
    expect(judge(term, { "leak.start": "90000000 bar" })).toBe(true);
  });

  it("knows differences, sizes and extremes", () => {
    const facts = { "leak.start": "280 bar", "leak.end": "29 MPa", indoors: "20 Cel", outdoors: "280.15 K", crew: 4 };
    const change = { "-": [{ var: "leak.start" }, { var: "leak.end" }] };
    expect(judge({ "==": [change, "-10 bar"] }, facts)).toBe(true);
    expect(judge({ "==": [{ abs: change }, "10 bar"] }, facts)).toBe(true);
    expect(judge({ "==": [{ "-": change }, "10 bar"] }, facts)).toBe(true);
    expect(judge({ "==": [{ min: [{ var: "leak.start" }, { var: "leak.end" }] }, "280 bar"] }, facts)).toBe(true);
    expect(judge({ "==": [{ max: [{ var: "leak.start" }, { var: "leak.end" }] }, "290 bar"] }, facts)).toBe(true);
    expect(judge({ "==": [{ "-": [{ var: "indoors" }, { var: "outdoors" }] }, "13 K"] }, facts)).toBe(true);
    expect(judge({ "==": [{ max: [{ var: "indoors" }, { var: "outdoors" }] }, "293.15 K"] }, facts)).toBe(true);
    expect(judge({ "==": [{ "+": [{ var: "crew" }, 2] }, 6] }, facts)).toBe(true);
  });

  it.each(["+", "-", "min", "max"])("`%s` is open where an operand is missing", (operator) => {
    const term = { "<=": [{ [operator]: [{ var: "leak.start" }, { var: "leak.end" }] }, "10 bar"] };
    expect(judge(term, { "leak.start": "1 bar" })).toBeUndefined();
    expect(judge(term, { "leak.end": "1 bar" })).toBeUndefined();
  });
});

/** The flags of two members, then what `all`, `some` and `none` come to, and whether `count` is 1. */
const LISTS: readonly (readonly [readonly State[], State, State, State, State])[] = [
  [[true, true], true, true, false, false],
  [[true, false], false, true, false, true],
  [[false, false], false, false, true, false],
  [[true, undefined], undefined, true, false, undefined],
  [[false, undefined], false, undefined, undefined, undefined],
  [[undefined, undefined], undefined, undefined, undefined, undefined],
  [[true], true, true, false, true],
  [[], undefined, undefined, undefined, undefined],
];

describe("lists", () => {
  const terms = (list: string) => [
    { all: [{ var: list }, { var: "lined" }] },
    { some: [{ var: list }, { var: "lined" }] },
    { none: [{ var: list }, { var: "lined" }] },
    { "==": [{ count: [{ var: list }, { var: "lined" }] }, 1] },
  ];

  it.each(LISTS)("%j: all %s, some %s, none %s, count is 1 %s", (flags, ...expected) => {
    const lists = { "subject.cylinders": flags.map((lined) => ({ lined })) };
    expect(terms("subject.cylinders").map((term) => judge(term, {}, lists))).toEqual(expected);
  });

  it("that are missing leave everything open", () => {
    expect(terms("subject.cylinders").map((term) => judge(term, {}))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("name a member's fields and not the facts outside", () => {
    const term = { all: [{ var: "subject.cylinders" }, { ">=": [{ var: "ratedPressure" }, "200 bar"] }] };
    const members = (...pressures: string[]) => ({
      "subject.cylinders": pressures.map((ratedPressure) => ({ ratedPressure })),
    });
    expect(judge(term, { rated: "100 bar" }, members("20 MPa", "300 bar"))).toBe(true);
    expect(judge(term, { rated: "300 bar" }, members("20 MPa", "199 bar"))).toBe(false);
  });
});

describe("`in`", () => {
  it("asks whether a value is one of the list, never a part of a text", () => {
    const term = { in: [{ var: "keeper" }, ["Ash", "Rowan"]] };
    expect(["Ash", "As", "Rowan", "Ash, Rowan", ""].map((keeper) => judge(term, { keeper }))).toEqual([
      true,
      false,
      true,
      false,
      false,
    ]);
    expect(judge({ in: [{ var: "rated" }, ["200 bar", "300 bar"]] }, { rated: "30 MPa" })).toBe(true);
    expect(judge({ in: [{ var: "crew" }, [2, 4]] }, { crew: 3 })).toBe(false);
  });
});
