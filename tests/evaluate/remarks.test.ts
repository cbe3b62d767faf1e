import { describe, expect, it } from "vitest";
import type { Assessment } from "../../src/index.js";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const policy = makePolicy([
  { step: "harness", kind: "confirm", attestable: true },
  { step: "charge", kind: "reading", quantity: "pressure", tolerance: { accept: { "at-least": "200 bar" } }, basis },
  { step: "number", kind: "match", places: ["back", "mask"] },
  { step: "lamp", kind: "confirm", "when-fitted": "lamp" },
  { step: "whistle", kind: "reading", quantity: "pressure", tolerance: { accept: { "at-least": "50 bar" } }, basis },
]);
const HARNESS = { step: "harness", result: "satisfactory" };
const CHARGE = { step: "charge", reading: "250 bar" };
const NUMBER = { step: "number", seen: { back: "014", mask: "014" } };
const WHISTLE = { step: "whistle", reading: "60 bar" };
const SUBJECT = { fitted: { lamp: false } };
const STEPS = [HARNESS, CHARGE, NUMBER, WHISTLE];

const list = ({ findings }: Assessment) =>
  findings.map(({ code, consequence, pointer, step, params }) => ({ code, consequence, pointer, step, params }));

/** What is remarked of a record in which all is well but for what is given. */
const judge = (subject: Data, rest: Data = {}) => assess(policy, STEPS, { ...SUBJECT, ...subject }, rest);

/** What is remarked where one entry says more. */
const judgeEntry = (at: number, more: Data) =>
  assess(
    policy,
    STEPS.map((step, index) => (index === at ? { ...step, ...more } : step)),
    SUBJECT,
  );

const noted = (code: string, pointer: string, key: string, step?: string) => ({
  code,
  consequence: "note",
  pointer,
  step,
  params: { key },
});

describe("a value beside the steps", () => {
  it("that is sound is not remarked upon", () => {
    const sound = {
      marking: "014",
      removed: "none",
      class: "open-circuit",
      role: "front-line",
      instruments: { gauge: "G-1", other: null },
      fitted: { lamp: false, alarm: true, torch: null },
      ratedPressure: "300 bar",
      waterCapacity: "6.8 L",
      cylinders: [
        {
          id: "C-1",
          ratedPressure: "300 bar",
          waterCapacity: "6.8 L",
          manufacturedOn: "2020-01-01",
          requalifiedOn: "2025-01-01",
        },
      ],
    };
    const rest = { station: "Lowmere 3", decision: "D-1", supersedes: "r-0", local: {}, by: { id: "W-231" } };
    expect(list(judge(sound, rest))).toEqual([]);
    const missing = Object.fromEntries(
      [...Object.keys(sound), "fitted"].map((key) => [key, key === "fitted" ? SUBJECT.fitted : null]),
    );
    expect(list(judge(missing, { station: null, decision: null, supersedes: null, local: null, by: null }))).toEqual(
      [],
    );
  });

  it.each<[string, Data, string, string]>([
    ["station", { station: 3 }, "/station", "station"],
    ["decision", { decision: {} }, "/decision", "decision"],
    ["supersedes", { supersedes: ["r-0"] }, "/supersedes", "supersedes"],
    ["local", { local: "none" }, "/local", "local"],
    ["by", { by: "W-231" }, "/by", "by"],
    ["by's id", { by: { id: 231 } }, "/by/id", "id"],
    ["attested", { attested: "all" }, "/attested", "attested"],
    ["attested steps", { attested: { steps: "harness" } }, "/attested", "attested"],
    ["an attested step", { attested: { steps: ["harness", 5] } }, "/attested/steps/1", "attested"],
  ])("%s that cannot be read is noted", (_name, rest, pointer, key) => {
    const assessment = judge({}, rest);
    expect(list(assessment)).toEqual([noted("record/unreadable-value", pointer, key)]);
    expect(assessment.verdict).toBe("meets");
  });

  const fitted = { lamp: false };
  it.each<[string, Data, string]>([
    ["marking", { marking: 14 }, "marking"],
    ["removed", { removed: true }, "removed"],
    ["class", { class: 5 }, "class"],
    ["role", { role: 1 }, "role"],
    ["instruments", { instruments: "G-1" }, "instruments"],
    ["an instrument", { instruments: { gauge: "G-1", other: 5 } }, "instruments/other"],
    ["a part that is fitted", { fitted: { ...fitted, "lamp/left": "yes" } }, "fitted/lamp~1left"],
    ["cylinders", { cylinders: "C-1" }, "cylinders"],
    ["a cylinder", { cylinders: [{ id: "C-1" }, "C-2"] }, "cylinders/1"],
    ["rated pressure", { ratedPressure: "300" }, "ratedPressure"],
    ["rated pressure in litres", { ratedPressure: "6 L" }, "ratedPressure"],
    ["water capacity", { waterCapacity: "6 bar" }, "waterCapacity"],
    ["a cylinder's capacity", { cylinders: [{ id: "C-1", waterCapacity: "6" }] }, "cylinders/0/waterCapacity"],
    ["a cylinder's requalification", { cylinders: [{ requalifiedOn: "2020-02-30" }] }, "cylinders/0/requalifiedOn"],
    ["a cylinder's rated pressure", { cylinders: [{ id: "C-1", ratedPressure: 300 }] }, "cylinders/0/ratedPressure"],
    ["a cylinder's date", { cylinders: [{}, { id: "C-1", manufacturedOn: "?-1" }] }, "cylinders/1/manufacturedOn"],
  ])("%s of the subject that cannot be read is noted", (_name, subject, path) => {
    const key = path.split("/").at(-1)?.replace("~1", "/") ?? "";
    expect(list(judge(subject))).toEqual([noted("record/unreadable-value", `/subject/${path}`, key)]);
  });

  it("that makes up what is fitted and cannot be read leaves that open too", () => {
    const { verdict, findings } = judge({ fitted: "lamp" });
    expect(verdict).toBe("refer");
    expect(findings.map(({ pointer, code }) => [pointer, code])).toContainEqual([
      "/subject/fitted",
      "record/unreadable-value",
    ]);
  });

  it.each<[string, Data, Data, string, string]>([
    ["the record", {}, { "weather/sky": "fair" }, "/weather~1sky", "weather/sky"],
    ["the subject", { "tilde~": 1 }, {}, "/subject/tilde~0", "tilde~"],
    ["the person", {}, { by: { id: "W-231", rank: "crew" } }, "/by/rank", "rank"],
  ])("of a key that is not known in %s is noted", (_name, subject, rest, pointer, key) => {
    expect(list(judge(subject, rest))).toEqual([noted("record/unknown-key", pointer, key)]);
  });

  it("that attests what may not be attested is noted by its step", () => {
    expect(list(judge({}, { attested: { steps: ["harness", "charge", "nowhere"], wording: "all", by: "W" } }))).toEqual(
      ["charge", "nowhere"].map((step, index) => ({
        code: "record/not-attestable",
        consequence: "note",
        pointer: `/attested/steps/${index + 1}`,
        step,
        params: { step },
      })),
    );
  });
});

