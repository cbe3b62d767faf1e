import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import {
  explainDate,
  explainInstant,
  explainQuantity,
  recordInstant,
  recordQuantity,
} from "../../examples/embedding/explain-text.js";
import { makeId } from "../../examples/embedding/make-id.js";
import { compilePolicy, describeCheck, evaluate, type Policy } from "../../src/index.js";

const POLICY = `
tenbar: 1
policy: { id: lowmere/typed, title: What is typed, version: "2026.1", status: local }
deference: Standing orders of Lowmere and the competent person stand above this policy.
tolerances:
  any-pressure: { accept: { at-least: 0 bar }, consequence: withdraw, basis: { kind: local, order: LO 7 } }
  any-time: { accept: { at-least: 0 s }, consequence: refer, basis: { kind: local, order: LO 9 } }
checks:
  daily:
    order: any
    steps:
      - step: whistle
        kind: reading
        quantity: pressure
        tolerance: any-pressure
      - step: last-test
        kind: in-date
        not-past: true
        consequence: refer
        basis: { kind: local, order: LO 8 }
      - step: pre-alarm
        kind: timing
        from-event: still
        to-event: sounded
        tolerance: any-time
`;
const AT = "2026-04-14T07:05:00+01:00";
/** The reasons that lie in how a text was written; a value out of place is for the judgement to tell. */
const FAULTS: readonly unknown[] = ["unreadable", "no-unit", "unknown-unit", "wrong-dimension"];

let policy: Policy;
let units: readonly string[];
beforeAll(() => {
  const compiled = compilePolicy(POLICY);
  if (compiled.policy === undefined) throw new Error(JSON.stringify(compiled.diagnostics));
  policy = compiled.policy;
  const field = describeCheck(policy, "daily")?.steps[0]?.fields[0];
  if (field?.type !== "quantity") throw new Error("the whistle has no figure");
  units = field.units;
});

/** Whether the library itself cannot read what the page records. */
function isFault(step: string, found: Readonly<Record<string, unknown>>): boolean {
  const record = { tenbar: 1, id: "r-1", check: "daily", at: AT, subject: { kind: "set", id: "S-011" } };
  const { results } = evaluate(policy, { ...record, steps: [{ step, ...found }] });
  return results.some((result) => result.step === step && FAULTS.includes(result.reason));
}
const isQuantityFault = (text: string) => isFault("whistle", { reading: recordQuantity(text, "bar") });
const isDateFault = (text: string) => isFault("last-test", { on: text });
const isInstantFault = (text: string) =>
  isFault("pre-alarm", { events: { still: recordInstant("07:00:00", AT), sounded: recordInstant(text, AT) } });

describe("a typed text, explained", () => {
  it.each([
    ["57,5", "a comma cannot be read"],
    ["1,000", "a comma cannot be read"],
    ["abc", "this is not a figure"],
    ["6O", "a space stands between"],
    ["057", "does not begin with 0"],
    ["57bar", "a space stands between"],
    ["57 bra", "the unit is not one of bar, "],
    ["57 s", "the unit is not one of bar, "],
    ["57 bar.", "the unit is not one of bar, "],
    ["5 7", "the unit is not one of bar, "],
    ["57.", "this is not a figure"],
    ["+57", "this is not a figure"],
    ["5.7e1", "this is not a figure"],
  ])("says of the figure `%s` that %s, and the library cannot read it either", (text, words) => {
    expect(explainQuantity(text, units) ?? "").toContain(words);
    expect(isQuantityFault(text)).toBe(true);
  });

  it.each(["57", "57.5", "57.5 bar", "5.75 MPa", "0", "-1", "0.5"])(
    "takes the figure `%s`, as the library does",
    (text) => {
      expect(explainQuantity(text, units)).toBeUndefined();
      expect(isQuantityFault(text)).toBe(false);
    },
  );

  it.each(["30.06.2027", "2026-02-30", "2026-13-01", "2026-4-1", "yesterday", "2026-00", "20260414"])(
    "refuses the date `%s`, as the library does",
    (text) => {
      expect(explainDate(text)).toBeDefined();
      expect(isDateFault(text)).toBe(true);
    },
  );

  it.each(["2026-04-02", "2024-02-29", "2026-03"])("takes the date `%s`, as the library does", (text) => {
    expect(explainDate(text)).toBeUndefined();
    expect(isDateFault(text)).toBe(false);
  });

  it.each(["7:10:30", "07:10", "24:00:00", "07:10:60", "07.10.30", "half past seven"])(
    "refuses the time of the clock `%s`, as the library does",
    (text) => {
      expect(explainInstant(text)).toBeDefined();
      expect(isInstantFault(text)).toBe(true);
    },
  );

  it.each(["07:10:30", "23:59:59.5", "2026-04-14T07:10:30+01:00", "2026-04-14T06:10:30Z"])(
    "takes the time of the clock `%s`, as the library does",
    (text) => {
      expect(explainInstant(text)).toBeUndefined();
      expect(isInstantFault(text)).toBe(false);
    },
  );

  it("never calls unreadable what the library reads, nor the other way round", () => {
    const piece = fc.constantFrom("0", "7", "57", ".", ",", " ", "-", "bar", "MPa", "s", "psi", "e1", "O", ":", "07");
    const typed = fc.array(piece, { minLength: 1, maxLength: 6 }).map((pieces) => pieces.join("").trim());
    fc.assert(
      fc.property(
        typed.filter((text) => text !== ""),
        (text) => {
          expect(explainQuantity(text, units) !== undefined, text).toBe(isQuantityFault(text));
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe("the ids of the page", () => {
  it("differ wherever the words differ, and hold no space", () => {
    const words = fc.array(fc.string({ unit: fc.constantFrom("a", "-", "/", " ", "_", "é", "\ud800") }), {
      minLength: 1,
      maxLength: 3,
    });
    fc.assert(
      fc.property(words, words, (one, other) => {
        expect(makeId(...one)).not.toMatch(/\s/);
        expect(makeId(...one) === makeId(...other)).toBe(JSON.stringify(one) === JSON.stringify(other));
      }),
      { numRuns: 2000 },
    );
    expect(makeId("charge", "C 301", "reading")).toBe("charge/C_20_301/reading");
  });
});
