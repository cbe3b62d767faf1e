import { describe, expect, it } from "vitest";
import { assess, makePolicy, summarise } from "./sample.js";

const basis = { kind: "common-practice" };
const instruments = {
  dial: { quantity: "pressure", division: "10 bar", rounding: "down", range: ["0 bar", "400 bar"] },
};
const leak = {
  step: "leak",
  kind: "hold",
  quantity: "pressure",
  instrument: "dial",
  start: { "at-least": "100 bar" },
  lasting: { "at-least": "60 s" },
  drop: { accept: { "at-most": "10 bar" } },
  basis,
};

describe("hold", () => {
  const policy = makePolicy([leak], { instruments });
  const judge = (evidence: Record<string, unknown>) => {
    const {
      "leak start": start,
      "leak lasting": lasting,
      "leak drop": drop,
    } = summarise(assess(policy, [{ step: "leak", ...evidence }]));
    return [start, lasting, drop];
  };

  it.each([
    [{ start: "290 bar", end: "280 bar", held: "60 s" }, ["within", "within", "within"]],
    [{ start: "290 bar", end: "270 bar", held: "60 s" }, ["within", "within", "outside"]],
    [{ start: "290 bar", end: "300 bar", held: "60 s" }, ["within", "within", "within"]],
    [{ start: "270 bar", end: "290 bar", held: "60 s" }, ["within", "within", "undecided: moved-the-wrong-way"]],
    [{ start: "290 bar", end: "290 bar", held: "59 s" }, ["within", "outside", "undecided: hold-too-short"]],
    [{ start: "290 bar", end: "290 bar" }, ["within", "undecided: missing", "undecided: hold-too-short"]],
    [{ start: "90 bar", end: "90 bar", held: "60 s" }, ["outside", "within", "undecided: start-too-low"]],
    [{ start: "90 bar", end: "60 bar", held: "5 s" }, ["outside", "outside", "outside"]],
    [{ start: "290 bar", end: "4200 psi", held: "60 s" }, ["within", "within", "undecided: mixed-units"]],
    [{ start: "290 bar", end: "28500 kPa", held: "1 min" }, ["within", "within", "within"]],
    [{ start: "290 bar", end: "290 bar", held: "-60 s" }, ["within", "outside", "undecided: hold-too-short"]],
    [{ start: "290 bar", held: "60 s" }, ["within", "within", "undecided: missing"]],
    [
      { start: "290", end: "many bar", held: 60 },
      ["undecided: no-unit", "undecided: no-unit", "undecided: unreadable"],
    ],
    [
      { start: "290 s", end: "290 furlong", held: "60 s" },
      ["undecided: wrong-dimension", "within", "undecided: unknown-unit"],
    ],
    [{ start: "410 bar", end: "410 bar", held: "60 s" }, ["undecided: off-range", "within", "undecided: off-range"]],
    [
      { start: "0.000000001 bar", end: "0 bar", held: "60 s" },
      ["undecided: too-fine", "within", "undecided: too-fine"],
    ],
    [{ result: "not-done" }, ["undecided: not-done", "undecided: not-done", "undecided: not-done"]],
    [
      { start: "290 bar", end: "290 bar", held: "60 s", instrument: "watch" },
      ["undecided: instrument-unknown", "within", "undecided: instrument-unknown"],
    ],
  ])("%j", (evidence, expected) => {
    expect(judge(evidence)).toEqual(expected);
  });

  it("counts a size either way, and a rise as a rise", () => {
    const { start: _start, lasting: _lasting, drop, ...rest } = leak;
    const judgeBy = (change: string, end: string) =>
      summarise(
        assess(makePolicy([{ ...rest, [change]: drop }], { instruments }), [{ step: "leak", start: "290 bar", end }]),
      )[`leak ${change}`];
    expect([judgeBy("change", "270 bar"), judgeBy("change", "310 bar"), judgeBy("change", "300 bar")]).toEqual([
      "outside",
      "outside",
      "within",
    ]);
    expect([judgeBy("rise", "310 bar"), judgeBy("rise", "300 bar"), judgeBy("rise", "270 bar")]).toEqual([
      "outside",
      "within",
      "undecided: moved-the-wrong-way",
    ]);
  });
});

