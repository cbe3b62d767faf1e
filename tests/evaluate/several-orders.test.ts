import { describe, expect, it } from "vitest";
import { describeCheck, type Policy } from "../../src/index.js";
import { adopt, compile, compileSound, head, looser, PARENT, tested } from "./orders.js";
import { assess } from "./sample.js";

describe("several adoptions of one step", () => {
  const accept = (id: string, requirement: string, limit: string, rest: string) =>
    adopt(id, `step: daily/leak, requirement: ${requirement}, accept: ${limit}, ${rest}`);
  const leak = (policy: Policy, held: string, end: string, at = "2026-04-12", parts = {}) => {
    const { results, verdict } = assess(policy, [{ step: "leak", start: "290 bar", end, held }], tested, {
      at,
      ...parts,
    });
    const find = (name: string) => results.find(({ step, requirement }) => step === "leak" && requirement === name);
    return { lasting: find("lasting"), drop: find("drop"), verdict };
  };
  const until = "until: 2026-12-31";

  it("stand side by side where they speak of different requirements", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}adopted:\n${accept("shorter", "lasting", "{ at-least: 30 s }", until)}${accept("looser", "drop", "{ at-most: 20 bar }", until)}`,
    );
    const { lasting, drop } = leak(policy, "40 s", "275 bar");
    expect(lasting).toMatchObject({
      outcome: "within",
      without: "outside",
      adopted: "shorter",
      accept: "at least 30 s",
    });
    expect(drop).toMatchObject({ outcome: "within", without: "outside", adopted: "looser", accept: "at most 20 bar" });
    expect(leak(policy, "20 s", "275 bar").drop).toMatchObject({ outcome: "undecided", reason: "hold-too-short" });
    expect(leak(policy, "40 s", "265 bar").drop).toMatchObject({ outcome: "outside" });
  });

  it("judge by the worse of both where they speak of the same one, and say so when compiling", () => {
    const text = (first: string, second: string) =>
      `${head("c", "./parent.yaml")}adopted:\n${accept("one", "drop", first, until)}${accept("two", "drop", second, "only: { station: Lowmere 3 }, review: 2027-01-01")}`;
    for (const [first, second, stricter] of [
      ["{ at-most: 20 bar }", "{ at-most: 15 bar }", "two"],
      ["{ at-most: 15 bar }", "{ at-most: 20 bar }", "one"],
    ] as const) {
      const { policy, diagnostics } = compile(text(first, second));
      if (policy === undefined) throw new Error("it does not compile");
      expect(diagnostics.map(({ code, severity, line }) => [code, severity, line])).toEqual([
        ["plan/adoptions-meet", "warning", 6],
      ]);
      const station = { station: "Lowmere 3" };
      expect(leak(policy, "60 s", "272 bar", "2026-04-12", station).drop).toMatchObject({
        outcome: "outside",
        adopted: stricter,
        accept: "at most 15 bar",
      });
      expect(leak(policy, "60 s", "276 bar", "2026-04-12", station).drop).toMatchObject({ outcome: "within" });
      expect(leak(policy, "60 s", "272 bar").drop?.outcome).toBe("outside");
    }
  });

  it.each([
    ["one ends before the other begins", "until: 2026-04-30", "only: { station: Lowmere 3 }, until: 2026-06-30", []],
    [
      "their scopes do not meet",
      "only: { station: Lowmere 4 }, until: 2026-06-30",
      "only: { station: Lowmere 3 }, until: 2026-06-30",
      [],
    ],
    ["they meet on one day", "until: 2026-05-01", "until: 2026-06-30", ["plan/adoptions-meet"]],
  ])("are told apart where %s", (_, first, second, codes) => {
    const later = accept("two", "drop", "{ at-most: 20 bar }", second).replace("from: 2026-04-01", "from: 2026-05-01");
    const text = `${head("c", "./parent.yaml")}adopted:\n${accept("one", "drop", "{ at-most: 15 bar }", first)}${later}`;
    expect(compile(text).diagnostics.map(({ code }) => code)).toEqual(codes);
  });

  it("go on where an order was renewed, and lapse between and after its times", () => {
    const renewed = `${looser}adopted:\n${adopt("spring", "tolerance: drop, until: 2026-04-30")}${adopt("summer", "step: daily/leak, until: 2026-08-31").replace("from: 2026-04-01", "from: 2026-06-01")}`;
    const policy = compileSound(renewed);
    const heir = compileSound(head("g", "./middle.yaml"), { "./middle.yaml": renewed });
    for (const one of [policy, heir]) {
      const verdicts = ["2026-03-31", "2026-04-30", "2026-05-15", "2026-06-01", "2026-09-01"].map((at) => {
        const { drop } = leak(one, "60 s", "270 bar", at);
        return [drop?.outcome, drop?.adopted];
      });
      expect(verdicts).toEqual([
        ["outside", undefined],
        ["within", "spring"],
        ["outside", undefined],
        ["within", "summer"],
        ["outside", undefined],
      ]);
    }
  });

  it("go on for a step left out, and for an interval left out or of another span", () => {
    const twice = (what: string) =>
      `adopted:\n${adopt("spring", `${what}, until: 2026-04-30`)}${adopt("summer", `${what}, until: 2026-08-31`).replace("from: 2026-04-01", "from: 2026-05-01")}`;
    const find = (policy: Policy, name: string, at: string) =>
      assess(policy, [], { testedOn: "2025-02-01" }, { at }).results.find(
        ({ step, interval }) => step === name || interval === name,
      )?.outcome;
    const days = ["2026-03-01", "2026-04-12", "2026-05-12", "2026-09-01"];
    const torch = compileSound(
      `${head("c", "./parent.yaml")}checks: { daily: { without: [torch] } }\n${twice("step: daily/torch")}`,
    );
    expect(days.map((at) => find(torch, "torch", at))).toEqual([
      "undecided",
      "not-applicable",
      "not-applicable",
      "undecided",
    ]);
    expect(torch.plan.checks[0]?.steps.map(({ step }) => step)).toEqual(["harness", "leak", "torch", "tally"]);
    const heir = compileSound(head("g", "./middle.yaml"), {
      "./middle.yaml": `${head("c", "./parent.yaml")}checks: { daily: { without: [torch] } }\n${twice("step: daily/torch")}`,
    });
    expect(days.map((at) => find(heir, "torch", at))).toEqual([
      "undecided",
      "not-applicable",
      "not-applicable",
      "undecided",
    ]);
    const span = `intervals:\n  tested: { of: set, every: P2Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }\n`;
    const longer = compileSound(`${head("c", "./parent.yaml")}${span}${twice("interval: tested")}`);
    expect(days.map((at) => find(longer, "tested", at))).toEqual(["outside", "within", "within", "outside"]);
    const other = `checks: { daily: { intervals: [other] } }\nintervals: { other: { of: pump, every: P1Y, counted: from-last, date: testedOn, consequence: note, basis: { kind: common-practice } } }\n`;
    const out = compileSound(`${head("c", "./parent.yaml")}${other}${twice("interval: tested")}`);
    expect(days.map((at) => find(out, "tested", at))).toEqual([
      "outside",
      "not-applicable",
      "not-applicable",
      "outside",
    ]);
    expect(out.plan.checks[0]?.intervals.map(({ interval }) => interval)).toEqual(["other", "tested"]);
  });

  it("leave an interval out by an order of its own, whichever span would stand", () => {
    const span = `intervals:\n  tested: { of: set, every: P2Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }\n`;
    const policy = compileSound(
      `${head("c", "./parent.yaml")}${span}adopted:\n${adopt("away", "interval: tested, omit: true, until: 2026-06-30")}${adopt("longer", "interval: tested, until: 2026-04-30")}`,
    );
    const outcome = (at: string) =>
      assess(policy, [], { testedOn: "2025-02-01" }, { at }).results.find(({ interval }) => interval === "tested")
        ?.outcome;
    expect(["2026-04-12", "2026-05-12", "2026-07-12"].map(outcome)).toEqual([
      "not-applicable",
      "not-applicable",
      "outside",
    ]);
  });

  it("keep the heavier consequence of a lapsed order under the limit of another", () => {
    const milder = `checks:
  daily:
    steps:
      - step: leak
        kind: hold
        quantity: pressure
        consequence: advise
        lasting: { at-least: 60 s }
        drop: drop
        basis: { kind: common-practice }
`;
    const policy = compileSound(
      `${head("c", "./parent.yaml")}${milder}adopted:\n${adopt("milder", "step: daily/leak, until: 2026-04-30")}${accept("looser", "drop", "{ at-most: 20 bar }", until)}`,
    );
    const weigh = (at: string) =>
      assess(policy, [{ step: "leak", start: "290 bar", end: "260 bar", held: "60 s" }], tested, { at }).findings.find(
        ({ code }) => code === "hold/drop-outside",
      )?.consequence;
    expect([weigh("2026-04-12"), weigh("2026-05-12")]).toEqual(["advise", "withdraw"]);
    expect(leak(policy, "60 s", "275 bar", "2026-05-12").drop).toMatchObject({
      outcome: "within",
      accept: "at most 20 bar",
    });
  });

  it("keep the parent's options where an order of the whole step has lapsed, under the limit of another", () => {
    const instruments = `instruments:
  coarse: { quantity: pressure, division: 10 bar, rounding: down, range: [0 bar, 400 bar] }
`;
    const parent = PARENT.replace(
      "tolerances:",
      `${instruments.replace("coarse", "fine").replace("400", "280")}tolerances:`,
    ).replace("quantity: pressure\n        lasting", "quantity: pressure\n        instrument: fine\n        lasting");
    const own = `${instruments}checks:
  daily:
    steps:
      - step: leak
        kind: hold
        quantity: pressure
        instrument: coarse
        lasting: { at-least: 60 s }
        drop: drop
        basis: { kind: common-practice }
`;
    const policy = compileSound(
      `${head("c", "./parent.yaml")}${own}adopted:\n${adopt("gauge", "step: daily/leak, until: 2026-04-30")}${accept("looser", "drop", "{ at-most: 20 bar }", until)}`,
      { "./parent.yaml": parent },
    );
    expect(leak(policy, "60 s", "270 bar", "2026-04-12").drop).toMatchObject({ outcome: "within", adopted: "looser" });
    expect(leak(policy, "60 s", "270 bar", "2026-05-12").drop).toMatchObject({
      outcome: "undecided",
      reason: "off-range",
    });
  });

  it("lapse each for itself in two generations, also where both fall back to the same", () => {
    const middle = `${looser}adopted:\n${adopt("limit", "tolerance: drop, until: 2026-12-31")}`;
    const milder = `tolerances:
  drop: { accept: { at-most: 10 bar }, basis: { kind: common-practice } }
checks:
  daily:
    steps:
      - step: leak
        kind: hold
        quantity: pressure
        lasting: { at-least: 60 s }
        drop: drop
        consequence: advise
        basis: { kind: common-practice }
`;
    const policy = compileSound(
      `${head("g", "./middle.yaml")}${milder}adopted:\n${adopt("weight", "step: daily/leak, until: 2026-04-30")}`,
      { "./middle.yaml": middle },
    );
    const texts = policy.plan.checks[0]?.adoptions.map(({ otherwise }) => JSON.stringify(otherwise?.requirements[1]));
    expect(new Set(texts).size).toBe(1);
    const weigh = (at: string) =>
      assess(policy, [{ step: "leak", start: "290 bar", end: "275 bar", held: "60 s" }], tested, { at }).findings.find(
        ({ code }) => code === "hold/drop-outside",
      )?.consequence;
    expect([weigh("2026-04-12"), weigh("2026-05-12")]).toEqual(["advise", "withdraw"]);
  });

  it("show on a form every limit of those that meet", () => {
    const { policy } = compile(
      `${head("c", "./parent.yaml")}adopted:\n${accept("one", "drop", "{ at-most: 20 bar }", until)}${accept("two", "drop", "{ at-most: 15 bar }", until)}`,
    );
    if (policy === undefined) throw new Error("it does not compile");
    const form = describeCheck(policy, "daily", { kind: "set", id: "S-014" }, { at: "2026-04-12" });
    const limits = form?.steps.find(({ step }) => step === "leak")?.asked[0]?.limits;
    expect(limits?.map(({ requirement, accept }) => [requirement, accept])).toEqual([
      ["lasting", "at least 60 s"],
      ["drop", "at most 20 bar and at most 15 bar"],
    ]);
  });

  it("show on a form the limits of all that apply", () => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}adopted:\n${accept("shorter", "lasting", "{ at-least: 30 s }", until)}${accept("looser", "drop", "{ at-most: 20 bar }", until)}`,
    );
    const form = describeCheck(policy, "daily", { kind: "set", id: "S-014" }, { at: "2026-04-12" });
    const limits = form?.steps.find(({ step }) => step === "leak")?.asked[0]?.limits;
    expect(limits?.map(({ requirement, accept }) => [requirement, accept])).toEqual([
      ["lasting", "at least 30 s"],
      ["drop", "at most 20 bar"],
    ]);
  });
});

