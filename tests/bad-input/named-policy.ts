/** The one name on the prototype of every object that is also a good name in a policy. */
export const BUILT_IN = "constructor";

const BASIS = { kind: "common-practice" };

/** A sound policy in which everything that its author may name has one name. */
export function nameEverything(name: string) {
  return {
    tenbar: 1,
    policy: { id: "lowmere/names", title: "Names of built-ins", version: "1", status: "draft" },
    deference: "Local procedure stands above this policy.",
    for: { kind: name },
    facts: { [name]: { at: `/local/${name}`, "one-of": [name, "another"] } },
    instruments: {
      [name]: { quantity: "pressure", division: "10 bar" },
      gauge: { "one-of": [name] },
    },
    tolerances: { [name]: { accept: { "at-most": "10 bar" }, basis: BASIS } },
    checks: {
      [name]: {
        subject: name,
        competence: name,
        order: "any",
        intervals: [name],
        steps: [
          {
            step: name,
            kind: "confirm",
            "when-fitted": name,
            attestable: true,
            defects: { [name]: { consequence: "refer" } },
          },
          { step: "numbers", kind: "match", places: [name, "mask"] },
          { step: "gauge", kind: "reading", quantity: "pressure", instrument: "gauge", tolerance: name },
          {
            step: "alarm",
            kind: "timing",
            "from-event": name,
            "to-event": "sound",
            tolerance: { accept: { "at-most": "5 s" } },
            basis: BASIS,
          },
          { step: "marking", kind: "match", places: ["mask", "tally"], equals: `subject.${name}` },
        ],
      },
    },
    intervals: { [name]: { of: name, every: "P1Y", counted: "from-last", date: name, basis: BASIS } },
    rules: [
      { rule: name, require: { "==": [{ var: name }, name] }, basis: BASIS },
      { rule: "by-slot", require: { "==": [{ var: `${name}.result` }, "satisfactory"] }, basis: BASIS },
    ],
  };
}

/** A record of that policy with nothing in it, its maps empty: whatever is found in them comes from a prototype. */
export const EMPTY_RECORD = {
  tenbar: 1,
  id: "lm1-1",
  check: BUILT_IN,
  at: "2026-04-12",
  by: {},
  subject: { kind: BUILT_IN, id: "S-014", fitted: {}, instruments: {} },
  local: {},
  steps: [
    { step: "numbers", seen: {} },
    { step: "gauge" },
    { step: "alarm", events: {} },
    { step: "marking", seen: { mask: "Object", tally: "Object" } },
  ],
};

const FULL_STEPS: readonly Readonly<Record<string, unknown>>[] = [
  { step: BUILT_IN, result: "satisfactory" },
  { step: "numbers", seen: { [BUILT_IN]: "014", mask: "014" } },
  { step: "gauge", reading: "10 bar" },
  { step: "alarm", events: { [BUILT_IN]: "2026-04-12T07:04:00Z", sound: "2026-04-12T07:04:03Z" } },
  { step: "marking", seen: { mask: "2026-01-01", tally: "2026-01-01" } },
];

/** A record that states all of it by keys of its own. */
export const FULL_RECORD = {
  ...EMPTY_RECORD,
  by: { id: "W-231", competence: BUILT_IN },
  local: { [BUILT_IN]: BUILT_IN },
  subject: {
    kind: BUILT_IN,
    id: "S-014",
    [BUILT_IN]: "2026-01-01",
    fitted: { [BUILT_IN]: true },
    instruments: { gauge: BUILT_IN },
  },
  steps: FULL_STEPS,
};