describe("a value of an entry", () => {
  it("that is sound, or says nothing, is not remarked upon", () => {
    const sound = { note: "in the yard", instrument: "G-1", of: "C-1", at: "2026-04-12T07:04:00Z" };
    expect(list(judgeEntry(0, sound))).toEqual([]);
    expect(
      list(judgeEntry(0, { ...sound, note: null, at: null, defect: null, trace: null, other: null, start: " " })),
    ).toEqual([]);
  });

  it.each<[string, unknown]>([
    ["note", 5],
    ["instrument", {}],
    ["of", 1],
    ["at", "seven"],
  ])("%s that cannot be read is noted", (key, value) => {
    expect(list(judgeEntry(0, { [key]: value }))).toEqual([
      noted("record/unreadable-value", `/steps/0/${key}`, key, "harness"),
    ]);
  });

  it("of another kind of step is noted as unused, and a trace is referred", () => {
    expect(list(judgeEntry(0, { reading: "250 bar" }))).toEqual([
      noted("step/unused-evidence", "/steps/0/reading", "reading", "harness"),
    ]);
    expect(list(judgeEntry(1, { trace: [250, 249] }))).toEqual([
      { ...noted("step/trace-not-judged", "/steps/1/trace", "trace", "charge"), consequence: "refer" },
    ]);
  });

  it.each([
    ["weather", undefined],
    ["Defect", "defect"],
    ["defects", "defect"],
    ["re-sult", "result"],
    ["resul", "result"],
    ["Reading", "reading"],
    // Two letters are one from too many words.
    ["if", undefined],
    ["or", undefined],
    ["off", undefined],
  ])("of a key `%s` is taken for a misspelt one where it nearly is one: %s", (key, nearest) => {
    const expected =
      nearest === undefined
        ? noted("record/unknown-key", `/steps/1/${key}`, key, "charge")
        : {
            code: "step/misspelt-key",
            consequence: "refer",
            pointer: `/steps/1/${key}`,
            step: "charge",
            params: { key, nearest },
          };
    expect(list(judgeEntry(1, { [key]: "burnt" }))).toEqual([expected]);
  });

  it("of a key of its step alone is no misspelling on a step of another kind", () => {
    expect(list(judgeEntry(0, { readings: "250 bar" }))).toEqual([
      noted("record/unknown-key", "/steps/0/readings", "readings", "harness"),
    ]);
    expect(list(judgeEntry(1, { readings: "250 bar" }))[0]?.code).toBe("step/misspelt-key");
  });
});

