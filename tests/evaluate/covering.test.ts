import { describe, expect, it } from "vitest";
import { describeCheck, type Policy } from "../../src/index.js";
import { adopt, compile, compileSound, head, looser, PARENT, tested } from "./orders.js";
import { assess, summarise } from "./sample.js";

/** A record of which only the drop of 20 bar is in question. */
const steps = [
  { step: "harness", result: "satisfactory" },
  { step: "leak", start: "290 bar", end: "270 bar", held: "60 s" },
  { step: "torch", result: "satisfactory" },
  { step: "tally", seen: { set: "014", "log-book": "014" } },
];

const judge = (policy: Policy, at: string, parts: Readonly<Record<string, unknown>> = {}) =>
  assess(policy, steps, tested, { at, ...parts });

describe("an adoption that covers a looser limit", () => {
  const policy = compileSound(`${looser}adopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`);

  it("lets the limit of the policy decide while it applies, and keeps what the parent's would have said", () => {
    const assessment = judge(policy, "2026-04-30");
    const drop = assessment.results.find(({ requirement }) => requirement === "drop");
    expect(drop).toMatchObject({ outcome: "within", without: "outside", adopted: "trial", accept: "at most 20 bar" });
    expect(assessment.verdict).toBe("meets");
    expect(assessment.findings.map(({ code, consequence, params }) => [code, consequence, params.without])).toEqual([
      ["step/adopted", "note", "outside"],
    ]);
  });

  it.each(["2026-03-31", "2026-05-01"])("lets the parent's limit decide on %s", (at) => {
    const assessment = judge(policy, at);
    const drop = assessment.results.find(({ requirement }) => requirement === "drop");
    expect(drop).toMatchObject({ outcome: "outside", accept: "at most 10 bar", margin: "-10 bar" });
    expect(drop).not.toHaveProperty("adopted");
    expect(assessment.verdict).toBe("withdraw");
    expect(assessment.findings[0]).toMatchObject({
      code: "hold/drop-outside",
      where: { file: "./parent.yaml", line: 16 },
      limitAt: { file: "./parent.yaml", line: 5 },
    });
  });

  it("names the policy's own limit by its own place where that is the tighter one and only its weight is milder", () => {
    const milder = `tolerances:
  drop: { accept: { at-most: 5 bar }, consequence: advise, basis: { kind: local, order: "LO 1" } }
`;
    const one = compileSound(
      `${head("c", "./parent.yaml")}${milder}adopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`,
    );
    const [finding] = judge(one, "2026-05-12").findings;
    expect(finding).toMatchObject({ code: "hold/drop-outside", consequence: "withdraw", basis: { order: "LO 1" } });
    expect(finding?.params.accept).toBe("at most 5 bar");
    expect(finding?.limitAt).toMatchObject({ file: "child.yaml", line: 5 });
  });

  it("judges by both where its scope cannot be told, and the worse stands", () => {
    const scoped = `${looser}adopted:\n${adopt("trial", "tolerance: drop, only: { station: Lowmere 3 }, review: 2027-01-01")}`;
    const one = compileSound(scoped);
    expect(judge(one, "2026-04-12", { station: "Lowmere 3" }).verdict).toBe("meets");
    expect(judge(one, "2026-04-12", { station: "Lowmere 4" }).verdict).toBe("withdraw");
    const open = judge(one, "2026-04-12");
    expect(open.verdict).toBe("withdraw");
    expect(open.results.find(({ requirement }) => requirement === "drop")).toMatchObject({
      outcome: "outside",
      without: "outside",
      adopted: "trial",
    });
  });

  it("shows on a form the limit that stands on the day", () => {
    const shown = (at?: string) =>
      describeCheck(policy, "daily", { kind: "set", id: "S-014" }, at === undefined ? {} : { at })
        ?.steps.find(({ step }) => step === "leak")
        ?.asked[0]?.limits.find(({ requirement }) => requirement === "drop");
    expect(shown("2026-04-12")).toMatchObject({ accept: "at most 20 bar" });
    expect(shown("2026-05-12")).toMatchObject({ accept: "at most 10 bar" });
    expect(shown()).toMatchObject({ accept: "at most 10 bar" });
  });

  it("leaves what the policy states tighter as it is", () => {
    const both = compileSound(
      `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - step: leak
        kind: hold
        quantity: pressure
        lasting: { at-least: 120 s }
        drop: { accept: { at-most: 20 bar } }
        basis: { kind: common-practice }
adopted:\n${adopt("trial", "step: daily/leak, until: 2026-04-30")}`,
    );
    const lasting = (at: string) => judge(both, at).results.find(({ requirement }) => requirement === "lasting");
    expect(lasting("2026-04-12")).toMatchObject({ outcome: "outside", accept: "at least 120 s" });
    expect(lasting("2026-05-12")).toMatchObject({ outcome: "outside", accept: "at least 120 s" });
  });

  it("lapses in a policy that inherits it, at the date that stands there", () => {
    const middle = `${looser}adopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`;
    const heir = compileSound(head("g", "./middle.yaml"), { "./middle.yaml": middle });
    expect(judge(heir, "2026-04-12").verdict).toBe("meets");
    expect(judge(heir, "2026-05-12").verdict).toBe("withdraw");
    const longer = `${head("g", "./middle.yaml")}adopted:\n${adopt("trial", "tolerance: drop, until: 2026-06-30")}`;
    const later = compileSound(longer, { "./middle.yaml": middle });
    expect(judge(later, "2026-05-12").verdict).toBe("meets");
    expect(judge(later, "2026-07-12").verdict).toBe("withdraw");
  });
});

