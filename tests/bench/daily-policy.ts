import { type PreparedPolicy, preparePolicy } from "../../src/evaluate/prepared-policy.js";
import { compilePolicy, type Policy } from "../../src/index.js";

/** The daily check of Lowmere: 29 requirements for a set of one cylinder, of the shape of the shipped open-circuit check. */
const DAILY_POLICY = `
tenbar: 1
policy: { id: lowmere/daily, title: Daily check of an open-circuit set, version: "2026.1", issuer: Lowmere Fire and Rescue Service, status: local }
deference: Local orders, the manufacturer's instructions and the competent person stand above this policy.
for: { kind: set, class: open-circuit }
instruments:
  set-gauge: { quantity: pressure, division: 10 bar, rounding: down, range: [0 bar, 400 bar] }
  stopwatch: { quantity: duration, division: 1 s, rounding: down, range: [0 s, 1 h] }
  tape: { quantity: length, division: 1 cm, rounding: down, range: [0 m, 30 m] }
tolerances:
  charge: { accept: { at-least: 90 % of rated-pressure }, caution: { below: 95 % of rated-pressure }, consequence: withdraw, basis: { kind: common-practice } }
  leak-drop: { accept: { at-most: 10 bar }, caution: { above: 5 bar }, consequence: withdraw, basis: { kind: common-practice } }
  warning-band: { accept: { nominal: 55 bar, plus-minus: 5 bar }, consequence: withdraw, basis: { kind: common-practice } }
  mask-drop: { accept: { at-most: 0 bar }, consequence: withdraw, basis: { kind: common-practice } }
  line-full-length: { accept: { at-least: 5.95 m }, consequence: refer, basis: { kind: common-practice } }
  pre-alarm-time: { accept: { between: [25 s, 35 s] }, consequence: refer, basis: { kind: common-practice } }
  full-alarm-time: { accept: { between: [5 s, 15 s] }, consequence: refer, basis: { kind: common-practice } }
checks:
  daily:
    subject: set
    competence: wearer
    order: { listed-by: position }
    steps:
      - { step: monthly-seen, kind: in-date, within: P30D, consequence: refer, basis: { kind: common-practice } }
      - { step: set-number, kind: match, places: [back-plate-left, back-plate-right, back-plate-rear, mask, log-book, tally], equals: subject.marking, consequence: refer }
      - { step: appearance, kind: confirm, consequence: refer }
      - { step: harness, kind: confirm, consequence: withdraw, defects: { pad-torn: { consequence: refer }, strap-frayed: { consequence: withdraw } } }
      - { step: torch, kind: confirm, when-fitted: torch, consequence: refer }
      - { step: line-full-length, kind: reading, quantity: length, instrument: tape, when-fitted: personal-line, tolerance: line-full-length }
      - { step: hoses-and-couplings, kind: confirm, consequence: withdraw, defects: { cap-missing: { consequence: refer } } }
      - { step: cylinder-condition, kind: confirm, each: subject.cylinders, consequence: withdraw, defects: { cover-torn: { consequence: refer } } }
      - { step: cylinder-number, kind: match, each: subject.cylinders, places: [cylinder, log-book], consequence: refer }
      - { step: cylinder-in-date, kind: in-date, each: subject.cylinders, not-past: true, consequence: refer, basis: { kind: common-practice } }
      - { step: mask-condition, kind: confirm, consequence: withdraw }
      - { step: demand-valve-condition, kind: confirm, consequence: withdraw }
      - { step: charge, kind: reading, each: subject.cylinders, quantity: pressure, instrument: set-gauge, tolerance: charge, apart: { at-most: 20 bar, consequence: refer }, basis: { kind: common-practice } }
      - { step: leak, kind: hold, quantity: pressure, instrument: set-gauge, start: { at-least: 100 bar, consequence: refer }, lasting: { at-least: 60 s, consequence: refer }, drop: leak-drop, temperature: ignored, after: [charge], basis: { kind: common-practice } }
      - { step: whistle, kind: reading, quantity: pressure, instrument: set-gauge, tolerance: warning-band, after: [leak] }
      - { step: first-breath, kind: confirm, consequence: withdraw }
      - { step: bypass, kind: confirm, consequence: withdraw }
      - { step: mask-seal, kind: hold, quantity: pressure, instrument: set-gauge, start: { at-least: 100 bar, consequence: refer }, lasting: { at-least: 8 s, consequence: refer }, drop: mask-drop, temperature: ignored, after: [whistle], basis: { kind: common-practice } }
      - { step: pre-alarm, kind: timing, when-fitted: motion-alarm, instrument: stopwatch, tolerance: pre-alarm-time }
      - { step: full-alarm, kind: timing, when-fitted: motion-alarm, instrument: stopwatch, tolerance: full-alarm-time, after: [pre-alarm] }
      - { step: hand-alarm, kind: confirm, when-fitted: motion-alarm, consequence: refer }
      - { step: finish, kind: confirm, consequence: refer }
      - { step: log-book, kind: confirm, consequence: refer }
`;

/** The daily policy, compiled and made ready to judge. */
export function prepareDailyPolicy(): { policy: Policy; prepared: PreparedPolicy } {
  return prepareText(DAILY_POLICY);
}

/** Compiles a policy text that must be free of errors. */
export function prepareText(text: string): { policy: Policy; prepared: PreparedPolicy } {
  const { policy, diagnostics } = compilePolicy(text);
  if (policy === undefined) throw new Error(`the policy has errors: ${JSON.stringify(diagnostics)}`);
  return { policy, prepared: preparePolicy(policy.plan) };
}
