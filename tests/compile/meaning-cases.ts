/** A sound policy; each case below replaces one stretch of it. */
export const SOUND = `tenbar: 1
policy:
  id: lowmere/one
  title: One
  version: "1"
  status: local
  effective: { from: 2026-04-01, to: 2027-03-31 }
deference: Local procedure stands above this policy.
facts:
  role: { at: /subject/role, one-of: [front-line, spare] }
instruments:
  dial: { quantity: pressure, division: 10 bar, rounding: down, range: [0 bar, 400 bar] }
tolerances:
  leak-drop:
    accept: { at-most: 10 bar }
    caution: { above: 5 bar }
    basis: { kind: common-practice }
checks:
  daily:
    order: { listed-by: position }
    competence: wearer
    intervals: [requalified]
    steps:
      - step: harness
        kind: confirm
      - step: number
        kind: match
        places: [back, mask]
      - step: leak
        kind: hold
        quantity: pressure
        instrument: dial
        drop: leak-drop
        after: [harness]
      - step: charge
        kind: reading
        each: subject.cylinders
        quantity: pressure
        tolerance: { accept: { at-least: 90 % of rated-pressure } }
        basis: { kind: common-practice }
      - step: seen
        kind: in-date
        within: P30D
        basis: { kind: common-practice }
intervals:
  requalified:
    of: cylinder
    every: P5Y
    counted: from-last
    date: requalifiedOn
    basis: { kind: common-practice }
rules:
  - rule: one
    require: { "==": [ { var: role }, spare ] }
    basis: { kind: common-practice }
adopted:
  - id: one
    step: daily/leak
    requirement: drop
    accept: { at-most: 20 bar }
    from: 2026-05-01
    until: 2026-05-31
    order: "TO 1"
    by: An officer
    reason: A trial
`;

type MeaningCase = readonly [from: string, to: string, code: string, line: number, mend?: string];