describe("an adoption that covers a step left out, or stated otherwise", () => {
  it("asks the parent's step wherever it does not apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks: { daily: { without: [torch] } }\nadopted:\n${adopt("trial", "step: daily/torch, until: 2026-04-30")}`,
    );
    const bare = (at: string) =>
      assess(
        policy,
        [steps[0], { ...steps[1], end: "290 bar" }, steps[3]].flatMap((one) => one ?? []),
        tested,
        { at },
      );
    expect(policy.plan.checks[0]?.steps.map(({ step }) => step)).toEqual(["harness", "leak", "torch", "tally"]);
    expect(bare("2026-04-12").verdict).toBe("meets");
    expect(summarise(bare("2026-04-12"))["torch condition"]).toBe("not-applicable: omitted-by-adoption");
    expect(bare("2026-05-12").verdict).toBe("refer");
    expect(summarise(bare("2026-05-12"))["torch condition"]).toBe("undecided: missing");
  });

  it("compares the texts as the parent does wherever it does not apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: tally, kind: match, places: [set, log-book], ignore: [blanks], consequence: refer }
adopted:\n${adopt("trial", "step: daily/tally, until: 2026-04-30")}`,
    );
    const tally = (at: string) =>
      summarise(
        assess(policy, [...steps.slice(0, 3), { step: "tally", seen: { set: "0 14", "log-book": "014" } }], tested, {
          at,
        }),
      )["tally match"];
    expect([tally("2026-04-12"), tally("2026-05-12")]).toEqual(["within", "outside"]);
  });

  it("asks for what the policy leaves out of a step, named by its requirement, wherever it does not apply", () => {
    const text = (requirement: string) => `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, drop: drop, basis: { kind: common-practice } }
