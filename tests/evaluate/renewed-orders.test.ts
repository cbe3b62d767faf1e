import { describe, expect, it } from "vitest";
import { compilePolicy, describeCheck } from "../../src/index.js";
import { adopt, head } from "./orders.js";
import { assess } from "./sample.js";

const PARENT = `tenbar: 1
policy: { id: p, title: P, version: "1.0", status: common-practice }
deference: Local procedure stands above this policy.
tolerances:
  drop: { accept: { at-most: 10 bar }, basis: { kind: common-practice } }
  fall: { accept: { at-most: 10 bar }, basis: { kind: common-practice } }
checks:
  daily:
    order: any
    intervals: [tested]
    steps:
      - { step: leak, kind: hold, quantity: pressure, lasting: { at-least: 60 s }, drop: drop, basis: { kind: common-practice } }
      - { step: second, kind: hold, quantity: pressure, drop: fall, basis: { kind: common-practice } }
intervals:
  tested: { of: set, every: P1Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
`;

const MIDDLE = `${head("c", "./parent.yaml")}tolerances:
  drop: { accept: { at-most: 20 bar }, basis: { kind: local, order: "LO 1" } }
checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, lasting: { at-least: 40 s }, drop: drop, basis: { kind: common-practice } }
intervals:
  tested: { of: set, every: P2Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
adopted:
`;

/** What two steps come to on a day at a policy that inherits an order and states its id again. */
function judge(order: string, parts: string, at: string, held = "50 s") {
  const { policy, diagnostics } = compilePolicy(`${head("g", "./middle.yaml")}${parts}`, {
    file: "child.yaml",
    parents: { "./parent.yaml": PARENT, "./middle.yaml": `${MIDDLE}${order}` },
  });
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
  const steps = [
    { step: "leak", start: "290 bar", end: "275 bar", held },
    { step: "second", start: "290 bar", end: "290 bar", held: "60 s" },
  ];
  const { results, findings } = assess(policy, steps, { testedOn: "2025-02-01" }, { at });
  const find = (name: string) =>
    results.find(({ step = "tested", requirement }) => step !== "second" && requirement === name)?.outcome;
  const until = findings.flatMap(({ code, requirement, params, step }) =>
    code.endsWith("/adopted") && step !== "second" ? [[requirement, params.until]] : [],
  );
  return { lasting: find("lasting"), drop: find("drop"), due: find("due"), until: Object.fromEntries(until) };
}

describe("an inherited order whose id the policy states again", () => {
  const leak = adopt("trial", "step: daily/leak, until: 2026-04-30");

  it("is prolonged for the requirement that is named, and lapses for the rest", () => {
    const again = `adopted:\n${adopt("trial", "step: daily/leak, requirement: lasting, until: 2026-06-30")}`;
    expect(judge(leak, again, "2026-04-12")).toMatchObject({
      lasting: "within",
      drop: "within",
      until: { lasting: "2026-06-30", drop: "2026-04-30" },
    });
    expect(judge(leak, again, "2026-05-12")).toMatchObject({ lasting: "within", drop: "outside" });
    expect(judge(leak, again, "2026-07-12")).toMatchObject({ lasting: "outside" });
  });

  it("is prolonged for the requirements that use the tolerance that is named", () => {
    const again = `adopted:\n${adopt("trial", "tolerance: drop, until: 2026-06-30")}`;
    expect(judge(leak, again, "2026-05-12")).toMatchObject({ lasting: "outside", drop: "undecided" });
    const long = judge(leak, again, "2026-05-12", "60 s");
    expect(long).toMatchObject({ lasting: "within", drop: "within", until: { drop: "2026-06-30" } });
  });

  it.each([
    ["a step", "step: daily/leak", "drop"],
    ["a tolerance", "tolerance: drop", "drop"],
    ["an interval", "interval: tested", "due"],
  ] as const)(
    "of %s keeps neither the end nor the scope that it had, where it is to last or to hold for all",
    (_, thing, name) => {
      const again = (rest: string) => `adopted:\n${adopt("trial", `${thing}, ${rest}`)}`;
      const read = (before: string, after: string, at: string) =>
        judge(adopt("trial", `${thing}, ${before}`), again(after), at, "60 s")[name];
      expect(read("until: 2026-04-30", "review: 2027-01-01", "2026-05-12")).toBe("within");
      expect(read("review: 2027-01-01", "until: 2026-04-30", "2026-05-12")).toBe("outside");
      const scoped = "only: { station: Lowmere 3 }, until: 2026-12-31";
      expect(read(scoped, "until: 2026-12-31", "2026-04-12")).toBe("within");
      expect(read("until: 2026-12-31", scoped, "2026-04-12")).toBe("outside");
    },
  );

  const fall = `tolerances:\n  fall: { accept: { at-most: 12 bar }, basis: { kind: local, order: "LO 2" } }\n`;
  const other = `${fall}adopted:\n${adopt("trial", "tolerance: fall, until: 2026-06-30")}`;

  it.each([
    ["a step", leak, "drop"],
    ["a tolerance", adopt("trial", "tolerance: drop, until: 2026-04-30"), "drop"],
    ["an interval", adopt("trial", "interval: tested, until: 2026-04-30"), "due"],
  ] as const)("lapses for %s on its own day where the id now names another tolerance", (_, order, name) => {
    expect(judge(order, other, "2026-04-12")[name]).toBe("within");
    expect(judge(order, other, "2026-05-12")[name]).toBe("outside");
  });
});

