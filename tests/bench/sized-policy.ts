import type { Random } from "./random.js";

const HEAD = `tenbar: 1
policy: { id: lowmere/sized, title: A check of any length, version: "2026.1", issuer: Lowmere Fire and Rescue Service, status: local }
deference: Local orders, the manufacturer's instructions and the competent person stand above this policy.
for: { kind: set, class: open-circuit }
instruments:
  set-gauge: { quantity: pressure, division: 10 bar, rounding: down, range: [0 bar, 400 bar] }
tolerances:
  leak-drop: { accept: { at-most: 10 bar }, caution: { above: 5 bar }, consequence: withdraw, basis: { kind: common-practice } }
  warning-band: { accept: { nominal: 55 bar, plus-minus: 5 bar }, consequence: withdraw, basis: { kind: common-practice } }
  alarm-time: { accept: { between: [25 s, 35 s] }, consequence: refer, basis: { kind: common-practice } }
checks:
  daily:
    subject: set
    competence: wearer
    order: { listed-by: position }
    steps:
`;

interface StepTemplate {
  /** The step in YAML, on several lines as a brigade writes it; the name is put before it. */
  readonly yaml: readonly string[];
  readonly good: object;
  readonly bad: object;
}

const CONFIRM: StepTemplate = {
  yaml: ["kind: confirm", "ask: Is it clean, sound and where it should be?", "consequence: withdraw"],
  good: { result: "satisfactory" },
  bad: { result: "defect", defect: "torn" },
};

/** The mix of kinds of the shipped daily check, near enough: one in two is a confirmation. */
const TEMPLATES: readonly StepTemplate[] = [
  CONFIRM,
  CONFIRM,
  {
    yaml: ["kind: reading", "quantity: pressure", "instrument: set-gauge", "tolerance: warning-band"],
    good: { reading: "50 bar" },
    bad: { reading: "30 bar" },
  },
  CONFIRM,
  {
    yaml: ["kind: match", "places: [cylinder, log-book]", "consequence: refer"],
    good: { seen: { cylinder: "C-301", "log-book": "C-301" } },
    bad: { seen: { cylinder: "C-301", "log-book": "C-310" } },
  },
  CONFIRM,
  {
    yaml: [
      "kind: hold",
      "quantity: pressure",
      "instrument: set-gauge",
      "start: { at-least: 100 bar, consequence: refer }",
      "lasting: { at-least: 60 s, consequence: refer }",
      "drop: leak-drop",
      "temperature: ignored",
      "basis: { kind: common-practice }",
    ],
    good: { start: "290 bar", end: "290 bar", held: "60 s" },
    bad: { start: "90 bar", end: "60 bar", held: "30 s" },
  },
  {
    yaml: ["kind: timing", "tolerance: alarm-time"],
    good: { elapsed: "30 s" },
    bad: { elapsed: "45 s" },
  },
  CONFIRM,
  {
    yaml: ["kind: in-date", "within: P30D", "consequence: refer", "basis: { kind: common-practice }"],
    good: { on: "2026-05-01" },
    bad: { on: "2026-03-01" },
  },
];

function templateAt(index: number): StepTemplate {
  return TEMPLATES[index % TEMPLATES.length] ?? CONFIRM;
}

/** The text of a policy of one check with `count` steps. */
export function writeSizedPolicy(count: number): string {
  const steps = Array.from({ length: count }, (_, index) =>
    [`      - step: part-${index + 1}`, ...templateAt(index).yaml.map((line) => `        ${line}`)].join("\n"),
  );
  return `${HEAD}${steps.join("\n")}\n`;
}

/** Records of that check in which a share of the steps is outside; 1 is every one of them. */
export function makeSizedRecords(steps: number, count: number, bad: number, random: Random): readonly unknown[] {
  return Array.from({ length: count }, (_, number) => {
    const record = {
      tenbar: 1,
      id: `lm3-s014-${number}`,
      check: "daily",
      at: "2026-05-14T07:04:00+01:00",
      by: { id: "W-231", competence: "wearer" },
      subject: {
        kind: "set",
        id: "S-014",
        class: "open-circuit",
        cylinders: [{ id: "C-301", ratedPressure: "300 bar" }],
      },
      steps: Array.from({ length: steps }, (_, index) => {
        const template = templateAt(index);
        return { step: `part-${index + 1}`, ...(random.chance(bad) ? template.bad : template.good) };
      }),
    };
    return JSON.parse(JSON.stringify(record));
  });
}
