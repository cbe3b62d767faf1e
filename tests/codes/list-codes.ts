import { DIAGNOSTICS } from "../../src/diagnostics/index.js";
import { compilePolicy } from "../../src/index.js";
import { ENGLISH_ASSESSMENTS } from "../../src/words/index.js";

/** Every kind of step, with every limit that it can state and a caution band wherever one can stand. */
const PROBE = `tenbar: 1
policy: { id: lowmere/probe, title: Every requirement, version: "1", status: draft }
deference: Local orders stand above this policy.
tolerances:
  pressure: { accept: { at-least: 0 bar }, caution: { below: 1 bar }, basis: { kind: common-practice } }
  time: { accept: { at-least: 0 s }, caution: { below: 1 s }, basis: { kind: common-practice } }
checks:
  daily:
    order: { listed-by: position }
    competence: wearer
    intervals: [requalified]
    steps:
      - { step: confirm, kind: confirm }
      - { step: match, kind: match, places: [back, mask] }
      - step: reading
        kind: reading
        each: subject.cylinders
        quantity: pressure
        tolerance: pressure
        apart: { at-most: 1 bar }
        basis: { kind: common-practice }
      - step: drop
        kind: hold
        quantity: pressure
        start: { at-least: 1 bar }
        lasting: { at-least: 1 s }
        drop: pressure
        basis: { kind: common-practice }
      - { step: rise, kind: hold, quantity: pressure, rise: pressure }
      - { step: change, kind: hold, quantity: pressure, change: pressure }
      - { step: timing, kind: timing, tolerance: time }
      - { step: in-date, kind: in-date, within: P1D, basis: { kind: common-practice } }
intervals:
  requalified: { of: cylinder, every: P5Y, counted: from-last, date: requalifiedOn, basis: { kind: common-practice } }
rules:
  - { rule: held, require: { "==": [{ var: station }, Lowmere] }, basis: { kind: common-practice } }
`;

export interface Requirement {
  /** The kind of step, or `check`, `interval`, `rule`. */
  readonly kind: string;
  readonly name: string;
  readonly hasCaution: boolean;
}

/** What each kind of step, and the check itself, can require; read off a compiled plan. */
export function listRequirements(): readonly Requirement[] {
  const { policy, diagnostics } = compilePolicy(PROBE);
  const [check] = policy?.plan.checks ?? [];
  if (check === undefined) throw new Error(`the probe does not compile: ${JSON.stringify(diagnostics)}`);
  const inSteps = check.steps.flatMap(({ kind, requirements }) =>
    requirements.map(({ name, tolerance }) => {
      const hasCaution = tolerance?.bands.some(({ caution }) => caution.length > 0) === true;
      return { kind, name, hasCaution };
    }),
  );
  const plain = (kind: string, name: string) => ({ kind, name, hasCaution: false });
  return [
    ...inSteps,
    plain("check", "order"),
    plain("check", "competence"),
    ...check.intervals.map(({ requirement }) => plain("interval", requirement.name)),
    ...check.rules.map(({ requirement }) => plain("rule", requirement.name)),
  ];
}

/** Every code of a finding that has an outcome. */
export function listFindingCodes(): readonly string[] {
  return listRequirements().flatMap(({ kind, name, hasCaution }) => {
    const outcomes = hasCaution ? ["outside", "caution", "undecided"] : ["outside", "undecided"];
    return outcomes.map((outcome) => `${kind}/${name}-${outcome}`);
  });
}

export function listRemarkCodes(): readonly string[] {
  return Object.keys(ENGLISH_ASSESSMENTS.remarks);
}

export function listDiagnosticCodes(): readonly string[] {
  return Object.keys(DIAGNOSTICS);
}
