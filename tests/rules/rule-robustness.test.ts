import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DIAGNOSTICS } from "../../src/diagnostics/index.js";
import { describeRule, listRuleNames, prepareRule, type RuleExpression } from "../../src/rules/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { SEED } from "../quantities/read-sample.js";
import { COMPLETE_FACTS, readFacts } from "./generate-facts.js";
import { generateRules } from "./generate-rules.js";
import { compileSample, compileValid, makeFacts, TYPES } from "./rule-samples.js";

const KEYS =
  "var and or ! if == != < <= > >= + - abs min max in all some none count === missing constructor __proto__ toString";
const LEAVES = [
  ...TYPES.keys(),
  "training",
  "10 bar",
  "10",
  "2026-03-01",
  "",
  0,
  1,
  1.5,
  -0,
  1e300,
  true,
  false,
  null,
  {},
  [],
];

/** Nearly rules: operators, names and literals put together without sense, by way of JSON text so that any key may stand. */
const NEARLY_RULES: fc.Arbitrary<unknown> = fc
  .letrec<{ term: string; leaf: string }>((tie) => ({
    leaf: fc.oneof(
      fc.constantFrom(...LEAVES).map((leaf) => JSON.stringify(leaf)),
      fc.constantFrom(...TYPES.keys()).map((name) => JSON.stringify({ var: name })),
    ),
    term: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      tie("leaf"),
      fc
        .array(fc.tuple(fc.constantFrom(...KEYS.split(" ")), fc.array(tie("term"), { maxLength: 3 })), {
          minLength: 1,
          maxLength: 1,
        })
        .map(
          (entries) =>
            `{${entries.map(([key, operands]) => `${JSON.stringify(key)}:[${operands.join(",")}]`).join(",")}}`,
        ),
      fc
        .tuple(fc.constantFrom(...KEYS.split(" ")), tie("term"))
        .map(([key, operand]) => `{${JSON.stringify(key)}:${operand}}`),
    ),
  }))
  .term.map((text) => JSON.parse(text));

/** What JSON Pointer leads to (RFC 6901), or a thrown error where it leads nowhere. */
function followPointer(value: unknown, pointer: string): unknown {
  return pointer
    .split("/")
    .slice(1)
    .map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"))
    .reduce<unknown>((inner, key) => {
      if (typeof inner !== "object" || inner === null || !Object.hasOwn(inner, key)) {
        throw new Error(`\`${pointer}\` leads nowhere`);
      }
      return Object.entries(inner).find(([own]) => own === key)?.[1];
    }, value);
}

function checkRefusal(term: unknown): RuleExpression | undefined {
  const { expression, faults } = compileSample(term);
  expect(faults.length > 0).toBe(expression === undefined);
  const places = faults.map(({ code, pointer, params }) => {
    expect(Object.keys(DIAGNOSTICS)).toContain(code);
    followPointer(term, pointer);
    return JSON.stringify([code, pointer, params]);
  });
  expect(new Set(places).size).toBe(places.length);
  return expression;
}

describe("any JSON value", () => {
  it("is compiled or refused with a reason at a place inside it", () => {
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), fc.jsonValue({ depthSize: "large" })), (term) => {
        checkRefusal(term);
      }),
      { seed: SEED, numRuns: countQuickRuns(5_000) },
    );
  });

  it("that looks like a rule is judged to one of three values, or refused", () => {
    let accepted = 0;
    let refused = 0;
    fc.assert(
      fc.property(NEARLY_RULES, COMPLETE_FACTS, (term, facts) => {
        const expression = checkRefusal(term);
        if (expression === undefined) {
          refused += 1;
          return;
        }
        accepted += 1;
        expect([true, false]).toContain(prepareRule(expression)(readFacts(facts)));
        expect([true, false, undefined]).toContain(prepareRule(expression)(makeFacts({})));
      }),
      { seed: SEED, numRuns: countQuickRuns(20_000) },
    );
    expect(accepted).toBeGreaterThan(500);
    expect(refused).toBeGreaterThan(500);
  });

  it("put in the place of a part of a valid rule spoils nothing but that rule", () => {
    fc.assert(
      fc.property(generateRules(3), fc.jsonValue(), fc.nat(), (rule, stray, place) => {
        checkRefusal(replacePart(rule.term, stray, { left: place % 8 }));
      }),
      { seed: SEED, numRuns: countQuickRuns(10_000) },
    );
  });
});

/** Replaces the part that the countdown reaches first; the whole where it reaches none. */
function replacePart(term: unknown, stray: unknown, countdown: { left: number }): unknown {
  if (countdown.left === 0) {
    countdown.left -= 1;
    return stray;
  }
  countdown.left -= 1;
  if (Array.isArray(term)) return term.map((part: unknown) => replacePart(part, stray, countdown));
  if (typeof term !== "object" || term === null) return term;
  return Object.fromEntries(Object.entries(term).map(([key, part]) => [key, replacePart(part, stray, countdown)]));
}

describe("a compiled rule", () => {
  it("is plain JSON and judges the same when it is read back", () => {
    fc.assert(
      fc.property(generateRules(3), COMPLETE_FACTS, (rule, facts) => {
        const expression = compileValid(rule.term);
        // Boundary: the text is this expression's own.
        const restored = JSON.parse(JSON.stringify(expression)) as RuleExpression;
        expect(restored).toEqual(expression);
        expect(prepareRule(restored)(readFacts(facts))).toBe(prepareRule(expression)(readFacts(facts)));
      }),
      { seed: SEED, numRuns: countQuickRuns(3_000) },
    );
  });

  it("is described on one line that names what it reads, with its brackets in pairs", () => {
    fc.assert(
      fc.property(generateRules(3), (rule) => {
        const expression = compileValid(rule.term);
        const words = describeRule(expression);
        for (const name of listRuleNames(expression)) expect(words).toContain(name);
        expect(words).not.toMatch(/\n|undefined|\[object/);
        expect(words.split("(").length).toBe(words.split(")").length);
      }),
      { seed: SEED, numRuns: countQuickRuns(3_000) },
    );
  });
});
