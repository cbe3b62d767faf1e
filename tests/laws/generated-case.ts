import fc from "fast-check";
import { compilePolicy, type Policy } from "../../src/index.js";
import {
  CYLINDERS,
  chargeStep,
  confirmStep,
  type Data,
  dateStep,
  type GeneratedStep,
  holdStep,
  matchStep,
  RATED_BAR,
  timingStep,
  unfittedStep,
  whistleStep,
} from "./generated-step.js";

/** A policy, as data and compiled, and a record under which everything that it asks is well. */
export interface GeneratedCase {
  readonly data: Data;
  readonly policy: Policy;
  readonly record: Data;
}

const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const local = { kind: "local", order: "LO 14" };
const dial = { quantity: "pressure", division: "10 bar", rounding: "down", range: ["0 bar", "400 bar"] };

const RULE = { rule: "seen", checks: ["daily"], require: { "!=": [{ var: "role" }, "scrapped"] }, basis: local };
const INTERVAL = { of: "cylinder", every: "P5Y", counted: "from-last", date: "requalifiedOn", basis: local };
const WARNING = {
  basis: { kind: "common-practice" },
  cases: [
    { for: { role: ["front-line"] }, accept: { between: ["50 bar", "80 bar"] } },
    { for: { role: ["spare"] }, accept: { "at-least": "40 bar" } },
  ],
};

const parts = fc.record({
  order: fc.constantFrom<unknown>("any", { "listed-by": "position" }, { "listed-by": "at" }),
  competence: optional(fc.constantFrom<unknown>("wearer", ["wearer", "technician"])),
  consequence: optional(fc.constantFrom("refer", "withdraw")),
  intervals: optional(fc.constant(["requalified"])),
  rules: fc.boolean(),
  undecided: optional(fc.constant("as-outside")),
  role: fc.constantFrom("front-line", "spare"),
  others: fc.tuple(
    optional(confirmStep),
    optional(matchStep),
    optional(whistleStep),
    optional(holdStep),
    optional(timingStep),
    optional(dateStep),
  ),
  charge: chargeStep,
  unfitted: optional(fc.constant(unfittedStep)),
});

/** Drops what was left out, so that the data holds no undefined. */
function tidy(value: Data): Data {
  return JSON.parse(JSON.stringify(value));
}

export const generatedCase: fc.Arbitrary<GeneratedCase> = parts.map(
  ({ others, charge, unfitted, rules, undecided, role, intervals, ...check }) => {
    const given: readonly (GeneratedStep | undefined)[] = [...others, unfitted];
    const steps = [charge, ...given.filter((one) => one !== undefined)];
    const data = tidy({
      tenbar: 1,
      policy: { id: "generated/laws", title: "Generated", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      undecided,
      for: { kind: "set" },
      facts: { role: { at: "/subject/role", "one-of": ["front-line", "spare", "scrapped"] } },
      instruments: { dial, digital: { ...dial, division: "1 bar" }, "set-gauge": { "one-of": ["dial", "digital"] } },
      tolerances: steps.some(({ step }) => step.tolerance === "warning") ? { warning: WARNING } : undefined,
      intervals: intervals === undefined ? undefined : { requalified: INTERVAL },
      rules: rules ? [RULE] : undefined,
      checks: { daily: { ...check, intervals, steps: steps.map(({ step }) => step) } },
    });
    const entries = steps.flatMap((one) => one.entries);
    const record = tidy({
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12T07:30:00Z",
      by: { id: "W-231", competence: "wearer" },
      subject: {
        kind: "set",
        id: "S-014",
        marking: "014",
        role,
        ratedPressure: `${RATED_BAR} bar`,
        fitted: { alarm: true, lamp: false },
        cylinders: CYLINDERS.map((id) => ({ id, ratedPressure: `${RATED_BAR} bar`, requalifiedOn: "2024-05-02" })),
      },
      steps: entries.map((entry, index) => ({ ...entry, at: `2026-04-12T07:${10 + index}:00Z` })),
    });
    const { policy, diagnostics } = compilePolicy(JSON.stringify(data));
    if (policy === undefined) throw new Error(JSON.stringify({ diagnostics, data }));
    return { data, policy, record };
  },
);
