import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/index.js";
import { makePolicy } from "./sample.js";

const policy = makePolicy([{ step: "hoses", kind: "confirm" }]);
const SOUND = {
  tenbar: 1,
  id: "r",
  check: "daily",
  at: "2026-04-12",
  subject: { kind: "set", id: "S-014" },
  steps: [{ step: "hoses", result: "satisfactory" }],
};

/** `[[…]]`, so many lists deep. */
function nestLists(depth: number): unknown {
  return depth === 1 ? [] : [nestLists(depth - 1)];
}

function nestMaps(depth: number): unknown {
  return depth === 1 ? {} : { in: nestMaps(depth - 1) };
}

function listProblems(record: unknown) {
  const { judged, verdict, results, findings, problems } = evaluate(policy, record);
  if (judged) return undefined;
  expect({ verdict, results, findings }).toEqual({ verdict: "refer", results: [], findings: [] });
  return problems?.map(({ pointer, message }) => `${pointer}: ${message}`);
}

const OBJECT = ": a record is a JSON object";
const FORMAT = "/tenbar: `tenbar` must be the number 1";
const TIME = "/at: `at` must be an instant with offset, a local time, or a date, such as `2026-04-12T07:04:00+01:00`";
const SUBJECT = "/subject: `subject` must be an object";
const STEPS = "/steps: `steps` must be a list";
const STEP = "a step must be an object with a text `step`";
const text = (pointer: string) => `${pointer}: \`${pointer.split("/").at(-1)}\` must be a text that is not blank`;

describe("a record that cannot be judged", () => {
  it("is none of these", () => {
    expect(listProblems(SOUND)).toBeUndefined();
    expect(evaluate(policy, SOUND)).toMatchObject({ judged: true, verdict: "meets" });
  });

  it.each<[string, unknown]>([
    ["nothing", undefined],
    ["null", null],
    ["a text", "record"],
    ["a number", 5],
    ["a list", [SOUND]],
  ])("is %s", (_name, record) => {
    expect(listProblems(record)).toEqual([OBJECT]);
  });

  it.each<[string, unknown, readonly string[]]>([
    ["tenbar", 2, [FORMAT]],
    ["tenbar", undefined, [FORMAT]],
    ["id", undefined, [text("/id")]],
    ["id", 5, [text("/id")]],
    ["id", " ", [text("/id")]],
    ["check", null, [text("/check")]],
    ["check", "", [text("/check")]],
    ["at", "12 April", [TIME]],
    ["at", undefined, [TIME]],
    ["subject", undefined, [SUBJECT]],
    ["subject", [], [SUBJECT]],
    ["subject", { id: "S-014" }, [text("/subject/kind")]],
    ["subject", { kind: "set", id: 14 }, [text("/subject/id")]],
    ["subject", {}, [text("/subject/kind"), text("/subject/id")]],
    ["steps", undefined, [STEPS]],
    ["steps", {}, [STEPS]],
    ["steps", [null], [`/steps/0: ${STEP}`]],
    ["steps", [{ step: "hoses" }, { step: " " }, "hoses", { step: 5 }], [1, 2, 3].map((at) => `/steps/${at}: ${STEP}`)],
  ])("has as its `%s` %j", (key, value, problems) => {
    expect(listProblems({ ...SOUND, [key]: value })).toEqual(problems);
  });

  it("is told everything that is wrong with it at once", () => {
    expect(listProblems({})).toEqual([FORMAT, text("/id"), text("/check"), TIME, SUBJECT, STEPS]);
  });

  it.each([
    ["lists", nestLists],
    ["maps", nestMaps],
  ])("holds %s within each other more than 64 deep, wherever that is", (_name, nest) => {
    const most = ": a record nests at most 64 levels deep";
    // The record itself is the first of its levels.
    expect(listProblems({ ...SOUND, local: { deep: nest(62) } })).toBeUndefined();
    expect(listProblems({ ...SOUND, local: { deep: nest(63) } })).toEqual([most]);
    expect(listProblems({ ...SOUND, steps: [SOUND.steps[0], nest(63)] })).toEqual([most]);
    expect(listProblems({ ...SOUND, local: { beside: null, deep: ["a", 5, nest(62)] } })).toEqual([most]);
  });

  it("has more than 10,000 steps", () => {
    const steps = (count: number) => Array.from({ length: count }, () => SOUND.steps[0]);
    expect(listProblems({ ...SOUND, steps: steps(10_000) })).toBeUndefined();
    expect(listProblems({ ...SOUND, steps: steps(10_001) })).toEqual([
      "/steps: a record has at most 10000 steps; this one has 10001",
    ]);
  });

  it("is named as far as it names itself", () => {
    const nameOf = (record: unknown) => {
      const { recordId, check, subject, counts } = evaluate(policy, record);
      expect(counts).toEqual({ within: 0, caution: 0, outside: 0, undecided: 0, notApplicable: 0 });
      return [recordId, check, subject];
    };
    expect(nameOf({ tenbar: 1, check: "daily", id: "r", subject: { kind: "set", id: "S-014" } })).toEqual([
      "r",
      "daily",
      null,
    ]);
    expect(nameOf({ id: 5, check: { id: "daily" } })).toEqual([null, null, null]);
    for (const record of [undefined, null, "r", ["r"], {}]) expect(nameOf(record)).toEqual([null, null, null]);
  });
});