/** One slip each: the stretch, what stands there instead, the code, its line, and a word of the mend. */
export const CASES: readonly MeaningCase[] = [
  ["at-most: 10 bar }\n    caution", "at-most: 10bar }\n    caution", "plan/bad-quantity", 15, "`10 bar`"],
  ["at-most: 10 bar }\n    caution", 'at-most: "5,5 bar" }\n    caution', "plan/bad-quantity", 15, "`5.5 bar`"],
  ["at-most: 10 bar }\n    caution", "at-most: 10 s }\n    caution", "plan/bad-quantity", 15],
  ["at-most: 10 bar }\n    caution", "at-most: ≤ 10 bar }\n    caution", "plan/bad-quantity", 15],
  [
    "at-most: 10 bar }\n    caution",
    "between: [20 bar, 10 bar] }\n    caution",
    "plan/swapped-bounds",
    15,
    "`[10 bar, 20 bar]`",
  ],
  ["at-most: 10 bar }\n    caution", "above: 10 bar, below: 10 bar }\n    caution", "plan/empty-band", 15],
  ["at-most: 10 bar }\n    caution", "nominal: 10 bar }\n    caution", "plan/half-stated", 15, "`plus-minus`"],
  ["at-most: 10 bar }\n    caution", "nominal: 10 bar, plus-minus: 10 psi }\n    caution", "plan/mixed-units", 15],
  ["above: 5 bar", "above: 50 bar", "plan/empty-caution", 16],
  ["drop: leak-drop", "drop: leak-dorp", "plan/unknown-name", 33, "`leak-drop`"],
  ["instrument: dial", "instrument: dail", "plan/unknown-name", 32, "`dial`"],
  ["quantity: pressure, division", "quantity: duration, division", "plan/bad-quantity", 12],
  ["division: 10 bar", "division: 0 bar", "plan/not-positive", 12],
  ["range: [0 bar, 400 bar]", "range: [400 bar, 0 bar]", "plan/swapped-bounds", 12],
  ["after: [harness]", "after: [harnes]", "plan/unknown-name", 34, "`harness`"],
  ["after: [harness]", "after: [leak]", "plan/step-before-itself", 34],
  ["after: [harness]", "after: [charge]", "plan/after-later-step", 34],
  ["step: number", "step: harness", "plan/duplicate-step", 26],
  ["places: [back, mask]", "places: [back]", "plan/nothing-to-compare", 28],
  ["places: [back, mask]", "places: [back, back]", "plan/duplicate-name", 28],
  [
    "90 % of rated-pressure } }\n        basis: { kind: common-practice }",
    "90 % of rated-pressure } }",
    "plan/no-basis",
    39,
  ],
  ["of rated-pressure", "of rated-presure", "plan/unknown-name", 39, "`rated-pressure`"],
  ["of rated-pressure", "of water-capacity", "plan/wrong-dimension", 39],
  ["within: P30D", "within: P30X", "plan/bad-span", 43],
  ["    order: { listed-by: position }\n", "", "plan/no-order", 19],
  ["from: 2026-04-01, to", "from: 2026-02-30, to", "plan/bad-date", 7],
  ["from: 2026-04-01, to", "from: 2026-04, to", "plan/bad-date", 7],
  ["from: 2026-04-01, to: 2027-03-31", "from: 2027-04-01, to: 2026-03-31", "plan/dates-swapped", 7],
  ["deference: Local procedure stands above this policy.\n", "", "plan/no-deference", 2],
  ["intervals: [requalified]", "intervals: [requalifed]", "plan/unknown-name", 22, "`requalified`"],
  ["every: P5Y", "every: PT5H", "plan/bad-span", 48],
  ["{ var: role }", "{ var: rôle }", "rule/unknown-name", 54, "`role`"],
  ["}, spare ]", "}, spar ]", "rule/unknown-word", 54, "`spare`"],
  ["{ var: role }, spare", "role, spare", "rule/reads-nothing", 54, '`{"var": "role"}` where `role` stands'],
  ["{ var: role }, spare", "rolle, spare", "rule/reads-nothing", 54, '`{"var": "role"}` where `rolle` stands'],
  ['{ "==": [ { var: role }, spare ] }', "true", "rule/reads-nothing", 54, "`var`"],
  ['{ "==": [ { var: role }, spare ] }', "role", "rule/wrong-type", 54, '`{"var": "role"}`'],
  [
    '{ "==": [ { var: role }, spare ] }',
    '{ or: [ { "==": [ { var: role }, spare ] }, { in: [ role, [spare] ] } ] }',
    "rule/reads-nothing",
    54,
    '`{"var": "role"}`',
  ],
  [
    '{ "==": [ { var: role }, spare ] }',
    '{ all: [ { var: subject.cylinders }, { "==": [ id, "LM 1" ] } ] }',
    "rule/reads-nothing",
    54,
    '`{"var": "id"}`',
  ],
  [
    '{ "==": [ { var: role }, spare ] }',
    '{ ">=": [ leak.end, 5 bar ] }',
    "rule/wrong-type",
    54,
    '`{"var": "leak.end"}`',
  ],
  [
    '{ "==": [ { var: role }, spare ] }',
    '{ ">=": [ { var: leak.end }, leak.start ] }',
    "plan/bad-quantity",
    54,
    '`{"var": "leak.start"}`',
  ],
  ["    until: 2026-05-31\n", "", "plan/adoption-without-end", 57, "until"],
  ["    until: 2026-05-31\n", "    until: 2026-04-31\n", "plan/bad-date", 62],
  ["    until: 2026-05-31\n", "    until: 2026-05\n", "plan/bad-date", 62],
  ["accept: { at-most: 20 bar }", "accept: { at-most: 20 bar, above: 20 bar }", "plan/empty-band", 60],
  ["step: daily/leak", "step: daily/leek", "plan/unknown-name", 58, "`daily/leak`"],
  ["requirement: drop", "requirement: dorp", "plan/unknown-name", 59, "`drop`"],
  ["  role: {", "  station: {", "plan/shadowed-name", 10],
  ["one-of: [front-line, spare] }", "one-of: [front-line, spare], value: text }", "plan/needs-one-of", 10],
];

export const MORE: readonly MeaningCase[] = [
  [
    "drop: leak-drop",
    "drop: { accept: { at-most: 10 bar }, comparison: guarded }\n        basis: { kind: common-practice }",
    "plan/not-yet",
    33,
  ],
  [
    "quantity: pressure\n        instrument",
    "quantity: pressure\n        temperature: required\n        instrument",
    "plan/not-yet",
    32,
  ],
  ["kind: confirm\n", "kind: confirm\n        behind: leak\n", "resolve/needs-parent", 26],
  [
    "step: daily/leak\n    requirement: drop\n    accept: { at-most: 20 bar }",
    "interval: requalified\n    requirement: due\n    omit: true",
    "plan/adoption-of-interval",
    59,
  ],
  ["step: daily/leak\n    requirement: drop\n", "interval: requalified\n", "plan/adoption-of-interval", 59],
  ["step: daily/leak\n", "tolerance: leak-drop\n", "plan/needs-one-of", 59, "keep one"],
  ["    accept: { at-most: 20 bar }\n", "", "resolve/covers-nothing", 57],
  ["deference:", "extends: ./../other.yaml\ndeference:", "resolve/bad-parent", 8],
  ["deference:", "extends: ./other.yaml\ndeference:", "resolve/no-parent", 8],
];
