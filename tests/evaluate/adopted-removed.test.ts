import { describe, expect, it } from "vitest";
import type { Policy } from "../../src/index.js";
import { adopt, compile, compileSound, head, PARENT, tested } from "./orders.js";
import { assess, summarise } from "./sample.js";

const without = (...steps: readonly string[]) => `checks: { daily: { without: [${steps.join(", ")}] } }\n`;
const later = "until: 2026-12-31";

/** A policy between the parent and the one in question, with orders of its own. */
const middle = (orders: string) => ({ "./middle.yaml": `${head("m", "./parent.yaml")}adopted:\n${orders}` });

const recorded = [
  { step: "harness", result: "satisfactory" },
  { step: "leak", start: "290 bar", end: "275 bar", held: "60 s" },
  { step: "tally", seen: { set: "014", "log-book": "014" } },
];

describe("an order of the parent's about a step that a policy leaves out", () => {
  const judge = (policy: Policy, at: string) => assess(policy, recorded, tested, { at });

  it.each([
    ["leaves it out", "step: daily/leak, omit: true"],
    ["has limits for it", "step: daily/leak, requirement: drop, accept: { at-most: 20 bar }"],
    ["has limits for its tolerance", "tolerance: drop, accept: { at-most: 20 bar }"],
  ])("is nothing to it: %s", (_, order) => {
    const parents = middle(adopt("parents", `${order}, ${later}`));
    const { diagnostics } = compile(head("c", "./middle.yaml") + without("leak"), parents);
    expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([["resolve/looser", "warning"]]);
    const own = compile(
      `${head("c", "./parent.yaml")}${without("leak")}adopted:\n${adopt("own", `${order}, ${later}`)}`,
    );
    expect(own.diagnostics.map(({ code }) => code)).toContainEqual(
      expect.stringMatching(/^plan\/(unknown-name|unused)$/),
    );
  });

  it.each([
    ["leaves it out", "step: daily/leak, omit: true", "not-applicable: omitted-by-adoption", "omitted-by-adoption"],
    [
      "has limits for it",
      "step: daily/leak, requirement: drop, accept: { at-most: 20 bar }",
      "within",
      "at most 20 bar",
    ],
    ["has limits for its tolerance", "tolerance: drop, accept: { at-most: 20 bar }", "within", "at most 20 bar"],
  ])("stands with the parent's step once that is asked again: %s", (_, order, outcome, said) => {
    const parents = middle(adopt("parents", `${order}, until: 2026-06-30`));
    const child = `${head("c", "./middle.yaml")}${without("leak")}adopted:\n${adopt("away", "step: daily/leak, until: 2026-04-30")}${adopt("again", "step: daily/leak, until: 2026-05-05")}`;
    const policy = compileSound(child, parents);
    const heir = compileSound(head("g", "./child.yaml"), { ...parents, "./child.yaml": child });
    for (const one of [policy, heir]) {
      expect(summarise(judge(one, "2026-04-12"))["leak drop"]).toBe("not-applicable: omitted-by-adoption");
      const drop = judge(one, "2026-05-12").results.find(({ requirement }) => requirement === "drop");
      expect(drop).toMatchObject({ without: "outside", adopted: "parents" });
      expect([drop?.reason, drop?.accept]).toContain(said);
      expect(summarise(judge(one, "2026-05-12"))["leak drop"]).toBe(outcome);
      expect(summarise(judge(one, "2026-07-12"))["leak drop"]).toBe("outside");
    }
  });

  it.each([
    ["is nothing to one that leaves out the requirement that it names", "omit: true"],
    ["is nothing to one that leaves out the requirement that it has limits for", "accept: { at-most: 20 bar }"],
  ])("%s", (_, order) => {
    const parents = middle(adopt("parents", `step: daily/leak, requirement: drop, ${order}, ${later}`));
    const rise = `checks:
  daily:
    steps:
      - { step: leak, kind: hold, quantity: pressure, lasting: { at-least: 60 s }, rise: { accept: { at-most: 1 bar } }, basis: { kind: common-practice } }
`;
    const codes = (text: string) =>
      compile(text, parents).diagnostics.map(({ code, severity, file }) => [code, severity, file]);
    expect(codes(head("c", "./middle.yaml") + rise)).toEqual([["resolve/looser", "warning", "child.yaml"]]);
    const again = `step: daily/leak, requirement: drop, ${order}, ${later}`;
    expect(codes(`${head("c", "./middle.yaml")}${rise}adopted:\n${adopt("parents", again)}`)).toContainEqual([
      "plan/unknown-name",
      "error",
      "child.yaml",
    ]);
    const covered = compileSound(
      `${head("c", "./middle.yaml")}${rise}adopted:\n${adopt("away", "step: daily/leak, requirement: drop, until: 2026-04-30")}`,
      parents,
    );
    expect(summarise(judge(covered, "2026-05-12"))["leak drop"]).toBe("outside");
  });

  it("is gone where the policy states an order of the same name", () => {
    const parents = middle(adopt("same", `step: daily/leak, omit: true, ${later}`));
    const child = `${head("c", "./middle.yaml")}${without("leak")}adopted:\n${adopt("same", "step: daily/leak, until: 2026-04-30")}`;
    expect(summarise(judge(compileSound(child, parents), "2026-05-12"))["leak drop"]).toBe("outside");
  });

  it("is refused where another step is asked instead, of which nothing would be said", () => {
    const parents = {
      "./middle.yaml": `${head("m", "./parent.yaml")}checks: { daily: { steps: [{ step: voice, kind: confirm }] } }\nadopted:\n${adopt("mast", `step: daily/torch, instead: daily/voice, ${later}`)}`,
    };
    const { diagnostics } = compile(head("c", "./middle.yaml") + without("torch"), parents);
    expect(diagnostics.map(({ code, file }) => [code, file])).toContainEqual(["plan/unknown-name", "./middle.yaml"]);
  });
});