describe("an order over something that the parent cannot stand in for", () => {
  const other = `checks:\n  daily:\n    steps:\n      - { step: torch, kind: match, places: [a, b], consequence: refer }\n`;
  const text = (effective: string) =>
    `${head("c", "./parent.yaml").replace("status: draft", `status: draft${effective}`)}${other}adopted:\n${adopt("trial", "step: daily/torch, review: 2027-04-30")}`;

  it.each([
    ["is refused where the policy says no first day", "", ["plan/covering-cannot-lapse"]],
    [
      "is refused where the policy is in force before it",
      ", effective: { from: 2026-03-31 }",
      ["plan/covering-cannot-lapse"],
    ],
    ["is taken where the policy begins with it", ", effective: { from: 2026-04-01 }", []],
  ])("%s", (_, effective, codes) => {
    const { diagnostics } = compile(text(effective));
    expect(diagnostics.map(({ code }) => code)).toEqual(codes);
    for (const one of diagnostics) expect(one.message).toContain("`from`");
  });

  it("is refused where a member of a group of instruments means something else", () => {
    const gauges = (range: string) => `instruments:
  dial: { quantity: pressure, division: 10 bar, rounding: down, range: [0 bar, ${range}] }
  digital: { quantity: pressure, division: 1 bar, rounding: nearest, range: [0 bar, 400 bar] }
  any-gauge: { one-of: [dial, digital] }
`;
    const step = "quantity: pressure\n        lasting";
    const parent = PARENT.replace("tolerances:", `${gauges("300 bar")}tolerances:`).replace(
      step,
      step.replace("\n", "\n        instrument: any-gauge\n"),
    );
    const child = `${looser}${gauges("400 bar").split("\n").slice(0, 2).join("\n")}\nadopted:\n${adopt("trial", "tolerance: drop, until: 2026-04-30")}`;
    const codes = compile(child, { "./parent.yaml": parent }).diagnostics.map(({ code }) => code);
    expect(codes).toContain("plan/covering-cannot-lapse");
  });
});