describe("reading", () => {
  const charge = {
    step: "charge",
    kind: "reading",
    quantity: "pressure",
    tolerance: { accept: { between: ["50 bar", "60 bar"] } },
    basis,
  };
  const judge = (evidence: Record<string, unknown>) =>
    summarise(assess(makePolicy([charge]), [{ step: "charge", ...evidence }]))["charge level"];

  it.each([
    [{ reading: { atMost: "40 bar" } }, "outside"],
    [{ reading: { atMost: "55 bar" } }, "undecided: uncertainty"],
    [{ reading: { between: ["50 bar", "60 bar"] } }, "within"],
    [{ reading: { between: ["61 bar", "70 bar"] } }, "outside"],
    [{ reading: { between: ["55 bar", "61 bar"] } }, "undecided: uncertainty"],
    [{ reading: { between: ["60 bar", "50 bar"] } }, "undecided: conflicting"],
    [{ reading: { between: ["50 bar", "900 psi"] } }, "undecided: mixed-units"],
    [{ reading: { between: ["50 bar"] } }, "undecided: unreadable"],
    [{ reading: { atMost: "55 bar", between: ["50 bar", "55 bar"] } }, "undecided: unreadable"],
    [{ occurred: false }, "outside"],
    [{ occurred: false, reading: "55 bar" }, "outside"],
    [{ occurred: true }, "undecided: missing"],
    [{ occurred: "no", reading: "55 bar" }, "undecided: unreadable"],
    [{ reading: { unit: "bar", values: [55, 55] } }, "undecided: unreadable"],
  ])("%j is %s", (evidence, outcome) => {
    expect(judge(evidence)).toBe(outcome);
  });

  it("says that a trace is not judged, and never takes it for nothing", () => {
    const assessment = assess(makePolicy([charge]), [
      { step: "charge", reading: "55 bar", trace: { unit: "bar", values: [55, 20] } },
    ]);
    expect(assessment.findings.map(({ code, consequence }) => [code, consequence])).toEqual([
      ["step/trace-not-judged", "refer"],
    ]);
  });

  // Nothing is deeper or holds less than nothing, as no time is shorter; a gauge reads pressure against the air around it.
  it.each([
    ["length", { "at-most": "1.5 mm" }, "-5 mm", "undecided: conflicting"],
    ["length", { "at-most": "1.5 mm" }, { atMost: "-5 mm" }, "undecided: conflicting"],
    ["length", { "at-most": "1.5 mm" }, { between: ["-5 mm", "1 mm"] }, "within"],
    ["length", { "at-most": "1.5 mm" }, "-0 mm", "within"],
    ["length", { between: ["-5 mm", "1.5 mm"] }, "-5 mm", "within"],
    ["length", { "at-least": "1.5 mm" }, "-5 mm", "outside"],
    ["length", { "at-most": "-6 mm" }, "-5 mm", "outside"],
    ["fraction", { below: "5 ppm" }, "-1 ppm", "undecided: conflicting"],
    ["mass-concentration", { "at-most": "0.5 mg/m3" }, "-0.1 mg/m3", "undecided: conflicting"],
    ["count", { "at-most": 3 }, -1, "undecided: conflicting"],
    ["temperature", { "at-most": "60 Cel" }, "-5 Cel", "within"],
    ["temperature", { "at-most": "60 Cel" }, "-274 Cel", "undecided: unreadable"],
    ["pressure", { "at-most": "5 mbar" }, "-5 mbar", "within"],
    ["sound-level", { "at-most": "5 dB" }, "-5 dB", "within"],
  ])("of %s with %o reads %o: %s", (quantity, accept, reading, outcome) => {
    const policy = makePolicy([{ step: "dent", kind: "reading", quantity, tolerance: { accept }, basis }]);
    expect(summarise(assess(policy, [{ step: "dent", reading }]))).toEqual({ "dent level": outcome });
  });

  describe("of each cylinder", () => {
    const each = makePolicy([
      { ...charge, each: "subject.cylinders", apart: { "at-most": "5 bar", consequence: "refer" } },
    ]);
    const cylinders = [{ id: "A" }, { id: "B" }];
    const judgeEach = (steps: readonly Record<string, unknown>[], list: unknown = cylinders) =>
      summarise(
        assess(
          each,
          steps.map((step) => ({ step: "charge", ...step })),
          { cylinders: list },
        ),
      );

    it.each([
      [
        [
          { of: "A", reading: "50 bar" },
          { of: "B", reading: "55 bar" },
        ],
        ["within", "within", "within"],
      ],
      [
        [
          { of: "A", reading: "50 bar" },
          { of: "B", reading: "56 bar" },
        ],
        ["within", "within", "outside"],
      ],
      [[{ of: "A", reading: "50 bar" }], ["within", "undecided: missing", "undecided: missing"]],
      [[{ reading: "50 bar" }], ["undecided: missing", "undecided: missing", "undecided: missing"]],
      [[{ reading: "10 bar" }], ["outside", "outside", "undecided: missing"]],
      [
        [
          { of: "A", reading: "50 bar" },
          { of: "C", reading: "50 bar" },
        ],
        ["undecided: conflicting", "undecided: conflicting", "undecided: conflicting"],
      ],
      [
        [
          { of: "A", reading: "50 bar" },
          { of: "B", reading: "800 psi" },
        ],
        ["within", "within", "undecided: mixed-units"],
      ],
      [
        [
          { of: "A", reading: "50 bar" },
          { of: "A", reading: "51 bar" },
          { of: "B", reading: "50 bar" },
        ],
        ["undecided: conflicting", "within", "undecided: conflicting"],
      ],
      [
        [
          { of: "A", reading: "50 bar" },
          { of: "A", reading: "50 bar", note: "again" },
          { of: "B", reading: "50 bar" },
        ],
        ["within", "within", "within"],
      ],
    ])("%j", (steps, [first, second, apart]) => {
      expect(judgeEach(steps)).toEqual({ "charge level A": first, "charge level B": second, "charge apart": apart });
    });

    it("needs the list, and tells members that share a name or have none", () => {
      expect(judgeEach([{ reading: "50 bar" }], null)).toEqual({
        "charge level": "undecided: fact-missing",
        "charge apart": "undecided: fact-missing",
      });
      expect(judgeEach([{ reading: "50 bar" }], [{ id: "A" }])).toEqual({
        "charge level A": "within",
        "charge apart": "not-applicable: only-one",
      });
      expect(judgeEach([{ reading: "50 bar" }], [{}])).toMatchObject({ "charge level #1": "undecided: fact-missing" });
      expect(judgeEach([{ of: "A", reading: "50 bar" }], [{ id: "A" }, { id: "A" }])).toMatchObject({
        "charge level A": "undecided: conflicting",
      });
    });
  });
});