describe("a step left out whose name another step has taken", () => {
  const parents = {
    "./parent.yaml": PARENT.replace("{ step: torch, kind", "{ step: torch, formerly: [lamp], kind"),
  };
  const codes = (step: string) =>
    compile(
      `${head("c", "./parent.yaml")}checks: { daily: { without: [torch], steps: [{ step: ${step}, kind: confirm }] } }\nadopted:\n${adopt("away", "step: daily/torch, until: 2026-04-30")}`,
      parents,
    ).diagnostics.map(({ code }) => code);

  it("has nothing to come back to: what was recorded under that name would be judged as the other's", () => {
    expect(codes("lamp")).toEqual(["plan/covering-cannot-lapse"]);
    expect(codes("candle, formerly: [lamp]")).toEqual(["plan/covering-cannot-lapse"]);
    expect(codes("candle, formerly: [torch]")).toEqual(["plan/covering-cannot-lapse"]);
    expect(codes("candle")).toEqual([]);
  });

  it("has nothing to come back to either in a policy that inherits the order, and in its heir", () => {
    const middle = `${head("m", "./parent.yaml")}checks: { daily: { without: [torch] } }
adopted:
${adopt("away", "step: daily/torch, until: 2026-04-30")}`;
    const family = { ...parents, "./middle.yaml": middle };
    const taking = (step: string) =>
      `${head("c", "./middle.yaml")}checks: { daily: { steps: [{ step: ${step}, kind: confirm, consequence: note }] } }\n`;
    const told = (text: string, more = {}) =>
      compile(text, { ...family, ...more }).diagnostics.map(({ code, file }) => [code, file]);
    for (const step of ["lamp", "candle, formerly: [lamp]", "candle, formerly: [torch]"]) {
      expect(told(taking(step))).toEqual([["plan/covering-cannot-lapse", "./middle.yaml"]]);
      const heir = told(head("g", "./child.yaml"), { "./child.yaml": taking(step) });
      expect(heir).toContainEqual(["plan/covering-cannot-lapse", "./middle.yaml"]);
    }
    expect(told(taking("candle"))).toEqual([]);
    expect(told(taking("torch"))).toEqual([]);
  });
});

describe("an order of the parent's that leaves out an interval which the policy does not ask", () => {
  const spare =
    "  spare: { of: set, every: P5Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }\n";
  const parent = `${PARENT.replace("[tested]", "[tested, spare]")}${spare}adopted:\n${adopt("parents", "interval: tested, omit: true, until: 2026-05-31")}`;
  const parents = { "./parent.yaml": parent };
  const child = `${head("c", "./parent.yaml")}checks: { daily: { intervals: [spare] } }\n`;
  const cover = `adopted:\n${adopt("away", "interval: tested, until: 2026-04-30")}`;
  const due = (policy: Policy, at: string) =>
    summarise(assess(policy, [], { testedOn: "2024-01-10" }, { at }))["tested due"];

  it("is nothing to it, and no mistake of its own", () => {
    const codes = (text: string, more = {}) =>
      compile(text, { ...parents, ...more }).diagnostics.map(({ code, severity, file }) => [code, severity, file]);
    const looser = [["resolve/looser", "warning", expect.any(String)]];
    expect(codes(child)).toEqual(looser);
    expect(codes(head("g", "./child.yaml"), { "./child.yaml": child })).toEqual([]);
    const own = `${child}adopted:\n${adopt("own", "interval: tested, omit: true, until: 2026-05-31")}`;
    expect(codes(own)).toContainEqual(["plan/not-yet", "error", "child.yaml"]);
  });

  it("stands with the interval where that is asked again", () => {
    const policy = compileSound(`${child}${cover}`, parents);
    const below = compileSound(head("g", "./child.yaml"), { ...parents, "./child.yaml": `${child}${cover}` });
    for (const one of [policy, below]) {
      expect(due(one, "2026-04-12")).toBe("not-applicable: omitted-by-adoption");
      expect(due(one, "2026-05-12")).toBe("not-applicable: omitted-by-adoption");
      expect(due(one, "2026-06-12")).toBe("outside");
    }
  });
});
