import { describe, expect, it } from "vitest";
import { describeCheck } from "../../src/index.js";
import { adopt, compile, compileSound, head, parentWith } from "./orders.js";
import { assess, summarise } from "./sample.js";

const PARENT = parentWith("step: telemetry, kind: confirm");

/** A child that asks a voice check, of sets with a radio, instead of the telemetry check. */
const CHILD = `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: voice, kind: confirm, when-fitted: radio, consequence: note }
adopted:
${adopt("masts", "step: daily/telemetry, instead: daily/voice, until: 2026-04-30")}`;

describe("a step that is asked instead of another, of sets that have the thing fitted", () => {
  const policy = compileSound(CHILD, { "./parent.yaml": PARENT });
  const done = [
    { step: "harness", result: "satisfactory" },
    { step: "voice", result: "satisfactory" },
  ];

  it.each([
    ["is fitted", { radio: true }, "2026-04-12", "not-applicable: omitted-by-adoption", "within", "meets"],
    ["is not fitted", { radio: false }, "2026-04-12", "undecided: missing", "within", "refer"],
    ["is not told of", {}, "2026-04-12", "undecided: missing", "undecided: fitting-not-recorded", "refer"],
    [
      "is told of in no readable way",
      { radio: "x" },
      "2026-04-12",
      "undecided: missing",
      "undecided: unreadable",
      "refer",
    ],
    ["is fitted, on a later day", { radio: true }, "2026-05-12", "undecided: missing", undefined, "refer"],
  ])("leaves no record without either where it %s", (_, fitted, at, telemetry, voice, verdict) => {
    const assessment = assess(policy, done, { fitted }, { at });
    const found = summarise(assessment);
    expect([found["telemetry condition"], found["voice condition"], assessment.verdict]).toEqual([
      telemetry,
      voice,
      verdict,
    ]);
  });

  it("judges the step itself where the thing is not fitted, and says so where that is open", () => {
    const both = [...done, { step: "telemetry", result: "defect" }];
    const read = (fitted: object) => assess(policy, both, { fitted }).results.find(({ step }) => step === "telemetry");
    expect(read({ radio: true })).toMatchObject({ outcome: "not-applicable", without: "outside", adopted: "masts" });
    expect(read({ radio: false })).toMatchObject({ outcome: "outside" });
    expect(read({ radio: false })).not.toHaveProperty("adopted");
    expect(read({})).toMatchObject({ outcome: "outside", without: "outside", adopted: "masts" });
  });

  it.each([
    [{ radio: true }, "no"],
    [{ radio: false }, "yes"],
    [{}, "yes"],
  ])("shows on a form of %j whether the step itself is asked", (fitted, applies) => {
    const form = describeCheck(policy, "daily", { kind: "set", id: "S-014", fitted }, { at: "2026-04-12" });
    expect(form?.steps.find(({ step }) => step === "telemetry")?.applies).toBe(applies);
  });
});

describe("a step that is asked instead of another, of which an order about its fitting has ended", () => {
  const parent = `${PARENT}      - { step: voice, kind: confirm, when-fitted: radio }
adopted:
${adopt("masts", "step: daily/telemetry, instead: daily/voice, until: 2026-06-30")}`;
  const done = [
    { step: "harness", result: "satisfactory" },
    { step: "voice", result: "satisfactory" },
  ];

  it.each([
    ["of every set", "{ step: voice, kind: confirm }", {}],
    ["of sets with another thing", "{ step: voice, kind: confirm, when-fitted: mast }", { mast: true }],
  ])("leaves the step to be asked where the parent asks no other: here %s", (_, voice, fitted) => {
    const own = adopt("voices", "step: daily/voice, until: 2026-04-30");
    const { policy, diagnostics } = compile(
      `${head("c", "./parent.yaml")}checks: { daily: { steps: [${voice}] } }\nadopted:\n${own}`,
      { "./parent.yaml": parent },
    );
    if (policy === undefined || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics));
    const read = (radio: boolean | undefined, at: string) => {
      const subject = { kind: "set", id: "S-014", fitted: { ...fitted, ...(radio === undefined ? {} : { radio }) } };
      const { verdict } = assess(policy, done, subject, { at });
      const form = describeCheck(policy, "daily", subject, { at });
      return [verdict, form?.steps.find(({ step }) => step === "telemetry")?.applies];
    };
    expect(read(false, "2026-04-12")).toEqual(["meets", "no"]);
    expect(read(true, "2026-05-12")).toEqual(["meets", "no"]);
    expect(read(false, "2026-05-12")).toEqual(["refer", "yes"]);
    expect(read(undefined, "2026-05-12")).toEqual(["refer", "yes"]);
  });
});

