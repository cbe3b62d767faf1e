import { describe, expect, it } from "vitest";
import { german } from "../../src/german.js";
import { compilePolicy } from "../../src/index.js";

const BASIS = "basis: { kind: common-practice }";
const BASE = `tenbar: 1
policy: { id: lowmere/one, title: One, version: "1", status: local }
deference: Local procedure stands above this policy.
facts:
  role: { at: /subject/role, one-of: [front-line, spare] }
tolerances:
  leak-drop: { accept: { at-most: 5 bar }, ${BASIS} }
  charge:
    cases:
      - { for: { role: [front-line] }, accept: { between: [280 bar, 310 bar] } }
      - { for: { role: [spare] }, accept: { at-least: 90 % of rated } }
    ${BASIS}
intervals:
  serviced: { of: set, every: P1Y, counted: from-last, date: servicedOn, ${BASIS} }
checks:
  daily:
    order: any
    competence: [instructor]
    intervals: [serviced]
    steps:
      - { step: leak, kind: hold, quantity: pressure, drop: leak-drop }
      - { step: charge, kind: reading, quantity: pressure, tolerance: charge }
      - { step: seen, kind: in-date, within: P30D, ${BASIS} }
      - { step: harness, kind: confirm, consequence: withdraw }
`.replace("facts:\n", "facts:\n  rated: { at: /subject/ratedPressure, quantity: pressure }\n");

const HEAD = 'tenbar: 1\npolicy: { id: lowmere/two, title: Two, version: "1", status: local }\nextends: ./one.yaml\n';
const steps = (line: string) => `checks:\n  daily:\n    steps:\n      - ${line}\n`;

/** What a child states, and what the warning says of the two sides; `code` is `resolve/looser` where none is named. */
const ROWS = [
  [
    "a limit",
    `tolerances:\n  leak-drop: { accept: { at-most: 10 bar }, ${BASIS} }\n`,
    "at most `10 bar`",
    "at most `5 bar`",
  ],
  [
    "the case that differs",
    `tolerances:\n  charge:\n    cases:\n      - { for: { role: [front-line] }, accept: { between: [270 bar, 310 bar] } }\n      - { for: { role: [spare] }, accept: { at-least: 90 % of rated } }\n    ${BASIS}\n`,
    "`role: front-line` at least `270 bar` and at most `310 bar`",
    "`role: front-line` at least `280 bar` and at most `310 bar`",
  ],
  ["a consequence", steps("{ step: harness, kind: confirm, consequence: refer }"), "`refer`", "`withdraw`"],
  [
    "a span",
    steps(`{ step: seen, kind: in-date, within: P60D, ${BASIS} }`),
    "at most 60 days old",
    "at most 30 days old",
  ],
  [
    "an interval",
    `intervals:\n  serviced: { of: set, every: P2Y, counted: from-last, date: servicedOn, ${BASIS} }\n`,
    "every 2 years",
    "every year",
  ],
  [
    "a competence",
    "checks:\n  daily: { competence: [instructor, wearer] }\n",
    "`instructor` or `wearer`",
    "`instructor`",
  ],
] as const;

describe("a part looser than the parent's", () => {
  it.each(ROWS)("is told with both sides: %s", (_part, text, limit, parentLimit) => {
    const { diagnostics } = compilePolicy(`${HEAD}${text}`, { parents: { "./one.yaml": BASE } });
    const [first, ...others] = diagnostics;
    expect([first?.code, others]).toEqual(["resolve/looser", []]);
    expect(first?.params).toMatchObject({ limit, parentLimit });
    expect(first?.message).toMatch(/: here .* \(policy\.yaml:\d+:\d+\), there .* \(\.\/one\.yaml:\d+:\d+\)$/);
  });

  it("is told in the language of the diagnostics", () => {
    const [[, text]] = ROWS;
    const { diagnostics } = compilePolicy(`${HEAD}${text}`, { parents: { "./one.yaml": BASE }, words: german });
    expect(diagnostics[0]?.message).toMatch(/; hier höchstens `10 bar` \(.*\), dort höchstens `5 bar` \(.*\)$/);
  });

  it("is told by its places alone where no figure says it", () => {
    const text = steps("{ step: harness, kind: confirm, attestable: true }");
    const { diagnostics } = compilePolicy(`${HEAD}${text}`, { parents: { "./one.yaml": BASE } });
    expect(diagnostics.map(({ code, params }) => [code, params["limit"], params["parentLimit"]])).toEqual([
      ["resolve/looser", undefined, undefined],
    ]);
  });
});