adopted:\n${adopt("trial", `step: daily/leak, requirement: ${requirement}, until: 2026-04-30`)}`;
    const policy = compileSound(text("lasting"));
    const outcomes = (at: string) => {
      const parts = [steps[0], { ...steps[1], end: "285 bar", held: "20 s" }, steps[2], steps[3]];
      const assessment = assess(
        policy,
        parts.flatMap((one) => one ?? []),
        tested,
        { at },
      );
      const { "leak lasting": lasting, "leak drop": drop } = summarise(assessment);
      return [assessment.verdict, lasting, drop];
    };
    expect(outcomes("2026-04-12")).toEqual(["meets", "not-applicable: omitted-by-adoption", "within"]);
    expect(outcomes("2026-05-12")).toEqual(["refer", "outside", "undecided: hold-too-short"]);
    expect(compile(text("lastign")).diagnostics.map(({ code, line }) => [code, line])).toContainEqual([
      "plan/unknown-name",
      9,
    ]);
    expect(compile(text("rise")).diagnostics.map(({ code }) => code)).toContain("resolve/covers-nothing");
  });

  it("judges a drop by the time that the parent asks for wherever it does not apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}undecided: as-outside
checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, drop: drop, basis: { kind: common-practice } }
adopted:\n${adopt("trial", "step: daily/leak, until: 2026-04-30")}`,
    );
    const leak = (at: string) => {
      const assessment = assess(policy, [{ step: "leak", start: "290 bar", end: "285 bar", held: "40 s" }], tested, {
        at,
      });
      const found = summarise(assessment);
      return [found["leak lasting"], found["leak drop"]];
    };
    expect(leak("2026-04-12")).toEqual(["not-applicable: omitted-by-adoption", "within"]);
    expect(leak("2026-05-12")).toEqual(["outside", "undecided: hold-too-short"]);
  });

  it("weighs a defect beside a reading as the parent does wherever it does not apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, lasting: { at-least: 60 s }, drop: drop, consequence: refer, basis: { kind: common-practice } }
adopted:\n${adopt("trial", "step: daily/leak, until: 2026-04-30")}`,
    );
    const weigh = (at: string) =>
      assess(policy, [{ step: "leak", start: "290 bar", end: "285 bar", held: "60 s", defect: "torn" }], tested, {
        at,
      }).findings.find(({ code }) => code === "step/defect")?.consequence;
    expect([weigh("2026-04-12"), weigh("2026-05-12")]).toEqual(["refer", "withdraw"]);
  });

  it("holds a place that only the policy asks for to the letter wherever it does not apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: tally, kind: match, places: [set, log-book, board], ignore: [case], consequence: refer }
adopted:\n${adopt("trial", "step: daily/tally, until: 2026-04-30")}`,
    );
    const verdict = (board: string, at: string) =>
      assess(
        policy,
        [
          { step: "harness", result: "satisfactory" },
          { step: "leak", start: "290 bar", end: "290 bar", held: "60 s" },
          { step: "torch", result: "satisfactory" },
          { step: "tally", seen: { set: "A 14", "log-book": "A 14", board } },
        ],
        tested,
        { at },
      ).verdict;
    expect([verdict("a 14", "2026-04-12"), verdict("a 14", "2026-05-12")]).toEqual(["meets", "refer"]);
    expect([verdict("A 14", "2026-04-12"), verdict("A 14", "2026-05-12")]).toEqual(["meets", "meets"]);
  });

  it("weighs a gap of the parent's as it does, though what the policy finds is the worse outcome", () => {
    const timing = (rest: string) =>
      `      - { step: alarm, kind: timing, tolerance: { accept: { at-most: 30 s } }, basis: { kind: common-practice }, ${rest} }\n`;
    const policy = compileSound(
      `${head("c", "./parent.yaml")}undecided: as-outside
checks:
  daily:
    steps:
${timing("consequence: note, from-event: still, to-event: sound")}adopted:\n${adopt("trial", "step: daily/alarm, until: 2026-04-30")}`,
      {
        "./parent.yaml": PARENT.replace(
          "intervals:\n  tested",
          `${timing("consequence: withdraw")}intervals:\n  tested`,
        ),
      },
    );
    const events = { still: "2026-04-12T07:00:00Z", sound: "2026-04-12T07:00:45Z" };
    const weigh = (at: string) =>
      assess(policy, [{ step: "alarm", events }], tested, { at }).findings.find(({ step }) => step === "alarm")
        ?.consequence;
    expect([weigh("2026-04-12"), weigh("2026-05-12")]).toEqual(["note", "withdraw"]);
  });
});