describe("limits by a quantity", () => {
  // The row of the smallest would take whatever lies below it.
  it.each([
    ["8 m", "outside"],
    ["0 m", "within"],
    ["-8 m", "undecided: unreadable"],
  ])("of %s: %s", (line, outcome) => {
    const rows = [
      { "up-to": "5 m", accept: { "at-most": "50 s" } },
      { "up-to": "10 m", accept: { "at-most": "30 s" } },
    ];
    const policy = makePolicy(
      [{ step: "out", kind: "timing", tolerance: { "accept-by": { fact: "line", rows } }, basis }],
      {
        facts: { line: { at: "/subject/line", quantity: "length" } },
      },
    );
    expect(summarise(assess(policy, [{ step: "out", elapsed: "40 s" }], { line }))).toEqual({ "out elapsed": outcome });
  });
});

describe("an interval of things in a list", () => {
  it("finds no date in what is no thing, a hole in the list among it", () => {
    const cleaned = { of: "mask", every: "P1Y", counted: "from-last", date: "cleanedOn", consequence: "refer", basis };
    const harness = { step: "harness", kind: "confirm" };
    const policy = makePolicy([harness], { intervals: { cleaned } }, { intervals: ["cleaned"] });
    const masks: unknown[] = [{ id: "M-1", cleanedOn: "2026-04-01" }, null];
    masks[3] = "M-4";
    const assessment = assess(policy, [{ step: "harness", result: "satisfactory" }], { masks });
    expect(summarise(assessment)).toEqual({
      "harness condition": "within",
      "cleaned due M-1": "within",
      "cleaned due #2": "undecided: no-date",
      "cleaned due #3": "undecided: no-date",
      "cleaned due #4": "undecided: no-date",
    });
    expect(assessment.verdict).toBe("refer");
  });
});