describe("a step that an adoption asks instead of another", () => {
  const instead = adopt("mast", "step: daily/torch, instead: daily/harness, until: 2026-04-30");

  it("is a departure where the parent asks it of everyone", () => {
    const { diagnostics } = compile(`${head("c", "./parent.yaml")}adopted:\n${instead}`);
    expect(diagnostics.map(({ code, line, message }) => [code, line, message.includes("daily/harness")])).toEqual([
      ["resolve/asked-only-instead", 5, true],
    ]);
  });

  it("is none where the policy adds it, nor in a policy that inherits both", () => {
    const own = `${head("c", "./parent.yaml")}checks: { daily: { steps: [{ step: voice, kind: confirm }] } }\nadopted:\n${instead.replace("daily/harness", "daily/voice")}`;
    compileSound(own);
    compileSound(head("g", "./middle.yaml"), { "./middle.yaml": own });
  });
});

describe("an order with limits for a tolerance that no step uses", () => {
  it("is told, since it has no effect", () => {
    const own = `checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, lasting: { at-least: 60 s }, drop: { accept: { at-most: 10 bar } }, basis: { kind: common-practice } }
`;
    const order = adopt("trial", "tolerance: drop, accept: { at-most: 15 bar }, until: 2026-12-31");
    const { diagnostics } = compile(`${head("c", "./parent.yaml")}${own}adopted:\n${order}`);
    expect(diagnostics.map(({ code, severity, line }) => [code, severity, line])).toContainEqual([
      "plan/unused",
      "warning",
      9,
    ]);
  });
});

describe("former names", () => {
  it.each([
    ["a check", "checks: { weekly: { formerly: [daily], order: any, steps: [{ step: a, kind: confirm }] } }", "daily"],
    [
      "a place",
      "checks: { daily: { steps: [{ step: tally, kind: match, places: [{ place: set, formerly: [book] }, book] }] } }",
      "book",
    ],
  ])("of %s are refused where another has the name", (_, text, name) => {
    const { diagnostics } = compile(`${head("c", "./parent.yaml")}${text}\n`);
    expect(diagnostics.map(({ code }) => code)).toContain("plan/duplicate-name");
    expect(diagnostics.find(({ code }) => code === "plan/duplicate-name")?.message).toContain(name);
  });
});