describe("an adoption that covers a requirement that the policy leaves out", () => {
  const own = (order: string) => `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, drop: drop, basis: { kind: common-practice } }
adopted:\n${adopt("trial", `step: daily/leak, requirement: ${order}, until: 2026-04-30`)}`;
  const leak = (policy: Policy, held: string, at: string) => {
    const one = { step: "leak", start: "290 bar", end: "285 bar", held };
    const found = summarise(assess(policy, [one], tested, { at }));
    return [found["leak lasting"], found["leak drop"]];
  };

  it("may name it, and it is asked wherever the adoption does not apply, also in a policy that inherits it", () => {
    const policy = compileSound(own("lasting"));
    const heir = compileSound(head("g", "./middle.yaml"), { "./middle.yaml": own("lasting") });
    for (const one of [policy, heir]) {
      expect(leak(one, "40 s", "2026-04-12")).toEqual(["not-applicable: omitted-by-adoption", "within"]);
      expect(leak(one, "40 s", "2026-05-12")).toEqual(["outside", "undecided: hold-too-short"]);
      expect(leak(one, "60 s", "2026-05-12")).toEqual(["within", "within"]);
    }
  });

  it("is no other adoption, and covers nothing where no ancestor states it", () => {
    const find = (order: string) => compile(own(order)).diagnostics.map(({ code, mend }) => [code, mend]);
    expect(find("lasting, omit: true")[0]?.[0]).toBe("plan/unknown-name");
    expect(find("start").map(([code]) => code)).toEqual(["resolve/looser", "resolve/covers-nothing"]);
    expect(find("lastin")[0]).toEqual(["plan/unknown-name", expect.stringContaining("lasting")]);
  });
});

describe("an adoption of an interval", () => {
  const due = (policy: Policy, at: string) => {
    const assessment = assess(policy, [], { testedOn: "2025-02-01" }, { at });
    const { outcome, without, accept } = assessment.results.find(({ interval }) => interval === "tested") ?? {};
    const note = assessment.findings.find(({ code }) => code === "interval/adopted");
    return { outcome, without, accept, note: note?.params.adoption };
  };

  it("lets a longer span stand only while it applies", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}intervals:
  tested: { of: set, every: P2Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
adopted:\n${adopt("trial", "interval: tested, until: 2026-04-30")}`,
    );
    expect(due(policy, "2026-04-12")).toMatchObject({ outcome: "within", without: "outside", note: "trial" });
    expect(due(policy, "2026-05-12")).toMatchObject({ outcome: "outside", without: undefined, note: undefined });
  });

  it("asks an interval that a check leaves out wherever it does not apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks: { daily: { intervals: [other] } }
intervals: { other: { of: pump, every: P1Y, counted: from-last, date: testedOn, consequence: note, basis: { kind: common-practice } } }\nadopted:\n${adopt("trial", "interval: tested, until: 2026-04-30")}`,
    );
    expect(due(policy, "2026-04-12")).toMatchObject({ outcome: "not-applicable", without: "outside", note: "trial" });
    expect(due(policy, "2026-05-12")).toMatchObject({ outcome: "outside", note: undefined });
  });

  it("leaves it out while it applies, and judges it where its scope is open", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}adopted:\n${adopt("trial", "interval: tested, omit: true, only: { station: Lowmere 3 }, until: 2026-04-30")}`,
    );
    const at = (station: string | undefined, date: string) =>
      assess(policy, [], { testedOn: "2025-02-01" }, { at: date, station }).results.find(
        ({ interval }) => interval === "tested",
      );
    expect(at("Lowmere 3", "2026-04-12")).toMatchObject({
      outcome: "not-applicable",
      reason: "omitted-by-adoption",
      without: "outside",
      adopted: "trial",
    });
    expect(at("Lowmere 4", "2026-04-12")).toMatchObject({ outcome: "outside" });
    expect(at("Lowmere 4", "2026-04-12")).not.toHaveProperty("adopted");
    expect(at(undefined, "2026-04-12")).toMatchObject({ outcome: "outside", without: "outside", adopted: "trial" });
    expect(at("Lowmere 3", "2026-05-12")).toMatchObject({ outcome: "outside" });
  });

  it("is refused where no check judges the interval, since leaving it out would have no effect", () => {
    const text = `${head("c", "./parent.yaml")}intervals:
  other: { of: set, every: P1Y, counted: from-last, date: testedOn, basis: { kind: common-practice } }