describe("a rule about all entries of a step that is asked of each", () => {
  const charge = {
    step: "charge",
    kind: "reading",
    quantity: "pressure",
    each: "subject.cylinders",
    consequence: "note",
  };
  const full = { ">=": [{ var: "reading" }, "200 bar"] };
  const judge = (require: object, steps: readonly object[], ids: readonly string[] = ["C-1", "C-2"]) => {
    const policy = makePolicy([{ ...charge, tolerance: { accept: { "at-least": "100 bar" } }, basis }], {
      rules: [{ rule: "full", checks: ["daily"], require, basis }],
    });
    const cylinders = ids.map((id) => ({ id }));
    return summarise(
      assess(
        policy,
        steps.map((entry) => ({ step: "charge", ...entry })),
        { cylinders },
      ),
    )["full rule"];
  };
  const high = { of: "C-1", reading: "250 bar" };
  const low = { of: "C-1", reading: "150 bar" };
  const other = { of: "C-2", reading: "250 bar" };
  const all = { all: [{ var: "charge" }, full] };

  it.each([
    ["every member is recorded", all, [high, other], "within"],
    ["one is not", all, [high], "undecided: rule-incomplete"],
    ["one is not and another fails", all, [low], "outside"],
    ["the entry is about a stranger", all, [{ ...high, of: "C-9" }], "undecided: rule-incomplete"],
    ["the entry names none of several", all, [{ reading: "250 bar" }], "undecided: rule-incomplete"],
    ["one is not and none may be full", { none: [{ var: "charge" }, full] }, [low], "undecided: rule-incomplete"],
    ["one is not and some is full", { some: [{ var: "charge" }, full] }, [high], "within"],
  ])("where %s", (_, require, steps, outcome) => {
    expect(judge(require, steps)).toBe(outcome);
  });

  it("needs no name where there is one member", () => {
    expect(judge(all, [{ reading: "250 bar" }], ["C-1"])).toBe("within");
  });
});

describe("timing", () => {
  const step = {
    step: "alarm",
    kind: "timing",
    "from-event": "still",
    "to-event": "alarm",
    tolerance: { accept: { "at-most": "35 s" } },
    basis,
  };
  const judge = (evidence: Record<string, unknown>) =>
    summarise(assess(makePolicy([step]), [{ step: "alarm", ...evidence }]))["alarm elapsed"];

  it.each([
    [{ elapsed: "35 s" }, "within"],
    [{ elapsed: "-5 s" }, "undecided: conflicting"],
    [{ events: { still: "2026-04-12T07:00:00Z", alarm: "2026-04-12T07:00:35Z" } }, "within"],
    [{ events: { still: "2026-04-12T07:00:00Z", alarm: "2026-04-12T08:00:36+01:00" } }, "outside"],
    [{ events: { still: "2026-04-12T07:00:10Z", alarm: "2026-04-12T07:00:00Z" } }, "undecided: conflicting"],
    [{ events: { still: "2026-04-12T07:00:00", alarm: "2026-04-12T07:00:30Z" } }, "undecided: unreadable"],
    [{ events: { still: "2026-04-12T07:00:00.0001Z", alarm: "2026-04-12T07:00:30Z" } }, "undecided: too-fine"],
    [{ events: { still: "2026-04-12T07:00:00Z" } }, "undecided: missing"],
    [{ elapsed: "30 s", events: { still: "2026-04-12T07:00:00Z", alarm: "2026-04-12T07:00:36Z" } }, "outside"],
    [{ occurred: false, elapsed: "30 s" }, "outside"],
  ])("%j is %s", (evidence, outcome) => {
    expect(judge(evidence)).toBe(outcome);
  });
});

