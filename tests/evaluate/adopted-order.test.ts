import { describe, expect, it } from "vitest";
import { adopt, compile, compileSound, head, PARENT, tested } from "./orders.js";
import { assess, summarise } from "./sample.js";

/** The parent's torch comes after the leak, and a lamp after the torch. */
const parents = {
  "./parent.yaml": PARENT.replace(
    "{ step: torch, kind: confirm, consequence: refer }",
    "{ step: torch, kind: confirm, consequence: refer, after: [leak] }\n      - { step: lamp, kind: confirm, after: [torch] }",
  ),
};

describe("steps with an order of their own that a policy leaves out", () => {
  const recorded = (leak: string, torch: string, lamp: string) => [
    { step: "harness", result: "satisfactory" },
    { step: "leak", start: "290 bar", end: "290 bar", held: "60 s", at: `2026-05-12T${leak}:00Z` },
    { step: "torch", result: "satisfactory", at: `2026-05-12T${torch}:00Z` },
    { step: "lamp", result: "satisfactory", at: `2026-05-12T${lamp}:00Z` },
    { step: "tally", seen: { set: "014", "log-book": "014" } },
  ];

  it.each([
    ["torch", "lamp"],
    ["lamp", "torch"],
  ])("come back in the parent's order, whichever order names them first: %s, %s", (first, second) => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks: { daily: { without: [torch, lamp] } }\nadopted:\n${adopt("one", `step: daily/${first}, until: 2026-04-30`)}${adopt("two", `step: daily/${second}, until: 2026-04-30`)}`,
      parents,
    );
    const order = (...times: readonly [string, string, string]) => {
      const assessment = assess(policy, recorded(...times), tested, { at: "2026-05-12" });
      return [assessment.verdict, summarise(assessment).order];
    };
    expect(order("10:00", "11:00", "12:00")).toEqual(["meets", "within"]);
    expect(order("10:00", "12:00", "11:00")).toEqual(["refer", "outside"]);
    expect(order("12:00", "10:00", "11:00")).toEqual(["refer", "outside"]);
  });

  it.each([
    ["is inherited", ""],
    ["is stated again", ", steps: [{ step: lamp, kind: confirm }]"],
  ])("come back before a step that came after them and %s", (_, kept) => {
    const policy = compileSound(
      `${head("c", "./parent.yaml")}checks: { daily: { without: [torch]${kept} } }\nadopted:\n${adopt("one", "step: daily/torch, until: 2026-04-30")}`,
      parents,
    );
    const verdict = (...times: readonly [string, string, string]) =>
      assess(policy, recorded(...times), tested, { at: "2026-05-12" }).verdict;
    expect(verdict("10:00", "11:00", "12:00")).toBe("meets");
    expect(verdict("10:00", "12:00", "11:00")).toBe("refer");
    const heir = compileSound(head("g", "./child.yaml"), {
      ...parents,
      "./child.yaml": `${head("c", "./parent.yaml")}checks: { daily: { without: [torch]${kept} } }\nadopted:\n${adopt("one", "step: daily/torch, until: 2026-04-30")}`,
    });
    const wrong = assess(heir, recorded("10:00", "12:00", "11:00"), tested, { at: "2026-05-12" });
    expect(wrong.verdict).toBe("refer");
  });

  it("are no departure in the order beside that, but two that stay and come after each other no more are one", () => {
    const codes = (text: string) =>
      compile(`${head("c", "./parent.yaml")}${text}`, parents).diagnostics.map(({ code, message }) => [
        code,
        message.includes("order of the check"),
      ]);
    expect(codes("checks: { daily: { without: [lamp] } }\n")).toEqual([["resolve/looser", false]]);
    expect(codes("checks: { daily: { without: [torch] } }\n")).toEqual([["resolve/looser", false]]);
    expect(codes("checks: { daily: { steps: [{ step: lamp, kind: confirm }] } }\n")).toEqual([
      ["resolve/looser", true],
    ]);
  });

  it.each([
    ["any", "{ step: torch, kind: confirm, behind: leak }", ["resolve/looser"]],
    ["any", "{ step: torch, kind: confirm, behind: leak, after: [leak] }", ["resolve/looser"]],
    ["{ listed-by: at }", "{ step: torch, kind: confirm }", ["resolve/cannot-compare"]],
    ["{ listed-by: at }", "{ step: torch, kind: confirm, behind: leak }", []],
  ])("keep the eldest's order, under %s, in a policy that states them again: %s", (order, torch, wanted) => {
    const eldest = parents["./parent.yaml"].replace("order: any", `order: ${order}`);
    const middle = `${head("c", "./parent.yaml")}checks: { daily: { without: [torch] } }\nadopted:\n${adopt("one", "step: daily/torch, until: 2026-04-30")}`;
    const compileHeir = (steps: string) =>
      compile(`${head("g", "./middle.yaml")}checks: { daily: { steps: [${steps}] } }\n`, {
        "./parent.yaml": eldest,
        "./middle.yaml": middle,
      }).diagnostics;
    expect(compileHeir(torch).map(({ code, message }) => [code, message.includes("order of the check")])).toEqual(
      wanted.map((code) => [code, true]),
    );
    const whole =
      "{ step: torch, kind: confirm, behind: leak, after: [leak] }, { step: lamp, kind: confirm, after: [torch] }";
    expect(compileHeir(whole)).toEqual([]);
  });
});
