import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  listRuleNames,
  prepareRule,
  type RuleExpression,
  type RuleFacts,
  type RuleValue,
} from "../../src/rules/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { readSample, SEED } from "../quantities/read-sample.js";
import {
  COMPLETE_FACTS,
  type GeneratedFacts,
  type KeepsSlot,
  listSlots,
  plainFacts,
  readFacts,
} from "./generate-facts.js";
import { type Generated, generateRules } from "./generate-rules.js";
import { judgePlainly } from "./oracle.js";
import { compileValid } from "./rule-samples.js";

type State = boolean | undefined;
/** Judges a rule over facts of which some are emptied. */
type JudgeUnderTest = (rule: Generated, facts: GeneratedFacts, keeps: KeepsSlot) => State;

const RULES = generateRules(4);
const OPERATORS = "var and or ! if == != < <= > >= + - abs min max in all some none count".split(" ");

const judge: JudgeUnderTest = (rule, facts, keeps) => prepareRule(compileValid(rule.term))(readFacts(facts, keeps));
const judgeWith =
  (change: (facts: RuleFacts) => RuleFacts): JudgeUnderTest =>
  (rule, facts, keeps) =>
    prepareRule(compileValid(rule.term))(change(readFacts(facts, keeps)));
const judgeChanged =
  (change: (expression: RuleExpression) => RuleExpression): JudgeUnderTest =>
  (rule, facts, keeps) =>
    prepareRule(changeEverywhere(compileValid(rule.term), change))(readFacts(facts, keeps));

interface Agreement {
  compared: number;
  held: number;
  wrong: number;
}

/** Compares with json-logic-js over complete facts. */
function compareWithOracle(underTest: JudgeUnderTest, numRuns: number): Agreement {
  const agreement = { compared: 0, held: 0, wrong: 0 };
  fc.assert(
    fc.property(RULES, COMPLETE_FACTS, (rule, facts) => {
      const expected = judgePlainly(rule.plain, plainFacts(facts));
      agreement.compared += 1;
      if (expected) agreement.held += 1;
      if (underTest(rule, facts, () => true) !== expected) agreement.wrong += 1;
    }),
    { seed: SEED, numRuns },
  );
  return agreement;
}

interface Soundness {
  compared: number;
  opened: number;
  flipped: number;
}

/** Empties some facts, and then some more: what was told may become open, and nothing else. */
function emptyFacts(underTest: JudgeUnderTest, numRuns: number): Soundness {
  const soundness = { compared: 0, opened: 0, flipped: 0 };
  const mask = fc.integer({ min: -(2 ** 31), max: 2 ** 31 - 1 });
  fc.assert(
    fc.property(RULES, COMPLETE_FACTS, mask, mask, mask, (rule, facts, some, more, whole) => {
      const slots = listSlots(facts);
      const keep =
        (emptied: number): KeepsSlot =>
        (slot) =>
          ((emptied >> (slots.indexOf(slot) % 31)) & 1) === 0;
      const first = whole % 3 === 0 ? 0 : some & more;
      const before = underTest(rule, facts, keep(first));
      const after = underTest(rule, facts, keep(first | more));
      soundness.compared += 1;
      if (before !== undefined && after === undefined) soundness.opened += 1;
      if (after !== undefined && after !== before) soundness.flipped += 1;
    }),
    { seed: SEED, numRuns },
  );
  return soundness;
}

/** Applies a change to every part of an expression, inner parts first. */
function changeEverywhere(
  expression: RuleExpression,
  change: (expression: RuleExpression) => RuleExpression,
): RuleExpression {
  const inner = (part: RuleExpression) => changeEverywhere(part, change);
  switch (expression.op) {
    case "fact":
    case "text":
    case "flag":
    case "date":
    case "quantity":
      return change(expression);
    case "not":
    case "opposite":
    case "size":
      return change({ ...expression, term: inner(expression.term) });
    case "if": {
      const { op, when, value, otherwise } = expression;
      return change({ op, when: inner(when), value: inner(value), otherwise: inner(otherwise) });
    }
    case "equal":
    case "unequal":
    case "difference":
      return change({ ...expression, left: inner(expression.left), right: inner(expression.right) });
    case "in":
      return change({ ...expression, item: inner(expression.item) });
    case "all":
    case "some":
    case "none":
    case "count":
      return change({ ...expression, holds: inner(expression.holds) });
    default:
      return change({ ...expression, terms: expression.terms.map(inner) });
  }
}

const SWAPPED_SIGNS = { "<": "<=", "<=": "<", ">": ">=", ">=": ">" } as const;
const swap = (one: string, other: string) => (expression: RuleExpression) => {
  const op = expression.op === one ? other : expression.op === other ? one : expression.op;
  // Boundary: only operators whose parts are shaped alike are swapped.
  return { ...expression, op } as RuleExpression;
};

/** Faults planted in a compiled rule. */
const WRONG_RULES: Readonly<Record<string, (expression: RuleExpression) => RuleExpression>> = {
  "the limit taken in where it is left out": (part) =>
    part.op === "compare" ? { ...part, sign: SWAPPED_SIGNS[part.sign] } : part,
  "`and` for `or`": swap("and", "or"),
  "`all` for `some`": swap("all", "some"),
  "`none` for `all`": swap("none", "all"),
  "`min` for `max`": swap("least", "greatest"),
  "`==` for `!=`": swap("equal", "unequal"),
  "a sign lost": (part) => (part.op === "opposite" ? part.term : part),
  "a size lost": (part) => (part.op === "size" ? part.term : part),
  "a difference turned round": (part) =>
    part.op === "difference" ? { ...part, left: part.right, right: part.left } : part,
  "the branches of `if` turned round": (part) =>
    part.op === "if" ? { ...part, value: part.otherwise, otherwise: part.value } : part,
  "the last of a sum forgotten": (part) => (part.op === "sum" ? { ...part, terms: part.terms.slice(0, -1) } : part),
  "the first of a list forgotten": (part) => (part.op === "in" ? { ...part, list: part.list.slice(1) } : part),
  "one too few counted": (part) => (part.op === "count" ? { op: "opposite", term: part } : part),
};

