import fc from "fast-check";
import type { Data } from "../laws/generated-step.js";
import { allSteps, type StepParts } from "./parent-steps.js";

const local = { kind: "local", order: "LO 14" };
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const consequence = optional(fc.constantFrom("note", "advise", "refer", "refer", "withdraw", "withdraw"));
const roles = fc.constantFrom(["front-line"], ["front-line", "spare"], ["front-line", "training"]);
const scope = optional(roles.map((role) => ({ role })));

/** Drops what was left out, so that the data holds no undefined. */
export function tidy(value: unknown): Data {
  return JSON.parse(JSON.stringify(value));
}

export const INSTRUMENT_NAMES = ["dial", "digital", "set-gauge", "watch"] as const;

const instruments = fc
  .record({
    division: fc.constantFrom("10 bar", "5 bar", undefined),
    rounding: fc.constantFrom("down", "up", "nearest", undefined),
    error: fc.constantFrom("10 bar", "4 bar", undefined),
    errors: fc.constantFrom("shared", "independent", undefined),
    range: fc.constantFrom(["0 bar", "400 bar"], ["0 bar", "290 bar"], ["0 bar", "275 bar"], undefined),
    watch: fc.constantFrom(["0 s", "60 s"], ["0 s", "25 s"], undefined),
  })
  .map(({ division, rounding, error, errors, range, watch }) => ({
    dial: { quantity: "pressure", division, rounding, "max-error": error, errors, range },
    digital: { quantity: "pressure", division: "1 bar", "max-error": "4 bar", range: ["0 bar", "350 bar"] },
    "set-gauge": { "one-of": ["dial", "digital"] },
    watch: { quantity: "duration", division: "1 s", range: watch },
  }));

const tolerances = fc
  .record({
    own: consequence,
    close: optional(fc.constantFrom({ below: "54 bar" }, { "at-most": "20 % of rated-pressure" })),
    front: fc.constantFrom({ between: ["50 bar", "60 bar"] }, { above: "50 bar" }, { "at-most": "60 bar" }),
    spare: fc.constantFrom({ "at-least": "40 bar" }, { "at-least": "15 % of rated-pressure" }),
  })
  .map(({ own, close, front, spare }) => ({
    warning: {
      basis: { kind: "common-practice" },
      consequence: own,
      cases: [
        { for: { role: ["front-line", "training"] }, accept: front, caution: close },
        { for: { role: "spare" }, accept: spare },
      ],
    },
    medium: {
      basis: local,
      "accept-by": {
        fact: "rated-pressure",
        rows: [
          { "up-to": "200 bar", accept: { between: ["5 bar", "9 bar"] } },
          { "up-to": "300 bar", accept: { between: ["6 bar", "10 bar"] }, caution: { above: "8 bar" } },
        ],
      },
    },
  }));

const intervals = fc
  .record({
    every: fc.constantFrom("P5Y", "P2Y", "P60M"),
    serviced: fc.constantFrom("P1Y", "P12M", "P360D"),
    one: consequence,
    other: consequence,
    scope,
  })
  .map(({ every, serviced, one, other, scope: asked }) => ({
    requalified: { of: "cylinder", every, counted: "from-last", date: "requalifiedOn", consequence: one, basis: local },
    serviced: {
      of: "set",
      every: serviced,
      counted: "from-last",
      date: "servicedOn",
      for: asked,
      consequence: other,
      basis: local,
    },
  }));

/** All hold for a good record. */
export const RULE_TERMS: readonly unknown[] = [
  { "==": [{ var: "role" }, "front-line"] },
  { "!=": [{ var: "role" }, "training"] },
  { ">=": [{ var: "rated-pressure" }, "300 bar"] },
  { all: [{ var: "subject.cylinders" }, { ">": [{ var: "ratedPressure" }, "200 bar"] }] },
  { "==": [{ var: "shift" }, "red"] },
];

const rules = fc
  .record({
    when: optional(fc.constantFrom(...RULE_TERMS)),
    require: fc.constantFrom(...RULE_TERMS),
    one: consequence,
    scope,
  })
  .map(({ when, require, one, scope: asked }) => [
    { rule: "seen", checks: ["daily"], for: asked, when, require, consequence: one, basis: local },
  ]);

const check = fc.record({
  formerly: optional(fc.constant(["start-of-shift"])),
  for: scope,
  subject: fc.constantFrom<unknown>(undefined, "set", { kind: "set", formerly: ["old-set"] }),
  competence: optional(fc.constantFrom<unknown>("wearer", ["wearer", "technician"])),
  consequence: fc.constantFrom(undefined, undefined, undefined, "refer", "withdraw", "note"),
  intervals: fc.constantFrom(undefined, ["requalified"], ["serviced"], ["requalified", "serviced"]),
  order: fc.constantFrom<unknown>("any", "any", { "listed-by": "position" }, { "listed-by": "at" }),
});

const parts = fc.record({
  effective: optional(fc.constant({ from: "2026-04-01", to: "2026-04-12" })),
  undecided: optional(fc.constant("as-outside")),
  scope: fc.constantFrom<unknown>(undefined, { kind: "set" }, { kind: ["set", "old-set"], role: ["front-line"] }),
  instruments,
  tolerances,
  intervals,
  rules: optional(rules),
  check,
  steps: allSteps,
  afters: fc.boolean(),
});

const AFTER_USE = {
  order: "any",
  steps: [{ step: "clean", kind: "confirm", consequence: "refer" }],
};

/** Steps named in `after` that are not there are left out of it; under `any` it may name none at all. */
function nameAfter(steps: StepParts, isWanted: boolean): readonly Data[] {
  const names = steps.map(({ step }) => step);
  return steps.map((step) => {
    const after = (step.step === "leak" ? ["charge"] : step.step === "label" ? ["charge", "number"] : []).filter(
      (name) => names.includes(name),
    );
    return isWanted && after.length > 0 ? { ...step, after } : step;
  });
}

/** A policy of all kinds of parts, as data. Its limits lie around what a good record says. */
export const generatedParent: fc.Arbitrary<Data> = parts.map(
  ({ effective, undecided, scope: asked, check: daily, steps, afters, ...named }) =>
    tidy({
      tenbar: 1,
      policy: { id: "generated/parent", title: "Generated", version: "1", status: "draft", effective },
      deference: "Local procedure stands above this policy.",
      undecided,
      for: asked,
      facts: {
        role: { at: "/subject/role", "one-of": ["front-line", "spare", "training"] },
        shift: { at: "/local/shift", value: "text" },
      },
      ...named,
      checks: { daily: { ...daily, steps: nameAfter(steps, afters) }, "after-use": AFTER_USE },
    }),
);