adopted:\n${adopt("trial", "interval: other, omit: true, until: 2026-04-30")}`;
    expect(compile(text).diagnostics.map(({ code }) => code)).toEqual(["plan/not-yet"]);
  });

  it.each(["accept: { at-most: 1 bar }", "instead: daily/torch", "requirement: due"])("refuses %s", (given) => {
    const text = `${head("c", "./parent.yaml")}adopted:\n${adopt("trial", `interval: tested, ${given}, until: 2026-04-30`)}`;
    expect(compile(text).diagnostics.map(({ code }) => code)).toContain("plan/adoption-of-interval");
  });
});

describe("an adoption that covers nothing that could stand in its place", () => {
  it("is refused where it claims to end and the step is of another kind", () => {
    const text = `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: torch, kind: match, places: [a, b], consequence: refer }
adopted:\n${adopt("trial", "step: daily/torch, until: 2026-04-30")}`;
    expect(compile(text).diagnostics.map(({ code }) => code)).toEqual(["plan/covering-cannot-lapse"]);
  });

  it("is refused where a fact that the parent's limit depends on means something else", () => {
    const parent = PARENT.replace("at-most: 10 bar", "at-most: 10 % of load").replace(
      "tolerances:",
      "facts:\n  load: { at: /subject/load, quantity: pressure }\ntolerances:",
    );
    const text = `${looser}facts:\n  load: { at: /local/load, quantity: pressure }\nadopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`;
    const codes = compile(text, { "./parent.yaml": parent }).diagnostics.map(({ code }) => code);
    expect(codes).toContain("plan/covering-cannot-lapse");
  });

  it.each([
    ["is refused also in a policy that inherits it", (middle: string) => ({ "./middle.yaml": middle })],
    [
      "is refused also two generations on",
      (middle: string) => ({ "./middle.yaml": head("d", "./first.yaml"), "./first.yaml": middle }),
    ],
  ] as const)("%s", (_, place) => {
    const middle = `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: torch, kind: match, places: [a, b], consequence: note }
