import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { evaluate, recordSchema } from "../../src/index.js";
import { type Path, replaceAt } from "../laws/evidence-path.js";
import { makePolicy } from "./sample.js";

const basis = { kind: "common-practice" };
const policy = makePolicy(
  [
    { step: "harness", kind: "confirm", attestable: true, defects: { torn: { consequence: "refer" } } },
    { step: "lamp", kind: "confirm", "when-fitted": "lamp" },
    { step: "number", kind: "match", places: ["back", "mask"] },
    { step: "charge", kind: "reading", quantity: "pressure", tolerance: { accept: { "at-least": "200 bar" } }, basis },
    { step: "faults", kind: "reading", quantity: "count", tolerance: { accept: { "at-most": 0 } }, basis },
    {
      step: "alarm",
      kind: "timing",
      "from-event": "still",
      "to-event": "sounds",
      tolerance: { accept: { "at-most": "35 s" } },
      basis,
    },
    { step: "tested", kind: "in-date", within: "P30D", basis },
  ],
  {},
  { title: "Daily", subject: { kind: "set", formerly: ["apparatus"] } },
);
const SCHEMA = recordSchema(policy, "daily") ?? {};
const accepts = new Ajv2020({ strict: false }).compile(SCHEMA);

const SOUND = {
  tenbar: 1,
  id: "r",
  check: "daily",
  at: "2026-04-12T07:04:00+01:00",
  station: "Lowmere 3",
  by: { id: "W-231", competence: "wearer" },
  subject: {
    kind: "set",
    id: "S-014",
    marking: "014",
    removed: "none",
    class: "open-circuit",
    role: "front-line",
    ratedPressure: "300 bar",
    waterCapacity: "6.8 L",
    fitted: { lamp: true, torch: false },
    instruments: { gauge: "dial" },
    cylinders: [
      {
        id: "C-1",
        waterCapacity: "6.8 L",
        ratedPressure: "300 bar",
        manufacturedOn: "2019-05-01",
        requalifiedOn: "2024-05",
      },
    ],
  },
  steps: [
    { step: "harness", result: "satisfactory", defect: "torn", note: "n", at: "07:04", of: "x", instrument: "i" },
    { step: "lamp", result: "not-done", defect: "dark" },
    { step: "number", seen: { back: "014", mask: "014" } },
    { step: "charge", reading: "250 bar", occurred: true },
    { step: "faults", reading: 0 },
    {
      step: "alarm",
      elapsed: "30 s",
      occurred: true,
      events: { still: "2026-04-12T07:00:00Z", sounds: "2026-04-12T07:00:30.5+00:00" },
    },
    { step: "tested", on: "2026-04-01" },
  ],
  attested: { steps: ["harness"], wording: "all sound", by: "W-231" },
  local: { shift: "white" },
  decision: "D-1",
  supersedes: "r-0",
};
const RECORD = replaceAt(SOUND, ["steps", 0, "at"], "2026-04-12T07:04:00Z");

const at = (path: string): Path => path.split("/").map((part) => (/^\d+$/.test(part) ? Number(part) : part));
const change = (path: string, value: unknown) => replaceAt(RECORD, at(path), value);

