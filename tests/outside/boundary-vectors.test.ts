import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate } from "../../src/index.js";

interface Vector {
  readonly source: string;
  readonly step: Readonly<Record<string, unknown>>;
  readonly evidence: Readonly<Record<string, unknown>>;
  readonly ratedPressure?: string;
  readonly local?: Readonly<Record<string, unknown>>;
  readonly requirement: string;
  readonly outcome: "within" | "outside";
}

const basis = { kind: "common-practice" };

/** One step under a policy of its own, through the whole of reading, compiling and judging. */
function judge({ step, evidence, ratedPressure, local, requirement }: Vector): string | undefined {
  const text = JSON.stringify({
    tenbar: 1,
    policy: { id: "outside/vector", title: "One vector", version: "1", status: "draft" },
    deference: "Local procedure stands above this policy.",
    facts: { reference: { at: "/local/reference", quantity: "pressure" } },
    checks: { daily: { order: "any", steps: [{ step: "one", basis, ...step }] } },
  });
  const { policy, diagnostics } = compilePolicy(text);
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
  const cylinders = ratedPressure === undefined ? undefined : [{ id: "C", ratedPressure }];
  const record = {
    tenbar: 1,
    id: "r",
    check: "daily",
    at: "2026-04-12",
    subject: { kind: "set", id: "S", cylinders },
    steps: [{ step: "one", ...evidence }],
    local,
  };
  return evaluate(policy, record).results.find((result) => result.requirement === requirement)?.outcome;
}

const hold = (accept: unknown, change = "drop") => ({ kind: "hold", quantity: "pressure", [change]: { accept } });
const reading = (accept: unknown) => ({ kind: "reading", quantity: "pressure", tolerance: { accept } });

const LEAK =
  "high-pressure leak at most 10 bar in 60 s: fire-training general-check procedure, German practice, as quoted";
const STRICT = "high-pressure leak below 10 bar: German professional lexicon, as quoted";
const WARNING = "low-pressure warning 55 ± 5 bar, ends included: EN 137, as quoted";
const ALARM = "warning at 33 % -0 +5 % of operating pressure: NFPA 1981:2013, as quoted";
const CHARGE = "charge at readiness at least 90 % of rated: German fire-service doctrine FwDV 7, as quoted";
const RECHARGE = "recharge when it falls to 90 %: 29 CFR 1910.134(h)(3)(iii); OSHA letter 19 Aug 2005";
const MASK = "at -10 mbar a change of at most 1 mbar in 1 min: vfdb 0804, as quoted";
const GAUGE =
  "gauge against a reference, ±10 bar from 300 to 100, at 70 only -5: German professional lexicon, as quoted";

const nominal = { nominal: "55 bar", "plus-minus": "5 bar" };
const share = { between: ["33 % of rated-pressure", "38 % of rated-pressure"] };
const difference = {
  kind: "reading",
  quantity: "pressure",
  tolerance: {
    "accept-by": {
      fact: "reference",
      rows: [
        { "up-to": "70 bar", accept: { between: ["-5 bar", "0 bar"] } },
        { "up-to": "300 bar", accept: { between: ["-10 bar", "10 bar"] } },
      ],
    },
  },
};

const drop = (source: string, accept: unknown, start: string, end: string, outcome: Vector["outcome"]): Vector => ({
  source,
  step: hold(accept),
  evidence: { start, end, held: "60 s" },
  requirement: "drop",
  outcome,
});
const level = (
  source: string,
  accept: unknown,
  value: string,
  outcome: Vector["outcome"],
  ratedPressure = "300 bar",
): Vector => ({
  source,
  step: reading(accept),
  evidence: { reading: value },
  ratedPressure,
  requirement: "level",
  outcome,
});
const against = (reference: string, value: string, outcome: Vector["outcome"]): Vector => ({
  source: GAUGE,
  step: difference,
  evidence: { reading: value },
  local: { reference },
  requirement: "level",
  outcome,
});
const change = (end: string, outcome: Vector["outcome"]): Vector => ({
  source: MASK,
  step: hold({ "at-most": "1 mbar" }, "change"),
  evidence: { start: "-10.0 mbar", end, held: "60 s" },
  requirement: "change",
  outcome,
});