adopted:\n${adopt("trial", "step: daily/torch, until: 2026-04-30")}`;
    const parents = place(middle);
    const { policy, diagnostics } = compile(head("g", "./middle.yaml"), parents);
    expect(policy).toBeUndefined();
    const file = "./first.yaml" in parents ? "./first.yaml" : "./middle.yaml";
    expect(diagnostics.map((one) => [one.code, one.file])).toEqual([["plan/covering-cannot-lapse", file]]);
  });

  it("gets a warning where nothing that it names is looser", () => {
    const text = `${head("c", "./parent.yaml")}adopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`;
    expect(compile(text).diagnostics.map(({ code, line }) => [code, line])).toEqual([["resolve/covers-nothing", 5]]);
  });

  it("is no other adoption: one with limits of its own covers no step that is left out, nor a looser limit", () => {
    const omitted = `${head("c", "./parent.yaml")}checks: { daily: { without: [torch] } }\nadopted:\n${adopt("trial", "step: daily/torch, omit: true, until: 2026-04-30")}`;
    expect(compile(omitted).diagnostics.map(({ code }) => code)).toContain("plan/unknown-name");
    const accepted = `${looser}adopted:\n${adopt("trial", "tolerance: drop, accept: { at-most: 30 bar }, until: 2026-04-30")}`;
    expect(compile(accepted).diagnostics.map(({ code }) => code)).toEqual(["resolve/looser"]);
  });
});

describe("orders over three generations", () => {
  const middle = `${looser}adopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`;
  const parents = { "./middle.yaml": middle };
  const drop = (limit: string) =>
    `tolerances:\n  drop: { accept: { at-most: ${limit} }, basis: { kind: local, order: "LO 2" } }\n`;
  const fell = (policy: Policy, bars: number, at: string) =>
    summarise(
      assess(
        policy,
        steps.map((one) => (one.step === "leak" ? { ...one, end: `${290 - bars} bar` } : one)),
        tested,
        { at },
      ),
    )["leak drop"];

  /** What a fall of so many bar comes to on four days: before, under both orders, under one of them, under none. */
  const table = (eldest: string, order: string | undefined, last: string, bars: number) => {
    const first = order === undefined ? "" : `adopted:\n${adopt("first", `tolerance: drop, until: ${order}`)}`;
    const policy = compileSound(
      `${head("g", "./middle.yaml")}${drop("15 bar")}adopted:\n${adopt("second", `tolerance: drop, until: ${last}`)}`,
      {
        "./parent.yaml": PARENT.replace("at-most: 10 bar", `at-most: ${eldest}`),
        "./middle.yaml": `${head("c", "./parent.yaml")}${drop(eldest === "5 bar" ? "10 bar" : "5 bar")}${first}`,
      },
    );
    return ["2026-03-12", "2026-04-12", "2026-05-12", "2026-07-12"].map((at) => fell(policy, bars, at) === "within");
  };

  it.each([
    [
      "the parent's, which is tighter than the eldest's",
      "10 bar",
      undefined,
      "2026-06-30",
      7,
      [false, true, true, false],
    ],
    ["the parent's, and pass what it lets pass", "10 bar", undefined, "2026-06-30", 4, [true, true, true, true]],
    ["the parent's, which is looser by no order", "5 bar", undefined, "2026-06-30", 7, [true, true, true, true]],
    [
      "the parent's, which no order of the eldest's undoes",
      "5 bar",
      undefined,
      "2026-06-30",
      12,
      [false, true, true, false],
    ],
    [
      "the eldest's, where the parent's own order ended first",
      "5 bar",
      "2026-04-30",
      "2026-06-30",
      7,
      [false, true, false, false],
    ],
    ["the parent's, where its order still runs", "5 bar", "2026-06-30", "2026-04-30", 7, [false, true, true, false]],
    [
      "the parent's limit, where its order still runs",
      "5 bar",
      "2026-06-30",
      "2026-04-30",
      12,
      [false, true, false, false],
    ],
  ] as const)("fall back to %s", (_, eldest, first, last, bars, within) => {
    expect(table(eldest, first, last, bars)).toEqual(within);
  });

  it("leave what the youngest states tighter as it is", () => {
    const policy = compileSound(`${head("g", "./middle.yaml")}${drop("5 bar")}`, parents);
    expect([fell(policy, 8, "2026-04-12"), fell(policy, 8, "2026-05-12")]).toEqual(["outside", "outside"]);
  });

  it("cover nothing that the youngest loosens further", () => {
    const codes = compile(`${head("g", "./middle.yaml")}${drop("50 bar")}`, parents).diagnostics.map(
      ({ code }) => code,
    );
    expect(codes).toEqual(["resolve/looser"]);
    const lost = compile(`${head("g", "./middle.yaml")}checks: { daily: { without: [leak] } }\n`, parents);
    expect(lost.diagnostics.map(({ code }) => code)).toContain("resolve/looser");
  });

  it("fall back to the eldest behind an order of the youngest's own, and not for another thing of the same id", () => {
    const left = compileSound(
      `${head("g", "./middle.yaml")}checks: { daily: { without: [leak] } }\nadopted:\n${adopt("other", "step: daily/leak, until: 2026-06-30")}`,
      parents,
    );
    expect(fell(left, 15, "2026-06-12")).toBe("not-applicable: omitted-by-adoption");
    expect(fell(left, 15, "2026-07-12")).toBe("outside");
    const reused = compile(
      `${head("g", "./middle.yaml")}adopted:\n${adopt("trial", "step: daily/harness, until: 2099-12-31")}`,
      parents,
    ).policy;
    if (reused === undefined) throw new Error("it does not compile");
    expect(fell(reused, 15, "2026-05-12")).toBe("outside");
  });

  it("keep the eldest's step where the middle left it out and the youngest states it milder", () => {
    const out = `${head("c", "./parent.yaml")}checks: { daily: { without: [torch] } }\nadopted:\n${adopt("trial", "step: daily/torch, until: 2026-04-30")}`;
    const { policy } = compile(
      `${head("g", "./middle.yaml")}checks: { daily: { steps: [{ step: torch, kind: confirm, consequence: note }] } }\n`,
      { "./middle.yaml": out },
    );
    if (policy === undefined) throw new Error("it does not compile");
    const verdict = (at: string) =>
      assess(
        policy,
        [
          { step: "harness", result: "satisfactory" },
          { step: "leak", start: "290 bar", end: "290 bar", held: "60 s" },
          { step: "tally", seen: { set: "014", "log-book": "014" } },
        ],
        tested,
        { at },
      ).verdict;
    expect([verdict("2026-04-12"), verdict("2026-05-12")]).toEqual(["meets", "refer"]);
  });

  it("let no limit of an order that ended come back by another order on the same step", () => {
    const text = `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - step: leak
        kind: hold
        quantity: pressure
        lasting: { at-least: 30 s }
        drop: drop
        basis: { kind: common-practice }