/** What a key may hold beside nothing, and what it may not. */
const FIELDS: readonly [string, readonly unknown[], readonly unknown[]][] = [
  ["tenbar", [1], [2, "1", null]],
  ["id", ["x"], ["", " ", 5, null]],
  ["check", ["daily"], ["after-wear", null]],
  [
    "at",
    ["2026-04-12", "2026-04-12T07:04", "2026-04-12t23:59:59.123456789z", "2024-02-29", "2000-02-29T00:00-23:59"],
    ["2026-04", "2026-02-29", "1900-02-29", "2026-04-31", "0000-01-01", "2026-04-12T24:00", "2026-04-12T07:04:60Z", 5],
  ],
  ["station", ["x"], [3, {}]],
  ["by", [{}, { id: "x" }, { competence: "x" }], [{ rank: "x" }, "W-231"]],
  ["by/id", ["x"], [1]],
  ["by/competence", ["x"], [["wearer"]]],
  ["subject", [{ kind: "set", id: "x" }], [{ kind: "set" }, { id: "x" }, "S-014", null]],
  ["subject/kind", ["set", "apparatus"], ["mask", "", null]],
  ["subject/id", ["x"], ["", 1, null]],
  ["subject/marking", ["x"], [14]],
  ["subject/removed", ["x"], [true]],
  ["subject/class", ["x"], [1]],
  ["subject/role", ["x"], [1]],
  ["subject/ratedPressure", ["4500 psi", "0.5 bar"], ["0 bar", "-300 bar", "300", 300, "6 L"]],
  ["subject/waterCapacity", ["9 L"], ["0.0 L", "300 bar"]],
  ["subject/fitted", [{}, { torch: null }], [{ torch: "yes" }, "lamp"]],
  ["subject/fitted/lamp", [false], ["no", 0]],
  ["subject/instruments", [{}, { gauge: " " }], [{ gauge: 5 }, "dial"]],
  ["subject/cylinders", [[{ id: "x" }]], [[{}], ["C-1"], {}]],
  ["subject/cylinders/0/id", ["x"], ["", null]],
  ["subject/cylinders/0/waterCapacity", ["9 L"], ["0 L", 9]],
  ["subject/cylinders/0/ratedPressure", ["200 bar"], ["0 bar", "200"]],
  ["subject/cylinders/0/manufacturedOn", ["2019-05-01", "2019-05"], ["2019", "01.05.2019", "2019-13", "0000-05"]],
  ["subject/cylinders/0/requalifiedOn", ["2024-05-31"], ["2024-06-31", 2024]],
  ["steps", [[], [{ step: "harness" }]], [{}, null, [{}], [{ step: "strange" }], [null]]],
  ["steps/0/result", ["satisfactory", "defect", "not-done"], ["fine", true]],
  ["steps/0/defect", ["torn"], ["worn", false, 1]],
  ["steps/0/note", ["x"], [1]],
  ["steps/0/at", ["2026-04-12"], ["07:04", 7]],
  ["steps/0/of", ["x"], [1]],
  ["steps/0/instrument", ["x"], [{}]],
  ["steps/1/defect", ["any other"], [true]],
  ["steps/2/seen", [{}, { back: "014" }], [{ tally: "014" }, "014"]],
  ["steps/2/seen/mask", ["015"], [14]],
  [
    "steps/3/reading",
    ["0 bar", "-1 bar", "290.00000001 bar", "4200 psi", "9999999 bar", "29 MPa"],
    [
      "290",
      290,
      "290bar",
      "290 Bar",
      "290 bar ",
      "+290 bar",
      "010 bar",
      "5,5 bar",
      "290.000000001 bar",
      "5 s",
      "1e2 bar",
    ],
  ],
  ["steps/3/occurred", [false], ["no", 0]],
  ["steps/4/reading", [3, -1, 999_999_999], [0.5, "3", 1_000_000_000, -1_000_000_000]],
  ["steps/5/elapsed", ["1 min", "30.5 s"], ["30", "30 bar"]],
  ["steps/5/events", [{}, { still: null }], [{ stops: "2026-04-12T07:00:00Z" }, []]],
  [
    "steps/5/events/still",
    ["2026-04-12T07:00:00.123Z", "2026-04-12T07:00-01:30"],
    ["2026-04-12T07:00:00", "2026-04-12", "2026-04-12T07:00:00.1234Z", "2026-04-12T07:00:60Z"],
  ],
  ["steps/6/on", ["2026-04"], ["2026", 20260401]],
  ["attested", [SOUND.attested], [{ steps: [], wording: "x", by: "x" }, { steps: ["harness"] }, "all", {}]],
  [
    "attested/steps",
    [["harness", "number"]],
    [
      ["harness", 5],
      ["harness", ""],
    ],
  ],
  ["attested/wording", ["x"], [""]],
  ["attested/by", ["x"], ["", null]],
  ["local", [{}, { any: [1, { thing: true }] }], ["none"]],
  ["decision", ["x"], [1]],
  ["supersedes", ["x"], [["r-0"]]],
];
const REQUIRED = new Set(["tenbar", "id", "check", "at", "subject", "steps"]);
const NEEDED = new Set([
  ...REQUIRED,
  "subject/kind",
  "subject/id",
  "subject/cylinders/0/id",
  "attested/steps",
  "attested/wording",
  "attested/by",
]);

describe("the schema of the records of a check", () => {
  it("says what it is of, and by what right", () => {
    expect(SCHEMA).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      title: "Record of Daily",
      description: "One, version 1. Local procedure stands above this policy.",
    });
    expect(recordSchema(makePolicy([{ step: "harness", kind: "confirm" }]), "daily")).toMatchObject({
      title: "Record of daily",
    });
    expect(recordSchema(policy, "weekly")).toBeUndefined();
  });

  it("accepts what is sound", () => {
    expect(accepts(RECORD), JSON.stringify(accepts.errors)).toBe(true);
  });

  it.each(FIELDS)("accepts at %s what can be read, and refuses what cannot", (path, right, wrong) => {
    const accepted = [...right, ...wrong].filter((value) => accepts(change(path, value)));
    // An empty list says nothing, as does a blank.
    expect(accepted).toEqual([...right, ...wrong.filter((value) => Array.isArray(value) && value.length === 0)]);
    for (const value of accepted) {
      const { judged, results } = evaluate(policy, change(path, value));
      expect(judged).toBe(true);
      expect(results.filter(({ reason }) => reason === "unreadable")).toEqual([]);
    }
  });

  it.each(FIELDS.map(([path]) => path))("lets %s say nothing, or be left out, unless it is needed", (path) => {
    const isNeeded = NEEDED.has(path);
    expect([null, "", "  "].map((value) => accepts(change(path, value)))).toEqual(
      [null, "", "  "].map(() => !isNeeded),
    );
    const without = change(path, undefined);
    const isElement = typeof at(path).at(-1) === "number";
    if (!isElement) expect(accepts(without)).toBe(!isNeeded);
  });

  it("refuses keys that it does not know, but for those of the subject and of local matters", () => {
    const add = (path: readonly (string | number)[]) => {
      const copy = structuredClone(RECORD);
      const owner = path.reduce<unknown>((here, part) => Object(here)[part], copy);
      Object.assign(Object(owner), { extra: "x" });
      return accepts(copy);
    };
    expect([[], ["by"], ["steps", 0], ["steps", 3], ["attested"]].map(add)).toEqual([
      false,
      false,
      false,
      false,
      false,
    ]);
    expect([["subject"], ["subject", "cylinders", 0], ["local"], ["subject", "instruments"]].map(add)).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  it("accepts ten thousand steps, and refuses one more", () => {
    const steps = (count: number) => ({ ...SOUND, steps: Array.from({ length: count }, () => ({ step: "tested" })) });
    expect(accepts(steps(10_000))).toBe(true);
    expect(accepts(steps(10_001))).toBe(false);
  });
});