describe("order", () => {
  const steps = ["a", "b", "c"].map((step) => ({ step, kind: "confirm" }));
  const done = (step: string, at?: string) => ({ step, result: "satisfactory", ...(at === undefined ? {} : { at }) });
  const judge = (
    order: unknown,
    entries: readonly Record<string, unknown>[],
    list: readonly Record<string, unknown>[] = steps,
  ) => {
    const assessment = assess(makePolicy(list, {}, { order }), entries);
    return [
      summarise(assessment).order,
      assessment.findings.filter(({ requirement }) => requirement === "order").map(({ message }) => message),
    ];
  };
  const position = { "listed-by": "position" };

  it("by position: neighbours the wrong way round, one finding each", () => {
    expect(judge(position, [done("a"), done("b"), done("c")])).toEqual(["within", []]);
    expect(judge(position, [done("b"), done("a"), done("c")])).toEqual([
      "outside",
      ["`a` stands after `b`, which it should come before"],
    ]);
    expect(judge(position, [done("c"), done("b"), done("a")])[1]).toHaveLength(2);
    expect(judge(position, [done("a")])[0]).toBe("not-applicable: only-one");
    expect(judge(position, [{ step: "b" }, done("a"), done("c")])[0]).toBe("undecided: order-unknown");
    expect(judge(position, [done("a"), { step: "b" }, done("c")])[0]).toBe("within");
  });

  it("by instants: equal ones are in order, a missing one leaves it open", () => {
    const by = { "listed-by": "at" };
    const at = (minute: number) => `2026-04-12T07:0${minute}:00Z`;
    expect(judge(by, [done("c", at(2)), done("a", at(1)), done("b", at(1))])[0]).toBe("within");
    expect(judge(by, [done("a", at(2)), done("b", at(1))])[0]).toBe("outside");
    expect(judge(by, [done("a", at(1)), done("b")])[0]).toBe("undecided: order-unknown");
    expect(judge(by, [done("a", at(1)), done("b", "2026-04-12T08:02:00+01:00")])[0]).toBe("within");
    expect(judge(by, [done("a", "2026-04-12"), done("b", "2026-04-12")])[0]).toBe("undecided: order-unknown");
  });

  it("any: only what `after` names, by instants", () => {
    const after = [{ ...steps[0], after: ["b"] }, steps[1], steps[2]].map((step) => ({
      kind: "confirm",
      step: "x",
      ...step,
    }));
    expect(judge("any", [done("a", "2026-04-12T07:01:00Z"), done("b", "2026-04-12T07:00:00Z")], after)[0]).toBe(
      "within",
    );
    expect(judge("any", [done("a", "2026-04-12T07:00:00Z"), done("b", "2026-04-12T07:01:00Z")], after)[0]).toBe(
      "outside",
    );
    expect(judge("any", [done("b"), done("a")], after)[0]).toBe("undecided: order-unknown");
    expect(judge("any", [done("b")], after)[0]).toBe("not-applicable: only-one");
    expect(judge("any", [done("c"), done("a")])[0]).toBeUndefined();
  });
});

describe("weights", () => {
  const torch = (consequence: string, parts: Record<string, unknown> = {}) =>
    makePolicy(
      [
        { step: "torch", kind: "confirm", consequence },
        { step: "harness", kind: "confirm" },
      ],
      parts,
    );
  const judge = (policy: ReturnType<typeof makePolicy>, entry: Record<string, unknown>) => {
    const { findings } = assess(policy, [
      { step: "torch", ...entry },
      { step: "harness", result: "satisfactory" },
    ]);
    return findings[0]?.consequence;
  };

  it.each([
    ["withdraw", {}, "refer"],
    ["advise", {}, "advise"],
    ["note", {}, "note"],
    ["advise", { result: "not-done" }, "refer"],
    ["note", { result: "defect" }, "refer"],
    ["note", { result: "satisfactory", defect: "burnt" }, "refer"],
    ["withdraw", { result: "defect" }, "withdraw"],
    ["note", { result: "fine" }, "refer"],
  ])("%s with %j weighs %s", (consequence, entry, weight) => {
    expect(judge(torch(consequence), entry)).toBe(weight);
  });

  it("of a gap are those of a failure where the policy says so", () => {
    expect(judge(torch("withdraw", { undecided: "as-outside" }), {})).toBe("withdraw");
    expect(judge(torch("advise", { undecided: "as-outside" }), {})).toBe("advise");
  });

  it("need something judged that matters", () => {
    const policy = makePolicy([{ step: "torch", kind: "confirm", consequence: "advise" }]);
    const assessment = assess(policy, [{ step: "torch", result: "satisfactory" }]);
    expect(assessment.verdict).toBe("refer");
    expect(assessment.findings).toMatchObject([
      { code: "record/nothing-judged", outcome: "undecided", reason: "nothing-judged" },
    ]);
  });
});