adopted:\n${adopt("trial", "step: daily/leak, requirement: lasting, until: 2026-04-30")}${adopt("more", "step: daily/leak, requirement: drop, accept: { at-most: 20 bar }, until: 2026-12-31")}`;
    const policy = compileSound(text);
    const lasting = (at: string) =>
      summarise(assess(policy, [{ step: "leak", start: "290 bar", end: "275 bar", held: "40 s" }], tested, { at }))[
        "leak lasting"
      ];
    expect([lasting("2026-04-12"), lasting("2026-06-12")]).toEqual(["within", "outside"]);
  });

  it("refuse steps that are asked instead of each other", () => {
    const text = `${head("c", "./parent.yaml")}adopted:\n${adopt("one", "step: daily/torch, instead: daily/harness, until: 2026-04-30")}${adopt("two", "step: daily/harness, instead: daily/torch, until: 2026-06-30")}`;
    expect(new Set(compile(text).diagnostics.map(({ code }) => code))).toEqual(new Set(["plan/unknown-name"]));
  });

  it("refuse a step that is asked instead of another and left out", () => {
    const text = `${head("c", "./parent.yaml")}adopted:\n${adopt("one", "step: daily/torch, instead: daily/harness, until: 2026-04-30")}${adopt("two", "step: daily/harness, omit: true, until: 2026-04-30")}`;
    expect(compile(text).diagnostics.map(({ code }) => code)).toEqual(["plan/unknown-name"]);
  });

  it("refuse a step that is asked instead of another and whose limits are left out by their tolerance", () => {
    const text = `${head("c", "./parent.yaml")}adopted:\n${adopt("one", "step: daily/torch, instead: daily/leak, until: 2026-04-30")}${adopt("two", "tolerance: drop, omit: true, until: 2026-04-30")}`;
    expect(compile(text).diagnostics.map(({ code, line }) => [code, line])).toEqual([["plan/unknown-name", 5]]);
  });

  it("refuse a step that is asked instead of itself", () => {
    const text = `${head("c", "./parent.yaml")}adopted:\n${adopt("trial", "step: daily/torch, instead: daily/torch, until: 2026-04-30")}`;
    expect(compile(text).diagnostics.map(({ code }) => code)).toEqual(["plan/unknown-name"]);
  });
});