/** Wrong ways to take what is missing. */
const WRONG_READINGS: Readonly<Record<string, JudgeUnderTest>> = {
  "json-logic-js itself, where missing is null": (rule, facts, keeps) =>
    judgePlainly(rule.plain, plainFacts(facts, keeps)),
  "missing is false": judgeWith((facts) => fillMissing(facts, false, ["trained", "stored", "lined"])),
  "missing is an empty text": judgeWith((facts) => fillMissing(facts, "", ["role", "shift", "keeper", "id"])),
  "members with something missing are left out": judgeWith((facts) => ({
    read: (name) => facts.read(name),
    members: (name) =>
      facts
        .members(name)
        ?.filter((member) =>
          ["id", "lined", "ratedPressure", "requalifiedOn"].every((field) => member.read(field) !== undefined),
        ),
  })),
  "an open rule is false": (rule, facts, keeps) => judge(rule, facts, keeps) ?? false,
  "an open rule is true": (rule, facts, keeps) => judge(rule, facts, keeps) ?? true,
  "a missing pressure is 0": judgeWith((facts) =>
    fillMissing(facts, readSample("0 bar", "pressure"), ["rated", "leak.start", "leak.end", "ratedPressure"]),
  ),
};

function fillMissing(facts: RuleFacts, filling: RuleValue, names: readonly string[]): RuleFacts {
  return {
    read: (name) => facts.read(name) ?? (names.includes(name) ? filling : undefined),
    members: (name) => facts.members(name)?.map((member) => fillMissing(member, filling, names)),
  };
}

/** Of rules; fewer where each run must be short. */
const COUNT = countQuickRuns(Number(process.env["TENBAR_RULES"] ?? 60_000));

describe("a rule over complete facts", () => {
  it(`comes to what json-logic-js makes of it, in ${COUNT} generated rules`, () => {
    const { compared, held, wrong } = compareWithOracle(judge, COUNT);
    expect({ compared, wrong }).toEqual({ compared: COUNT, wrong: 0 });
    expect(Math.min(held, compared - held)).toBeGreaterThan(compared / 5);
  });

  it("is generated with every operator", () => {
    const seen = new Map<string, number>();
    for (const { term } of fc.sample(RULES, { seed: SEED, numRuns: 5_000 })) {
      for (const [, operator = ""] of JSON.stringify(term).matchAll(/\{"([^"]+)":/g)) {
        seen.set(operator, (seen.get(operator) ?? 0) + 1);
      }
    }
    expect(new Set(seen.keys())).toEqual(new Set(OPERATORS));
    expect(Math.min(...seen.values())).toBeGreaterThan(100);
  });

  it.each(Object.entries(WRONG_RULES))("does not with %s", (_name, change) => {
    expect(compareWithOracle(judgeChanged(change), 3_000).wrong).toBeGreaterThan(0);
  });
});

describe("a rule whose facts are emptied", () => {
  it(`stays as it was or becomes open, in ${COUNT} generated rules`, () => {
    const { compared, opened, flipped } = emptyFacts(judge, COUNT);
    expect({ compared, flipped }).toEqual({ compared: COUNT, flipped: 0 });
    expect(opened).toBeGreaterThan(compared / 10);
  });

  it("does so for every subset of what it reads", () => {
    let subsets = 0;
    fc.assert(
      fc.property(RULES, COMPLETE_FACTS, (rule, facts) => {
        const expression = compileValid(rule.term);
        const names = listRuleNames(expression);
        const slots = listSlots(facts).filter((slot) => names.includes(slot.split("/")[0] ?? ""));
        fc.pre(slots.length <= 9);
        const judgeSubset = prepareRule(expression);
        const whole = judgeSubset(readFacts(facts));
        for (let emptied = 1; emptied < 2 ** slots.length; emptied += 1) {
          const state = judgeSubset(
            readFacts(facts, (slot) => !slots.includes(slot) || ((emptied >> slots.indexOf(slot)) & 1) === 0),
          );
          subsets += 1;
          if (state !== undefined) expect(state).toBe(whole);
        }
      }),
      { seed: SEED, numRuns: countQuickRuns(1_000) },
    );
    expect(subsets).toBeGreaterThan(10_000);
  });

  it("does not depend on the order in which `and` and `or` are written", () => {
    const turned = judgeChanged((part) =>
      part.op === "and" || part.op === "or" ? { ...part, terms: part.terms.toReversed() } : part,
    );
    const mask = fc.integer({ min: 0, max: 2 ** 30 - 1 });
    fc.assert(
      fc.property(RULES, COMPLETE_FACTS, mask, (rule, facts, emptied) => {
        const slots = listSlots(facts);
        const keeps: KeepsSlot = (slot) => ((emptied >> slots.indexOf(slot)) & 1) === 0;
        expect(turned(rule, facts, keeps)).toBe(judge(rule, facts, keeps));
      }),
      { seed: SEED, numRuns: countQuickRuns(5_000) },
    );
  });

  it.each(Object.entries(WRONG_READINGS))("would not where %s", (_name, underTest) => {
    expect(emptyFacts(underTest, 3_000).flipped).toBeGreaterThan(0);
  });
});