describe("what stands beside a decision against the record", () => {
  const judgeApart = (limit: string, entries: readonly Record<string, unknown>[]) => {
    const charge = {
      step: "charge",
      kind: "reading",
      quantity: "pressure",
      each: "subject.cylinders",
      instrument: "dial",
      consequence: "advise",
      tolerance: { accept: { "at-most": limit } },
      apart: { "at-most": "20 bar", consequence: "withdraw" },
      basis,
    };
    const policy = makePolicy([charge], { instruments });
    const assessment = assess(
      policy,
      entries.map((entry) => ({ step: "charge", ...entry })),
      { cylinders: [{ id: "A" }, { id: "B" }] },
    );
    return [summarise(assessment)["charge apart"], assessment.verdict];
  };

  it.each([
    [
      "beyond the gauge",
      "1000 bar",
      "350 bar",
      [
        { of: "A", reading: "900 bar" },
        { of: "B", reading: "900 bar" },
      ],
      "undecided: off-range",
      "refer",
    ],
    [
      "of no cylinder",
      "300 bar",
      "280 bar",
      [{ reading: "290 bar" }, { reading: "290 bar" }],
      "undecided: missing",
      "refer",
    ],
    [
      "of a stranger",
      "300 bar",
      "280 bar",
      [
        { of: "A", reading: "290 bar" },
        { of: "C", reading: "290 bar" },
      ],
      "undecided: conflicting",
      "refer",
    ],
    [
      "on a stranger",
      "300 bar",
      "280 bar",
      [
        { of: "A", reading: "290 bar", instrument: "x" },
        { of: "B", reading: "290 bar", instrument: "x" },
      ],
      "undecided: instrument-unknown",
      "refer",
    ],
    [
      "twice, far apart",
      "300 bar",
      "280 bar",
      [
        { of: "A", reading: "200 bar" },
        { of: "A", reading: "290 bar" },
        { of: "B", reading: "290 bar" },
      ],
      "outside",
      "withdraw",
    ],
    [
      "twice, the later far",
      "270 bar",
      "259 bar",
      [
        { of: "A", reading: "260 bar" },
        { of: "B", reading: "260 bar" },
        { of: "B", reading: "290 bar" },
      ],
      "outside",
      "withdraw",
    ],
  ])("readings %s are as doubtful under a tighter limit", (_name, loose, tight, entries, apart, verdict) => {
    expect(judgeApart(loose, entries)).toEqual([apart, verdict]);
    expect(judgeApart(tight, entries)).toEqual([apart, verdict]);
  });

  it.each([
    [[{ defect: "soiled" }], "advise"],
    [[{ result: "satisfactory" }, { defect: "soiled" }], "refer"],
    [[{}, { defect: "soiled" }], "refer"],
    [[{ result: "not-done" }, { defect: "soiled" }], "refer"],
    [[{ defect: "torn" }, { defect: "soiled" }], "withdraw"],
    [[{ defect: "soiled" }, { defect: "soiled", note: "again" }], "advise"],
  ])("a mild defect makes a contradiction no milder: %j weighs %s", (entries, weight) => {
    const policy = makePolicy([
      { step: "harness", kind: "confirm", defects: { soiled: { consequence: "advise" } } },
      { step: "hoses", kind: "confirm" },
    ]);
    const steps = [
      ...entries.map((entry) => ({ step: "harness", ...entry })),
      { step: "hoses", result: "satisfactory" },
    ];
    const { findings, verdict } = assess(policy, steps);
    expect(findings[0]?.consequence).toBe(weight);
    expect(verdict).toBe(weight === "advise" ? "meets" : weight);
  });
});

describe("a place that is recorded under its present and its former name", () => {
  const places = ["back", { place: "mask", formerly: ["face"] }];
  const policy = makePolicy([{ step: "number", kind: "match", places }]);
  const match = (seen: Readonly<Record<string, unknown>>) =>
    summarise(assess(policy, [{ step: "number", seen }]))["number match"];

  it("is judged by both", () => {
    expect(match({ back: "014", mask: "014" })).toBe("within");
    expect(match({ back: "014", face: "014" })).toBe("within");
    expect(match({ back: "014", mask: "014", face: "014" })).toBe("within");
    expect(match({ back: "014", mask: "014", face: "13" })).toBe("outside");
    expect(match({ back: "014", mask: "014", face: 13 })).toBe("undecided: unreadable");
  });
});