describe("bad news on a step", () => {
  const news = (more: Data, at = 1) => list(judgeEntry(at, more));
  const told = (code: string, key: string, params: Data, consequence = "withdraw") => ({
    code,
    consequence,
    pointer: key === "" ? "/steps/1" : `/steps/1/${key}`,
    step: "charge",
    params,
  });

  it.each<[Data, string]>([
    [{ defect: "burnt" }, "burnt"],
    [{ defect: "  burnt " }, "burnt"],
    [{ defect: true }, "defect"],
    [{ result: "defect" }, "defect"],
    [{ result: "defect", defect: " " }, "defect"],
    [{ result: "defect", defect: false }, "defect"],
    [{ result: "defect", defect: "burnt" }, "burnt"],
    [{ defect: { is: "burnt" } }, "defect"],
  ])("%j weighs what the step weighs, by the name of the defect", (more, defect) => {
    expect(news(more)).toEqual([told("step/defect", "", { defect })]);
  });

  it("that it was not done is told once, beside a reading as without one", () => {
    expect(news({ result: "not-done" }).map(({ code, consequence }) => [code, consequence])).toEqual([
      ["step/not-done", "refer"],
    ]);
    const { findings } = assess(policy, [HARNESS, { step: "charge", result: "not-done" }, NUMBER, WHISTLE], SUBJECT);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ step: "charge", consequence: "refer" });
  });

  it.each<[Data, string, string]>([
    [{ result: "fine" }, "result", "fine"],
    [{ result: 5 }, "result", "5"],
    [{ result: { is: 5 } }, "result", '{"is":5}'],
    [{ defect: false }, "defect", "defect: false"],
  ])("%j cannot be understood, and is referred", (more, key, recorded) => {
    expect(news(more)).toEqual([told("step/unknown-result", key, { recorded }, "refer")]);
  });

  it("is told on a step that the policy does not know, which is noted besides", () => {
    const entry = { step: "strange", result: "not-done", defect: "burnt", Defects: 5, weather: "fair" };
    expect(list(assess(policy, [...STEPS, entry], SUBJECT))).toEqual([
      { code: "step/defect", consequence: "refer", pointer: "/steps/4", step: "strange", params: { defect: "burnt" } },
      { code: "step/not-done", consequence: "refer", pointer: "/steps/4", step: "strange", params: {} },
      {
        code: "step/misspelt-key",
        consequence: "refer",
        pointer: "/steps/4/Defects",
        step: "strange",
        params: { key: "Defects", nearest: "defect" },
      },
      {
        code: "record/unknown-step",
        consequence: "note",
        pointer: "/steps/4",
        step: "strange",
        params: { step: "strange" },
      },
    ]);
  });

  it("is told on a step that an order leaves out", () => {
    const omitted = makePolicy(
      [
        { step: "harness", kind: "confirm" },
        { step: "lamp", kind: "confirm" },
      ],
      {
        adopted: [
          {
            id: "no-lamp",
            step: "daily/lamp",
            omit: true,
            from: "2026-01-01",
            until: "2026-12-31",
            order: "TO 1",
            by: "An officer",
            reason: "A trial",
          },
        ],
      },
    );
    const judgeLamp = (more: Data) => list(assess(omitted, [HARNESS, { step: "lamp", ...more }]));
    const weights = (more: Data) =>
      judgeLamp(more)
        .map(({ code, consequence }) => [code, consequence])
        .filter(([code]) => code !== "step/adopted");
    expect(weights({ result: "satisfactory" })).toEqual([]);
    expect(weights({ result: "not-done", defect: "dark" })).toEqual([
      ["step/defect", "withdraw"],
      ["step/not-done", "refer"],
    ]);
  });
});

describe("a place that is not asked for", () => {
  const see = (seen: Data) => list(judgeEntry(2, { seen: { back: "014", mask: "014", ...seen } }));
  const place = (name: string, consequence: string, pointer = name) => ({
    code: "step/unknown-place",
    consequence,
    pointer: `/steps/2/seen/${pointer}`,
    step: "number",
    params: { place: name },
  });

  it("is noted where it says what each place says, and is referred where it does not", () => {
    expect(see({ tally: "014" })).toEqual([place("tally", "note")]);
    expect(see({ tally: " 014 ", back: "014 " })).toEqual([place("tally", "note")]);
    expect(see({ tally: "015" })).toEqual([place("tally", "refer")]);
    expect(see({ tally: 14 })).toEqual([place("tally", "refer")]);
    expect(see({ tally: null, other: "" })).toEqual([]);
    expect(see({ "left/right": "014" })).toEqual([place("left/right", "note", "left~1right")]);
  });

  it("is compared with what is asked for and said alone", () => {
    const found = list(judgeEntry(2, { seen: { back: "014", mask: null, tally: "014", other: "015" } }));
    expect(found.filter(({ code }) => code === "step/unknown-place")).toEqual([
      place("other", "refer"),
      place("tally", "note"),
    ]);
    const apart = list(judgeEntry(2, { seen: { back: "014", mask: "015", tally: "014" } }));
    expect(apart.filter(({ code }) => code === "step/unknown-place")).toEqual([place("tally", "refer")]);
  });
});