describe("an inherited order under a policy that is tighter than what stands without it", () => {
  const text = (limit: string) =>
    `${head("g", "./middle.yaml")}tolerances:\n  drop: { accept: { at-most: ${limit} }, basis: { kind: local, order: "LO 2" } }\n`;
  const read = (limit: string, at: string) => {
    const { policy, diagnostics } = compilePolicy(text(limit), {
      file: "child.yaml",
      parents: {
        "./parent.yaml": PARENT,
        "./middle.yaml": `${MIDDLE}${adopt("trial", "tolerance: drop, until: 2026-04-30")}`,
      },
    });
    if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
    const shown = describeCheck(policy, "daily", { kind: "set", id: "S-014" }, { at })
      ?.steps.find(({ step }) => step === "leak")
      ?.asked[0]?.limits.find(({ requirement }) => requirement === "drop")?.accept;
    const steps = [{ step: "leak", start: "290 bar", end: "282 bar", held: "60 s" }];
    const { outcome, adopted } =
      assess(policy, steps, {}, { at }).results.find(({ requirement }) => requirement === "drop") ?? {};
    return { shown, outcome, adopted };
  };

  it("has nothing to cover: form and record go by the policy's own limit on every day", () => {
    const own = { shown: "at most 5 bar", outcome: "outside", adopted: undefined };
    expect(read("5 bar", "2026-04-12")).toEqual(own);
    expect(read("5 bar", "2026-05-12")).toEqual(own);
  });

  it("still lapses to the limit of the eldest where the policy's own lies between", () => {
    expect(read("7 bar", "2026-05-12")).toMatchObject({ shown: "at most 7 bar", outcome: "outside" });
    expect(read("15 bar", "2026-04-12")).toMatchObject({ shown: "at most 15 bar", adopted: "trial" });
    expect(read("15 bar", "2026-05-12")).toMatchObject({ shown: "at most 10 bar", outcome: "within" });
  });
});

describe("an inherited order with limits that names no requirement", () => {
  const order = `adopted:\n${adopt("trial", "step: daily/second, accept: { at-most: 15 bar }, until: 2026-04-30")}`;
  const codesUnder = (requirement: string) =>
    compilePolicy(
      `${head("g", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: second, kind: hold, quantity: pressure, ${requirement}: { accept: { at-most: 5 bar } }, basis: { kind: common-practice } }
`,
      { file: "child.yaml", parents: { "./parent.yaml": `${PARENT}${order}` } },
    ).diagnostics.map(({ code, file }) => [code, file]);

  it("is refused where the step here has limits for another requirement only", () => {
    expect(codesUnder("rise")).toContainEqual(["resolve/adoption-does-not-fit", "child.yaml"]);
  });

  it.each([
    ["several", "kind: hold, quantity: pressure, start: { at-least: 100 bar }, drop: fall", "one of `start`, `drop`"],
    ["none", "kind: confirm", "a requirement with limits"],
  ])("is refused at the step here where that has %s with limits", (_, step, wanted) => {
    const { policy, diagnostics } = compilePolicy(
      `${head("g", "./parent.yaml")}checks:\n  daily:\n    steps:\n      - { step: second, ${step}, basis: { kind: common-practice } }\n`.replace(
        "confirm, basis: { kind: common-practice }",
        "confirm",
      ),
      { file: "child.yaml", parents: { "./parent.yaml": `${PARENT}${order}` } },
    );
    expect(policy).toBeUndefined();
    const told = diagnostics.filter(({ severity }) => severity === "error");
    expect(told.map((one) => [one.code, one.file, one.line, one.wanted])).toEqual([
      ["resolve/adoption-does-not-fit", "child.yaml", 7, wanted],
    ]);
    expect(told[0]?.mend).toContain("state `trial` again");
  });

  it("is refused too by a policy that inherits both", () => {
    const middle = `${head("m", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: second, kind: hold, quantity: pressure, rise: { accept: { at-most: 5 bar } }, basis: { kind: common-practice } }
`;
    const { policy, diagnostics } = compilePolicy(head("g", "./middle.yaml"), {
      file: "child.yaml",
      parents: { "./parent.yaml": `${PARENT}${order}`, "./middle.yaml": middle },
    });
    expect(policy).toBeUndefined();
    expect(diagnostics.map(({ code, file }) => [code, file])).toEqual([
      ["resolve/adoption-does-not-fit", "./middle.yaml"],
    ]);
  });

  it("stands where the step has limits for the same one", () => {
    expect(codesUnder("drop")).toEqual([]);
  });
});

describe("a form of a step whose every limit is left out by an order on its tolerance", () => {
  it("does not ask the step while the order applies", () => {
    const { policy } = compilePolicy(
      `${PARENT}adopted:\n${adopt("off", "tolerance: fall, omit: true, until: 2026-04-30")}`,
      { file: "one.yaml" },
    );
    if (policy === undefined) throw new Error("it does not compile");
    const second = (at: string) =>
      describeCheck(policy, "daily", {}, { at })?.steps.find(({ step }) => step === "second");
    expect(second("2026-04-12")).toMatchObject({ applies: "no", reason: "omitted-by-adoption" });
    expect(second("2026-05-12")).toMatchObject({ applies: "yes" });
  });
});