describe("fingerprints of remarks", () => {
  it("tell places, keys and where they stand apart", () => {
    const policy = makePolicy([{ step: "number", kind: "match", places: ["back", "mask"] }]);
    const seen = { back: "014", mask: "014", tally: "014", sleeve: "014" };
    const { findings } = assess(policy, [{ step: "number", seen, colour: 1 }], { colour: "red" }, { colour: "red" });
    expect(findings.map(({ code }) => code).sort()).toEqual([
      "record/unknown-key",
      "record/unknown-key",
      "record/unknown-key",
      "step/unknown-place",
      "step/unknown-place",
    ]);
    expect(new Set(findings.map(({ fingerprint }) => fingerprint)).size).toBe(5);
  });
});

describe("a key of a step that was probably misspelt", () => {
  const policy = makePolicy([
    { step: "harness", kind: "confirm" },
    { step: "monthly", kind: "in-date", within: "P1M", basis: { kind: "common-practice" }, consequence: "advise" },
  ]);
  const judge = (step: string, key: string, value: unknown) =>
    assess(policy, [
      { step: "harness", result: "satisfactory" },
      { step: "monthly", on: "2026-04-01" },
      { step, [key]: value },
    ]);

  it.each([
    ["another", "Defect", "strap torn", "defect"],
    ["another", "defects", ["strap torn"], "defect"],
    ["another", "RESULT", "not-done", "result"],
    ["another", "reslut", "not-done", "result"],
  ])("weighs refer on a step that is not asked: %s %s", (step, key, value, nearest) => {
    const { verdict, findings } = judge(step, key, value);
    expect(verdict).toBe("refer");
    expect(findings[0]).toMatchObject({ code: "step/misspelt-key", consequence: "refer", params: { key, nearest } });
    expect(findings[0]?.pointer).toBe(`/steps/2/${key}`);
  });

  it.each([
    ["Defect", "strap torn", "defect"],
    ["Result", "not-done", "result"],
    ["Instrument", "unknown", "instrument"],
  ])("weighs refer beside what is satisfactory: %s", (key, value, nearest) => {
    const { verdict, findings } = assess(policy, [
      { step: "harness", result: "satisfactory", [key]: value },
      { step: "monthly", on: "2026-04-01" },
    ]);
    expect([verdict, findings[0]?.code, findings[0]?.params.nearest]).toEqual(["refer", "step/misspelt-key", nearest]);
  });

  it.each([
    ["colour", "red"],
    ["no", 14],
    ["notes", "dry"],
    ["Defect", ""],
    ["defects", []],
  ])("is none where it is a field of the station's own, or says nothing: %s", (key, value) => {
    const { verdict, findings } = assess(policy, [
      { step: "harness", result: "satisfactory", [key]: value },
      { step: "monthly", on: "2026-04-01" },
    ]);
    expect(verdict).toBe("meets");
    expect(findings.map(({ code }) => code)).not.toContain("step/misspelt-key");
  });
});

describe("`false` in place of a defect's name", () => {
  const steps = [
    { step: "harness", kind: "confirm" },
    { step: "charge", kind: "reading", quantity: "pressure", tolerance: { accept: { "at-least": "270 bar" } }, basis },
  ];
  const judge = (harness: Record<string, unknown>, charge: Record<string, unknown> = {}) =>
    assess(makePolicy(steps), [
      { step: "harness", ...harness },
      { step: "charge", reading: "290 bar", ...charge },
    ]);

  it.each([{ defect: false }, { defect: false, result: "satisfactory" }])("%j cannot be read", (evidence) => {
    const { verdict, findings } = judge(evidence);
    expect(verdict).toBe("refer");
    expect(findings.map(({ code, message }) => [code, message])).toEqual([
      [
        "confirm/condition-undecided",
        "the condition cannot be judged: what is recorded cannot be read, recorded is `defect: false`",
      ],
    ]);
  });

  it("takes nothing from a defect that is recorded beside it", () => {
    expect(judge({ defect: false, result: "defect" }).verdict).toBe("withdraw");
    expect(judge({ defect: true }).verdict).toBe("withdraw");
  });

  it("is not understood on a step of another kind", () => {
    const { verdict, findings } = judge({ result: "satisfactory" }, { defect: false });
    expect(verdict).toBe("refer");
    expect(findings.map(({ code, pointer }) => [code, pointer])).toEqual([["step/unknown-result", "/steps/1/defect"]]);
  });
});
