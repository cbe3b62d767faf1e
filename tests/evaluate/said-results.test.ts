import { describe, expect, it } from "vitest";
import { assess, makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;
type Said = readonly [outcome: string, reason: string | undefined, observed: string | undefined];

const basis = { kind: "common-practice" };

/** The one result of a step, for a record of set S-014 with one entry. */
function judge(step: Data, entry: Data, subject: Data = {}, parts: Data = {}) {
  const policy = makePolicy([{ step: "one", ...step }], parts);
  const { results, findings } = assess(policy, [{ step: "one", ...entry }], subject);
  expect(results).toHaveLength(1);
  return { result: results[0], findings };
}

const say = (step: Data, entry: Data, subject: Data = {}): readonly unknown[] => {
  const { result } = judge(step, entry, subject);
  return [result?.outcome, result?.reason, result?.observed];
};

describe("a reading", () => {
  const band = { accept: { between: ["50 bar", "60 bar"] }, caution: { between: ["58 bar", "60 bar"] } };
  const step = { kind: "reading", quantity: "pressure", tolerance: band, basis };

  it.each<[string, Data, Said]>([
    ["a quantity", { reading: "55 bar" }, ["within", undefined, "55 bar"]],
    ["a quantity in the caution band", { reading: "58 bar" }, ["caution", undefined, "58 bar"]],
    ["one below it", { reading: "49 bar" }, ["outside", undefined, "49 bar"]],
    ["a word", { reading: "low" }, ["undecided", "unreadable", "low"]],
    ["a number without a unit", { reading: 55 }, ["undecided", "no-unit", "55"]],
    ["nothing", {}, ["undecided", "missing", undefined]],
    ["blanks", { reading: "  " }, ["undecided", "missing", undefined]],
    ["not done", { result: "not-done" }, ["undecided", "not-done", undefined]],
    ["a truth value", { reading: true }, ["undecided", "unreadable", undefined]],
    ["a list", { reading: ["55 bar"] }, ["undecided", "unreadable", undefined]],
    ["that it never came", { occurred: false, reading: "55 bar" }, ["outside", undefined, "did not occur"]],
    ["that it came", { occurred: true, reading: "55 bar" }, ["within", undefined, "55 bar"]],
    ["a word for whether it came", { occurred: "no", reading: "55 bar" }, ["undecided", "unreadable", "55 bar"]],
    ["a word for whether it came, and no reading", { occurred: "no" }, ["undecided", "unreadable", undefined]],
    ["an interval within", { reading: { between: ["52 bar", "57 bar"] } }, ["within", undefined, "52 bar to 57 bar"]],
    ["one from end to end", { reading: { between: ["50 bar", "57 bar"] } }, ["within", undefined, "50 bar to 57 bar"]],
    [
      "one that touches caution",
      { reading: { between: ["52 bar", "58 bar"] } },
      ["caution", undefined, "52 bar to 58 bar"],
    ],
    ["one within caution", { reading: { between: ["58 bar", "60 bar"] } }, ["caution", undefined, "58 bar to 60 bar"]],
    ["one below", { reading: { between: ["40 bar", "49 bar"] } }, ["outside", undefined, "40 bar to 49 bar"]],
    [
      "one that ends at the limit",
      { reading: { between: ["40 bar", "50 bar"] } },
      ["undecided", "uncertainty", "40 bar to 50 bar"],
    ],
    ["one above", { reading: { between: ["61 bar", "70 bar"] } }, ["outside", undefined, "61 bar to 70 bar"]],
    [
      "one that begins at the limit",
      { reading: { between: ["60 bar", "70 bar"] } },
      ["undecided", "uncertainty", "60 bar to 70 bar"],
    ],
    [
      "one turned round",
      { reading: { between: ["57 bar", "52 bar"] } },
      ["undecided", "conflicting", "57 bar to 52 bar"],
    ],
    [
      "one of two families of units",
      { reading: { between: ["52 bar", "800 psi"] } },
      ["undecided", "mixed-units", "52 bar to 800 psi"],
    ],
    [
      "one of three ends",
      { reading: { between: ["52 bar", "55 bar", "57 bar"] } },
      ["undecided", "unreadable", "52 bar to 55 bar to 57 bar"],
    ],
    ["at most something below", { reading: { atMost: "49 bar" } }, ["outside", undefined, "at most 49 bar"]],
    ["at most something within", { reading: { atMost: "55 bar" } }, ["undecided", "uncertainty", "at most 55 bar"]],
    ["at most a number", { reading: { atMost: 55 } }, ["undecided", "no-unit", undefined]],
    [
      "an interval with a word for whether it came",
      { occurred: "no", reading: { between: ["52 bar", "57 bar"] } },
      ["undecided", "unreadable", "52 bar to 57 bar"],
    ],
    [
      "one outside with such a word",
      { occurred: "no", reading: { between: ["40 bar", "49 bar"] } },
      ["outside", undefined, "40 bar to 49 bar"],
    ],
  ])("of %s", (_, entry, said) => {
    expect(say(step, entry)).toEqual(said);
  });

  it.each<[Data, string]>([
    [{ "at-least": "50 bar" }, "at least 50 bar"],
    [{ "at-most": "60 bar" }, "at most 60 bar"],
    [{ above: "50 bar" }, "above 50 bar"],
    [{ below: "60 bar" }, "below 60 bar"],
    [{ between: ["50 bar", "60 bar"] }, "50 bar to 60 bar"],
    [{ nominal: "55 bar", "plus-minus": "5 bar" }, "50 bar to 60 bar"],
    [{ "at-least": "50 bar", "at-most": "60 bar" }, "50 bar to 60 bar"],
    [{ "at-least": "50 bar", below: "60 bar" }, "at least 50 bar and below 60 bar"],
    [{ above: "50 bar", "at-most": "60 bar" }, "at most 60 bar and above 50 bar"],
    [{ between: ["50 bar", "60 bar"], below: "58 bar" }, "below 58 bar and at least 50 bar and at most 60 bar"],
    [{ "at-least": "90 % of rated-pressure" }, "at least 270 bar (90 % of rated-pressure)"],
  ])("is told what is accepted: %j is %s", (accept, said) => {
    const asked = { ...step, tolerance: { accept } };
    expect(judge(asked, { reading: "55 bar" }, { ratedPressure: "300 bar" }).result?.accept).toBe(said);
  });

  it("is off the range of its instrument beyond either end, and on it at each", () => {
    const dial = { quantity: "pressure", division: "10 bar", rounding: "down", range: ["10 bar", "400 bar"] };
    const open = {
      kind: "reading",
      quantity: "pressure",
      tolerance: { accept: { below: "500 bar" } },
      instrument: "dial",
      basis,
    };
    const reasonOf = (reading: string) => {
      const { result } = judge(open, { reading }, {}, { instruments: { dial } });
      return result?.reason ?? result?.outcome;
    };
    expect(["0 bar", "10 bar", "400 bar", "410 bar"].map(reasonOf)).toEqual([
      "off-range",
      "within",
      "within",
      "off-range",
    ]);
  });

  it("has no limits without a case, whatever is recorded", () => {
    const cases = [{ for: { class: "airline" }, accept: { "at-least": "50 bar" } }];
    const parts = { tolerances: { level: { cases, basis } } };
    const open = { kind: "reading", quantity: "pressure", tolerance: "level" };
    for (const entry of [{ reading: "55 bar" }, { reading: { atMost: "55 bar" } }, {}, { reading: "low" }]) {
      const { result } = judge(open, entry, { class: "open-circuit" }, parts);
      expect([result?.outcome, result?.reason, result?.accept]).toEqual(["undecided", "no-case", undefined]);
    }
    const never = judge(open, { occurred: false }, { class: "open-circuit" }, parts).result;
    expect(never?.outcome).toBe("outside");
  });
});

describe("a marking", () => {
  const step = { kind: "match", places: ["back", "mask"] };
  const seen = (back: unknown, mask: unknown) => ({ seen: { back, mask } });

  it.each<[string, Data, Said]>([
    ["alike", seen("014", "014"), ["within", undefined, "back 014, mask 014"]],
    ["with blanks around it", seen(" 014", "014 "), ["within", undefined, "back 014, mask 014"]],
    ["another", seen("014", "041"), ["outside", undefined, "back 014, mask 041"]],
    ["in another case", seen("a1", "A1"), ["outside", undefined, "back a1, mask A1"]],
    ["at one place", seen("014", undefined), ["undecided", "missing", "back 014"]],
    ["at the other", seen(null, "014"), ["undecided", "missing", "mask 014"]],
    ["a number", seen("014", 14), ["undecided", "unreadable", "back 014"]],
    ["nowhere", { seen: {} }, ["undecided", "missing", undefined]],
    ["not at all", {}, ["undecided", "missing", undefined]],
    ["not done", { result: "not-done" }, ["undecided", "not-done", undefined]],
    ["done, and nothing seen", { result: "satisfactory" }, ["undecided", "missing", undefined]],
    ["as a text", { seen: "014" }, ["undecided", "unreadable", undefined]],
    ["as a list", { seen: ["014", "014"] }, ["undecided", "unreadable", undefined]],
  ])("%s", (_, entry, said) => {
    expect(say(step, entry)).toEqual(said);
  });

  it.each<[readonly string[], string, string, string]>([
    [[], "LM-14", "lm-14", "outside"],
    [["case"], "LM-14", "lm-14", "within"],
    [["case"], "ſ", "S", "outside"],
    [["case"], "LM-14", "lm 14", "outside"],
    [["case"], "LM-14", "lm14", "outside"],
    [["blanks"], "LM  14", "LM14", "within"],
    [["blanks"], "LM 1 4", "LM14", "within"],
    [["blanks"], "LM 14", "lm14", "outside"],
    [["blanks"], "LM-14", "LM14", "outside"],
    [["hyphens"], "LM-1-4", "LM14", "within"],
    [["hyphens"], "LM\u201014", "LM\u201114", "within"],
    [["hyphens"], "LM-14", "LM 14", "outside"],
    [["hyphens"], "LM-14", "lm14", "outside"],
    [["case", "blanks", "hyphens"], "LM - 14", "lm14", "within"],
  ])("with %j ignored: %s and %s are %s", (ignore, back, mask, outcome) => {
    expect(say({ ...step, ...(ignore.length === 0 ? {} : { ignore }) }, seen(back, mask))[0]).toBe(outcome);
  });

  const wanted = (parts: Data, entry: Data, subject: Data) => {
    const { result } = judge({ ...step, ...parts }, entry, subject);
    return [result?.outcome, result?.reason, result?.accept];
  };

  it("must be that of the subject", () => {
    const equals = { equals: "subject.marking" };
    const alike = seen("014", "014");
    expect(wanted(equals, alike, { marking: " 014 " })).toEqual([
      "within",
      undefined,
      "the same in every place, equal to 014",
    ]);
    expect(wanted(equals, alike, { marking: "041" })).toEqual([
      "outside",
      undefined,
      "the same in every place, equal to 041",
    ]);
    expect(wanted(equals, alike, {})).toEqual([
      "undecided",
      "fact-missing",
      "the same in every place, equal to subject.marking",
    ]);
    expect(wanted(equals, seen("014", "041"), {})[0]).toBe("outside");
  });

  it("must be another than that of what was removed", () => {
    const differs = { "differs-from": "subject.removed" };
    const alike = seen("015", "015");
    expect(wanted(differs, alike, { removed: "014" })).toEqual([
      "within",
      undefined,
      "the same in every place, other than 014",
    ]);
    expect(wanted(differs, alike, { removed: "015" })).toEqual([
      "outside",
      undefined,
      "the same in every place, other than 015",
    ]);
    expect(wanted(differs, alike, {})).toEqual([
      "undecided",
      "fact-missing",
      "the same in every place, other than subject.removed",
    ]);
  });

  it("may be both", () => {
    const both = { equals: "subject.marking", "differs-from": "subject.removed" };
    const subject = { marking: "015", removed: "014" };
    const accept = "the same in every place, equal to 015, other than 014";
    expect(wanted(both, seen("015", "015"), subject)).toEqual(["within", undefined, accept]);
    expect(wanted(both, seen("014", "014"), subject)).toEqual(["outside", undefined, accept]);
    const one = { places: ["back"], ...both };
    expect(wanted(one, { seen: { back: "015" } }, subject)[0]).toBe("within");
  });
});

describe("a condition", () => {
  const step = { kind: "confirm", defects: { torn: { consequence: "refer" } } };
  const recorded = (entry: Data) => {
    const { result, findings } = judge(step, entry);
    return [result?.outcome, result?.reason, result?.observed, findings[0]?.consequence];
  };

  it.each<[string, Data, readonly unknown[]]>([
    ["sound", { result: "satisfactory" }, ["within", undefined, "satisfactory", undefined]],
    ["a named defect", { result: "defect", defect: "torn" }, ["outside", undefined, "torn", "refer"]],
    ["one with blanks around it", { result: "defect", defect: " torn " }, ["outside", undefined, "torn", "refer"]],
    ["another defect", { result: "defect", defect: "bent" }, ["outside", undefined, "bent", "withdraw"]],
    ["a defect without a name", { result: "defect" }, ["outside", undefined, "defect", "withdraw"]],
    ["a defect beside sound", { result: "satisfactory", defect: "torn" }, ["outside", undefined, "torn", "refer"]],
    ["a defect that is no text", { defect: 3 }, ["outside", undefined, "defect", "withdraw"]],
    ["no defect, as a truth value", { defect: false }, ["undecided", "unreadable", "defect: false", "refer"]],
    [
      "the same beside sound",
      { result: "satisfactory", defect: false },
      ["undecided", "unreadable", "defect: false", "refer"],
    ],
    ["the same beside a defect", { result: "defect", defect: false }, ["outside", undefined, "defect", "withdraw"]],
    ["another word", { result: "fine" }, ["undecided", "unknown-word", "fine", "refer"]],
    ["a truth value", { result: true }, ["undecided", "unreadable", undefined, "refer"]],
    ["not done", { result: "not-done" }, ["undecided", "not-done", "not-done", "refer"]],
    ["nothing", {}, ["undecided", "missing", undefined, "refer"]],
  ])("%s", (_, entry, said) => {
    expect(recorded(entry)).toEqual(said);
  });

  it("says which words there are", () => {
    const [finding] = judge(step, { result: "fine" }).findings;
    expect(finding?.message).toContain("`fine`");
    expect(finding?.params).toMatchObject({ recorded: "fine", wanted: "satisfactory, defect, not-done" });
  });
});

describe("readings of several cylinders", () => {
  const apart = { "at-most": "20 bar" };
  const step = {
    step: "charge",
    kind: "reading",
    each: "subject.cylinders",
    quantity: "pressure",
    tolerance: { accept: { "at-least": "100 bar" } },
    apart,
    basis,
  };
  const policy = makePolicy([step]);
  const spread = (...readings: readonly unknown[]) => {
    const ids = readings.map((_, index) => `C-${index + 1}`);
    const entries = readings.flatMap((reading, index) =>
      reading === undefined ? [] : [{ step: "charge", of: ids[index], reading }],
    );
    const { results } = assess(policy, entries, { cylinders: ids.map((id) => ({ id })) });
    const found = results.find(({ requirement }) => requirement === "apart");
    return [found?.outcome, found?.reason, found?.observed, found?.pointers];
  };

  it("may not lie too far apart", () => {
    const both = ["/steps/0", "/steps/1"];
    expect(spread("200 bar", "220 bar")).toEqual(["within", undefined, "20 bar", both]);
    expect(spread("221 bar", "200 bar")).toEqual(["outside", undefined, "21 bar", both]);
    expect(spread("220 bar", "200 bar", "210 bar")).toEqual(["within", undefined, "20 bar", [...both, "/steps/2"]]);
    expect(spread("210 bar", "200 bar", "230 bar")).toEqual(["outside", undefined, "30 bar", [...both, "/steps/2"]]);
    expect(spread("200 bar", "200 bar")).toEqual(["within", undefined, "0 bar", both]);
  });

  it("are compared where two are known, and only outside is settled by some", () => {
    expect(spread("200 bar", undefined, "260 bar")).toEqual(["outside", undefined, "60 bar", ["/steps/0", "/steps/1"]]);
    expect(spread("200 bar", undefined, "210 bar")).toEqual(["undecided", "missing", undefined, expect.anything()]);
    expect(spread("200 bar", "low", "210 bar")).toEqual(["undecided", "unreadable", undefined, expect.anything()]);
    expect(spread("200 bar", undefined)).toEqual(["undecided", "missing", undefined, expect.anything()]);
    expect(spread(undefined, undefined)).toEqual(["undecided", "missing", undefined, expect.anything()]);
    expect(spread("200 bar", "3000 psi")).toEqual(["undecided", "mixed-units", undefined, expect.anything()]);
    expect(spread("200 bar", { between: ["200 bar", "210 bar"] })[0]).toBe("undecided");
  });

  it("are not compared where there is one", () => {
    expect(spread("200 bar").slice(0, 2)).toEqual(["not-applicable", "only-one"]);
    const { results } = assess(policy, [{ step: "charge", reading: "200 bar" }], {});
    expect(results.find(({ requirement }) => requirement === "apart")).toMatchObject({
      outcome: "undecided",
      reason: "fact-missing",
    });
  });
});