describe("a step that the parent asks again once its own order has ended", () => {
  it("is looser where it is asked instead of another only, and that is told", () => {
    const middle = `${head("m", "./parent.yaml")}checks: { daily: { without: [telemetry] } }
adopted:
${adopt("masts", "step: daily/telemetry, until: 2026-04-30")}`;
    const compileHeir = (adopted: string) =>
      compile(
        `${head("c", "./middle.yaml")}checks:
  daily:
    steps:
      - { step: telemetry, kind: confirm }
      - { step: voice, kind: confirm }
${adopted}`,
        { "./parent.yaml": PARENT, "./middle.yaml": middle },
      ).diagnostics.map(({ code, line, related }) => [code, line, related?.[0]?.file]);
    expect(compileHeir("")).toEqual([]);
    const only = `adopted:\n${adopt("voices", "step: daily/voice, instead: daily/telemetry, until: 2026-04-15")}`;
    expect(compileHeir(only)).toEqual([["resolve/asked-only-instead", 10, "./middle.yaml"]]);
  });
});

describe("a step that several orders ask for instead of others", () => {
  const parent = parentWith("step: telemetry, kind: confirm", "step: torch, kind: confirm");
  const child = `${head("c", "./parent.yaml")}facts:
  post: { at: /station, one-of: [Lowmere 3, Lowmere 4, Lowmere 5] }
checks:
  daily:
    steps:
      - { step: voice, kind: confirm, consequence: note }
adopted:
${adopt("masts", "step: daily/telemetry, instead: daily/voice, only: { post: Lowmere 3 }, until: 2026-04-30")}${adopt("lamps", "step: daily/torch, instead: daily/voice, only: { post: Lowmere 4 }, until: 2026-05-31")}`;
  const policy = compileSound(child, { "./parent.yaml": parent });
  const steps = ["harness", "telemetry", "torch"].map((step) => ({ step, result: "satisfactory" }));

  it.each([
    ["Lowmere 3", "2026-04-12", ["telemetry"]],
    ["Lowmere 4", "2026-04-12", ["torch"]],
    ["Lowmere 5", "2026-04-12", []],
    ["Lowmere 3", "2026-05-12", []],
    ["Lowmere 4", "2026-05-12", ["torch"]],
    ["Lowmere 4", "2026-06-12", []],
  ] as const)("is asked where any of them applies: %s on %s", (station, at, omitted) => {
    const found = summarise(assess(policy, steps, {}, { at, station }));
    const left = ["telemetry", "torch"].filter(
      (step) => found[`${step} condition`] === "not-applicable: omitted-by-adoption",
    );
    expect(left).toEqual(omitted);
    expect(found["voice condition"]).toBe(omitted.length === 0 ? undefined : "undecided: missing");
    const form = describeCheck(policy, "daily", { kind: "set", id: "S-014" }, { at, station });
    expect(form?.steps.some(({ step }) => step === "voice")).toBe(omitted.length > 0);
  });

  it("is asked beside them where no station is told", () => {
    const found = summarise(assess(policy, [], {}, { at: "2026-04-12" }));
    expect(found).toMatchObject({
      "telemetry condition": "undecided: missing",
      "torch condition": "undecided: missing",
      "voice condition": "undecided: missing",
    });
  });
});