const VECTORS: readonly Vector[] = [
  drop(LEAK, { "at-most": "10 bar" }, "300 bar", "290 bar", "within"),
  drop(STRICT, { below: "10 bar" }, "300 bar", "290 bar", "outside"),
  drop(LEAK, { "at-most": "10 bar" }, "300 bar", "289 bar", "outside"),
  drop(LEAK, { "at-most": "10 bar" }, "300.1 bar", "290.1 bar", "within"),
  drop(LEAK, { "at-most": "10 bar" }, "290.3 bar", "280.2 bar", "outside"),
  level(WARNING, nominal, "50 bar", "within"),
  level(WARNING, nominal, "60 bar", "within"),
  level(WARNING, nominal, "49 bar", "outside"),
  level(WARNING, nominal, "61 bar", "outside"),
  level(ALARM, share, "1484 psi", "outside", "4500 psi"),
  level(ALARM, share, "1485 psi", "within", "4500 psi"),
  level(ALARM, share, "1710 psi", "within", "4500 psi"),
  level(ALARM, share, "1711 psi", "outside", "4500 psi"),
  level(CHARGE, { "at-least": "90 % of rated-pressure" }, "270 bar", "within"),
  level(CHARGE, { "at-least": "90 % of rated-pressure" }, "269 bar", "outside"),
  level(CHARGE, { "at-least": "90 % of rated-pressure" }, "180 bar", "within", "200 bar"),
  level(CHARGE, { "at-least": "90 % of rated-pressure" }, "179 bar", "outside", "200 bar"),
  level(RECHARGE, { above: "90 % of rated-pressure" }, "270 bar", "outside"),
  level(RECHARGE, { above: "90 % of rated-pressure" }, "271 bar", "within"),
  change("-9.0 mbar", "within"),
  change("-8.9 mbar", "outside"),
  against("300 bar", "2 bar", "within"),
  against("300 bar", "11 bar", "outside"),
  against("70 bar", "2 bar", "outside"),
  against("70 bar", "-5 bar", "within"),
  against("70 bar", "-6 bar", "outside"),
];

describe("boundary vectors of published figures", () => {
  it.each(VECTORS.map((vector) => [vector.source, JSON.stringify(vector.evidence), vector.outcome, vector] as const))(
    "%s: %s is %s",
    (_source, _evidence, outcome, vector) => {
      expect(judge(vector)).toBe(outcome);
    },
  );
});

/**
 * Two readings taken down to 10 bar: the probability that the true drop is at most the limit. Source: P(D <= L) of a triangular
 * distribution on (d - 10, d + 10), JCGM 106 (from memory) for the rule, derived values to the last printed digit.
 */
const FLOORED: readonly (readonly [limit: number, byDrop: readonly number[]])[] = [
  [2, [0.68, 0.02, 0, 0]],
  [5, [0.875, 0.125, 0, 0]],
  [10, [1, 0.5, 0, 0]],
  [20, [1, 1, 0.5, 0]],
];

describe("the confidence of a drop of two floored readings", () => {
  const rows = FLOORED.flatMap(([limit, byDrop]) =>
    byDrop.map((confidence, index) => [limit, index * 10, confidence] as const),
  );

  it.each(rows)("at most %i bar, recorded %i bar: %d", (limit, recorded, confidence) => {
    const { policy } = compilePolicy(
      JSON.stringify({
        tenbar: 1,
        policy: { id: "outside/floored", title: "Floored", version: "1", status: "draft" },
        deference: "Local procedure stands above this policy.",
        instruments: {
          dial: { quantity: "pressure", division: "10 bar", rounding: "down", "max-error": "10 bar", errors: "shared" },
        },
        checks: {
          daily: {
            order: "any",
            steps: [{ step: "leak", instrument: "dial", basis, ...hold({ "at-most": `${limit} bar` }) }],
          },
        },
      }),
    );
    if (policy === undefined) throw new Error("the policy does not compile");
    const { results } = evaluate(policy, {
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12",
      subject: { kind: "set", id: "S" },
      steps: [{ step: "leak", start: "300 bar", end: `${300 - recorded} bar` }],
    });
    expect(results.find(({ requirement }) => requirement === "drop")?.confidence).toBe(confidence);
  });
});
