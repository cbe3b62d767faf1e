import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { evaluate, recordSchema } from "../../src/index.js";
import { replaceAt } from "../laws/evidence-path.js";
import { makePolicy } from "./sample.js";

describe("what the schema says of a record beside its steps", () => {
  const basis = { kind: "common-practice" };
  const due = { every: "P1Y", counted: "from-last", basis };
  const policy = makePolicy(
    [
      { step: "number", kind: "match", places: ["mask"], equals: "subject.tally" },
      { step: "visor", kind: "confirm", each: "subject.masks" },
      { step: "oxygen", kind: "reading", quantity: "fraction", tolerance: { accept: { "at-least": "20 %" } }, basis },
    ],
    {
      facts: {
        line: { at: "/local/line", quantity: "length" },
        trained: { at: "/local/trained", value: "flag" },
        bought: { at: "/bought", each: "/subject/masks", take: "lowest", value: "date" },
      },
      intervals: {
        own: { of: "set", date: "testedOn", ...due },
        former: { of: "apparatus", date: "oiledOn", ...due },
        listed: { of: "mask", date: "cleanedOn", ...due },
      },
    },
    { subject: { kind: "set", formerly: ["apparatus"] }, intervals: ["own", "former", "listed"] },
  );
  const holds = new Ajv2020({ strict: false }).compile(recordSchema(policy, "daily") ?? false);
  const mask = { id: "M-1", bought: "2024-01-01", cleanedOn: "2026-01-01" };
  const subject = { kind: "set", id: "S-1", tally: "1", testedOn: "2026-01", oiledOn: "2026-01-01", masks: [mask] };
  const sound = {
    tenbar: 1,
    id: "r",
    check: "daily",
    at: "2026-04-12",
    subject,
    steps: [],
    local: { trained: true, line: "6 m" },
  };

  it("is met by what is sound, missing or none of its business", () => {
    for (const record of [
      sound,
      { ...sound, local: null },
      { ...sound, local: { trained: null, line: " ", colour: 5 } },
      { ...sound, subject: { kind: "apparatus", id: "S-1", masks: [] } },
    ]) {
      expect(holds(record), JSON.stringify(holds.errors)).toBe(true);
      expect(evaluate(policy, record).results.filter(({ reason }) => reason === "unreadable")).toEqual([]);
    }
  });

  it.each([
    ["a quantity", ["local", "line"], 6],
    ["a flag", ["local", "trained"], "yes"],
    ["a date of each", ["subject", "masks", 0, "bought"], "2024"],
    ["a date from which the subject falls due", ["subject", "testedOn"], "01.01.2026"],
    ["a date from which a thing in a list falls due", ["subject", "masks", 0, "cleanedOn"], "2026-02-30"],
    ["a text to compare with", ["subject", "tally"], 1],
    ["a list", ["subject", "masks"], "M-1"],
  ])("is not met by %s that cannot be read", (_, path, value) => {
    expect(holds(replaceAt(sound, path, value))).toBe(false);
  });

  it.each([
    ["/local/line", ["local", "line"]],
    ["/subject/lines/2", ["subject", "lines", 2]],
  ])("refuses no size, or less, of a fact at %s that limits rest on", (at, path) => {
    const line = { at, quantity: "length" };
    const read = (tolerance: object) =>
      makePolicy([{ step: "wear", kind: "reading", quantity: "length", tolerance, basis }], { facts: { line } });
    const subject = { kind: "set", id: "S-1", lines: ["1 m", "1 m", "1 m"] };
    const record = {
      tenbar: 1,
      id: "r",
      check: "daily",
      at: "2026-04-12",
      subject,
      local: {},
      steps: [{ step: "wear", reading: "1 m" }],
    };
    const rows = [{ "up-to": "2 m", accept: { "at-most": "1 m" } }];
    for (const [tolerance, refused] of [
      [{ accept: { "at-most": "50 % of line" } }, ["0 m", "-1 m", 1]],
      [{ "accept-by": { fact: "line", rows } }, ["-1 m", 1]],
    ] as const) {
      const made = read(tolerance);
      const accepts = new Ajv2020({ strict: false }).compile(recordSchema(made, "daily") ?? false);
      for (const value of ["0 m", "-1 m", 1, "1 m", " "]) {
        const changed = replaceAt(record, path, value);
        const isRefused = refused.some((one) => one === value);
        expect([value, accepts(changed)]).toEqual([value, !isRefused]);
        const reasons = evaluate(made, changed).results.map(({ reason }) => reason);
        expect(reasons.some((reason) => reason === "unreadable" || reason === "no-unit")).toBe(isRefused);
      }
    }
  });
});
