// The limits are common practice, no source; Lowmere and everything in it is invented.
export const POLICY_TEXT = `tenbar: 1
policy:
  id: lowmere/leak-only
  title: Leak check of Lowmere
  version: "2026.1"
  issuer: Lowmere Fire and Rescue Service
  status: local
  effective: { from: 2026-04-01, review: 2027-02-01 }
deference: Local orders, the manufacturer's instructions and the competent person stand above this policy.
cautions:
  - Anyone in doubt about a set takes it off the run.
for: { kind: set }
instruments:
  dial: { quantity: pressure, division: 10 bar, rounding: down, max-error: 10 bar, errors: shared, range: [0 bar, 400 bar] }
tolerances:
  leak-drop:
    accept: { at-most: 10 bar }
    caution: { above: 5 bar }
    consequence: withdraw
    basis: { kind: common-practice }
checks:
  daily:
    title: Start-of-shift check
    subject: set
    order: any
    steps:
      - step: harness
        kind: confirm
        ask: Straps, buckles and back plate are sound
        consequence: refer
      - step: leak
        kind: hold
        quantity: pressure
        instrument: dial
        start: { at-least: 100 bar }
        basis: { kind: common-practice }
        lasting: { at-least: 60 s }
        drop: leak-drop
        temperature: ignored
`;

interface SampleOptions {
  readonly id?: string;
  readonly end?: string;
  readonly harness?: string;
  readonly extra?: Readonly<Record<string, unknown>>;
}

/** A record of the daily check that meets the policy unless told otherwise; its drop is from 290 bar to `end`. */
export function makeRecord({
  id = "lm1-1",
  end = "290 bar",
  harness = "satisfactory",
  extra = {},
}: SampleOptions = {}) {
  return {
    tenbar: 1,
    id,
    check: "daily",
    at: "2026-04-12T07:04:00+01:00",
    subject: { kind: "set", id: "S-014" },
    steps: [
      { step: "harness", result: harness },
      { step: "leak", start: "290 bar", end, held: "60 s" },
    ],
    ...extra,
  };
}

/** The same as one line of JSON. */
export function writeRecord(options: SampleOptions = {}): string {
  return JSON.stringify(makeRecord(options));
}
