import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { assess, makePolicy } from "../evaluate/sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const PRESSURES = expect.arrayContaining(["bar", "psi"]);

/** The mistakes of a policy whose only step reads a pressure: code, params, the text at their place, and of what else they speak. */
function listMistakes(tolerance: unknown, parts: Data = {}, step: Data = {}) {
  const text = JSON.stringify(
    {
      tenbar: 1,
      policy: { id: "test/one", title: "One", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      ...parts,
      checks: {
        daily: {
          order: "any",
          steps: [{ step: "one", kind: "reading", quantity: "pressure", tolerance, basis, ...step }],
        },
      },
    },
    undefined,
    1,
  );
  const { policy, diagnostics } = compilePolicy(text);
  const lines = text.split("\n");
  const told = diagnostics.map(({ code, params, line, column, endColumn, related }) => [
    code,
    params,
    (lines[line - 1] ?? "").slice(column - 1, endColumn - 1),
    ...(related ?? []).map((other) => lines[other.line - 1]?.trim()),
  ]);
  return { isCompiled: policy !== undefined, told };
}

const mistakes = (tolerance: unknown, parts: Data = {}, step: Data = {}) => {
  const { isCompiled, told } = listMistakes(tolerance, parts, step);
  expect(isCompiled).toBe(false);
  return told;
};

const badQuantity = (found: string, fault: string, mend?: string) => [
  "plan/bad-quantity",
  { found, fault, dimension: "pressure", units: PRESSURES, ...(mend === undefined ? {} : { mend }) },
];

describe("a limit that cannot be read", () => {
  it.each<[Data, string, string, string?]>([
    [{ "at-most": "10" }, "10", "no-unit"],
    [{ "at-least": "10 parsec" }, "10 parsec", "unknown-unit"],
    [{ below: "10 s" }, "10 s", "wrong-dimension"],
    [{ above: "much" }, "much", "unreadable"],
    [{ between: ["10", "20 bar"] }, "10", "no-unit"],
    [{ between: ["10 bar", "20"] }, "20", "no-unit"],
    [{ nominal: "10", "plus-minus": "1 bar" }, "10", "no-unit"],
    [{ nominal: "10 bar", "plus-minus": "1" }, "1", "no-unit"],
    [{ "at-most": "10bar" }, "10bar", "no-unit", "10 bar"],
    [{ "at-most": "1,5 bar" }, "1,5 bar", "unreadable", "1.5 bar"],
  ])("is told with its fault: %j", (accept, found) => {
    const told = mistakes({ accept });
    expect(told).toHaveLength(1);
    expect(told[0]?.slice(0, 2)).toMatchObject([
      "plan/bad-quantity",
      { found, dimension: "pressure", units: PRESSURES },
    ]);
    expect(told[0]?.[2]).toBe(JSON.stringify(found));
  });

  it("has the fault of a quantity, and its mend where there is one", () => {
    expect(mistakes({ accept: { "at-most": "10" } })[0]?.[1]).toMatchObject({ fault: "no-unit" });
    expect(mistakes({ accept: { "at-most": "10 s" } })[0]?.[1]).toMatchObject({ fault: "wrong-dimension" });
    expect(mistakes({ accept: { "at-most": "1,5 bar" } })[0]?.[1]).toMatchObject({ mend: "1.5 bar" });
    expect(mistakes({ accept: { "at-most": "90 percent of rated-pressure" } })[0]?.[0]).toBe("plan/bad-quantity");
    expect(mistakes({ accept: { "at-most": "1,5 % of rated-pressure" } })[0]?.[1]).toMatchObject({
      mend: "1.5 % of rated-pressure",
    });
  });

  it("is told once for each, beside others", () => {
    const both = mistakes({ accept: { "at-least": "10", "at-most": "20" } });
    expect(both.map(([code, , at]) => [code, at])).toEqual([
      ["plan/bad-quantity", '"10"'],
      ["plan/bad-quantity", '"20"'],
    ]);
    const pairs = mistakes({ accept: { between: ["10", "20"] }, caution: { nominal: "30", "plus-minus": "1" } });
    expect(pairs.map(([, , at]) => at)).toEqual(['"10"', '"20"', '"30"', '"1"']);
    expect(badQuantity("10", "no-unit")[0]).toBe("plan/bad-quantity");
  });
});

describe("limits that cannot both hold", () => {
  it.each<[Data, string]>([
    [{ between: ["20 bar", "10 bar"] }, "20 bar"],
    [{ between: ["20 % of rated-pressure", "10 % of rated-pressure"] }, "20 % of rated-pressure"],
    [{ between: ["2 MPa", "10 bar"] }, "2 MPa"],
  ])("are swapped: %j", (accept, low) => {
    const [told] = mistakes({ accept });
    expect(told?.slice(0, 2)).toMatchObject(["plan/swapped-bounds", { low }]);
  });

  it.each([
    { between: ["10 bar", "20 bar"] },
    { between: ["10 bar", "10 bar"] },
    { between: ["1 MPa", "20 bar"] },
    { between: ["10 % of rated-pressure", "20 % of rated-pressure"] },
    { between: ["20 % of rated-pressure", "10 % of working-pressure"] },
    { between: ["20 bar", "10 % of rated-pressure"] },
    { between: ["20 % of rated-pressure", "10 bar"] },
  ])("are not swapped, or cannot be told to be: %j", (accept) => {
    const facts = { "working-pressure": { at: "/subject/workingPressure", quantity: "pressure" } };
    expect(listMistakes({ accept }, { facts })).toEqual({ isCompiled: true, told: [] });
  });

  it.each([
    { "at-least": "20 bar", "at-most": "10 bar" },
    { above: "10 bar", "at-most": "10 bar" },
    { "at-least": "10 bar", below: "10 bar" },
    { above: "10 bar", below: "10 bar" },
    { above: "20 bar", below: "10 bar" },
    { between: ["10 bar", "20 bar"], above: "20 bar" },
  ])("leave nothing: %j", (accept) => {
    expect(mistakes({ accept }).map(([code]) => code)).toEqual(["plan/empty-band"]);
  });

  it.each([
    { "at-least": "10 bar", "at-most": "10 bar" },
    { above: "10 bar", below: "11 bar" },
    { "at-least": "20 % of rated-pressure", "at-most": "10 bar" },
    { "at-most": "20 bar", below: "10 bar" },
  ])("leave something, or may: %j", (accept) => {
    expect(listMistakes({ accept })).toEqual({ isCompiled: true, told: [] });
  });
});

describe("a nominal limit", () => {
  it("needs both its parts", () => {
    expect(mistakes({ accept: { nominal: "10 bar" } })).toEqual([
      ["plan/half-stated", { present: "nominal", absent: "plus-minus" }, '"nominal"'],
    ]);
    expect(mistakes({ accept: { "plus-minus": "1 bar" } })).toEqual([
      ["plan/half-stated", { present: "plus-minus", absent: "nominal" }, '"plus-minus"'],
    ]);
  });

  it("takes no share in either", () => {
    const share = "90 % of rated-pressure";
    for (const accept of [
      { nominal: share, "plus-minus": "1 bar" },
      { nominal: "10 bar", "plus-minus": share },
      { nominal: share, "plus-minus": share },
    ]) {
      expect(mistakes({ accept }).map(([code, params]) => [code, params])).toEqual([["plan/share-in-nominal", {}]]);
    }
  });

  it("takes units of one family, but for temperatures", () => {
    expect(mistakes({ accept: { nominal: "10 bar", "plus-minus": "15 psi" } })).toEqual([
      ["plan/mixed-units", { nominal: "10 bar", plusMinus: "15 psi" }, '"15 psi"'],
    ]);
    expect(listMistakes({ accept: { nominal: "10 bar", "plus-minus": "0.1 MPa" } })).toEqual({
      isCompiled: true,
      told: [],
    });
    const warm = { quantity: "temperature", tolerance: { accept: { nominal: "20 Cel", "plus-minus": "5 K" } } };
    const policy = makePolicy([{ step: "one", kind: "reading", basis, ...warm }]);
    const outcomes = ["14.9 Cel", "15 Cel", "25 Cel", "25.1 Cel"].map(
      (reading) => assess(policy, [{ step: "one", reading }]).results[0]?.outcome,
    );
    expect(outcomes).toEqual(["outside", "within", "within", "outside"]);
  });

  it("of a count is a number", () => {
    const counted = { quantity: "count", tolerance: { accept: { nominal: 4, "plus-minus": 1 } } };
    const policy = makePolicy([{ step: "one", kind: "reading", basis, ...counted }]);
    const outcomes = [2, 3, 5, 6].map((reading) => assess(policy, [{ step: "one", reading }]).results[0]?.outcome);
    expect(outcomes).toEqual(["outside", "within", "within", "outside"]);
  });

  it("of a count between quotes is told to stand without them", () => {
    const text = JSON.stringify({
      tenbar: 1,
      policy: { id: "test/one", title: "One", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      checks: {
        daily: {
          order: "any",
          steps: [
            { step: "one", kind: "reading", basis, quantity: "count", tolerance: { accept: { "at-most": "4" } } },
          ],
        },
      },
    });
    expect(compilePolicy(text).diagnostics).toMatchObject([
      { code: "plan/bad-quantity", message: "`4` is a text; a count is wanted", mend: "write `4` without quotes" },
    ]);
  });
});

describe("a share", () => {
  const facts = {
    "hose-length": { at: "/subject/hoseLength", quantity: "length" },
    depot: { at: "/d", value: "text" },
  };
  const known = expect.arrayContaining(["rated-pressure", "water-capacity", "hose-length"]);

  it("is of a quantity that is known", () => {
    const SHARE = '"90 % of rated-presure"';
    expect(mistakes({ accept: { "at-least": "90 % of rated-presure" } }, { facts })).toMatchObject([
      ["plan/unknown-name", { thing: "quantity fact", name: "rated-presure", known, nearest: "rated-pressure" }, SHARE],
    ]);
    expect(mistakes({ accept: { "at-least": "90 % of depot" } }, { facts })).toMatchObject([
      ["plan/unknown-name", { thing: "quantity fact", name: "depot", known }, '"90 % of depot"'],
    ]);
  });

  it("is of the quantity that is measured", () => {
    expect(mistakes({ accept: { "at-least": "90 % of hose-length" } }, { facts })).toEqual([
      ["plan/wrong-dimension", { found: "length", dimension: "pressure" }, '"90 % of hose-length"'],
    ]);
  });
});

describe("limits that are not there", () => {
  it("are asked for", () => {
    expect(mistakes({ caution: { "at-most": "10 bar" } })).toMatchObject([["plan/no-accept", {}, ""]]);
    expect(
      mistakes({ accept: { "at-most": "10 bar" }, cases: [{ for: { class: "a" }, accept: { "at-most": "9 bar" } }] }),
    ).toMatchObject([
      ["plan/needs-one-of", { keys: ["accept", "cases", "accept-by"], given: ["accept", "cases"] }, ""],
    ]);
    expect(mistakes({ accept: {} }).map(([code]) => code)).toEqual(["read/empty-map"]);
    const apart = { each: "subject.cylinders", apart: { consequence: "refer" } };
    expect(mistakes({ accept: { "at-most": "10 bar" } }, {}, apart).map(([code]) => code)).toEqual(["plan/no-limit"]);
  });

  it("are asked for of a tolerance by name", () => {
    expect(mistakes("charg", { tolerances: { charge: { accept: { "at-most": "10 bar" }, basis } } })).toMatchObject([
      ["plan/unknown-name", { thing: "tolerance", name: "charg", known: ["charge"], nearest: "charge" }, '"charg"'],
    ]);
  });
});

describe("a caution band", () => {
  it("lies where something is accepted", () => {
    const accept = { "at-least": "10 bar" };
    expect(listMistakes({ accept, caution: { below: "10 bar" } }).told.map(([code]) => code)).toEqual([
      "plan/empty-caution",
    ]);
    expect(listMistakes({ accept, caution: { below: "12 bar" } }).told).toEqual([]);
    // Either of two regions will do.
    expect(listMistakes({ accept, caution: { below: "10 bar", above: "90 bar" } }).told).toEqual([]);
  });

  it("is of what is accepted all the same where it cannot be read", () => {
    expect(mistakes({ accept: { "at-least": "10 bar" }, caution: { below: "12" } }).map(([, , at]) => at)).toEqual([
      '"12"',
    ]);
  });
});

describe("cases", () => {
  const facts = { role: { at: "/subject/role", "one-of": ["front-line", "spare", "training"] } };
  const one = (scope: Data, limit = "10 bar") => ({ for: scope, accept: { "at-most": limit } });
  const told = (...cases: readonly Data[]) =>
    listMistakes({ cases }, { facts }).told.map(([code, , , related]) => [code, related]);

  it("may not both hold for a record", () => {
    expect(told(one({ role: "spare" }), one({ role: "spare" }))[0]?.[0]).toBe("plan/cases-overlap");
    expect(told(one({ role: ["spare", "training"] }), one({ role: ["front-line", "training"] }))[0]?.[0]).toBe(
      "plan/cases-overlap",
    );
    expect(told(one({ role: "spare" }), one({ class: "airline" }))[0]?.[0]).toBe("plan/cases-overlap");
    expect(told(one({ role: "spare", class: "airline" }), one({ role: "spare" }))[0]?.[0]).toBe("plan/cases-overlap");
    const third = told(one({ role: "front-line" }), one({ role: "spare" }), one({ role: ["training", "spare"] }));
    expect(third).toEqual([["plan/cases-overlap", expect.stringContaining("for")]]);
  });

  it("are apart where some fact cannot have both values", () => {
    expect(told(one({ role: "spare" }), one({ role: ["front-line", "training"] }))).toEqual([]);
    expect(told(one({ role: "spare", class: "airline" }), one({ role: "spare", class: "open-circuit" }))).toEqual([]);
    expect(told(one({ role: "spare", class: "airline" }), one({ role: "training", class: "airline" }))).toEqual([]);
  });

  it("are not said to overlap where a fact is misspelt", () => {
    expect(told(one({ rol: "spare" }), one({ rol: "spare" })).map(([code]) => code)).not.toContain(
      "plan/cases-overlap",
    );
    expect(told(one({ rol: "spare", role: "spare" }), one({ role: "spare" })).map(([code]) => code)).not.toContain(
      "plan/cases-overlap",
    );
  });

  it("are all told where several cannot be read", () => {
    const broken = mistakes({ cases: [one({ role: "spare" }, "10"), one({ role: "training" }, "20")] }, { facts });
    expect(broken.map(([, , at]) => at)).toEqual(['"10"', '"20"']);
  });
});

describe("rows by a size", () => {
  const row = (upTo: string, limit = "10 bar") => ({ "up-to": upTo, accept: { "at-most": limit } });
  const by = (...rows: readonly Data[]) => ({ "accept-by": { fact: "rated-pressure", rows } });

  it("rise", () => {
    expect(listMistakes(by(row("200 bar"), row("300 bar")))).toEqual({ isCompiled: true, told: [] });
    expect(mistakes(by(row("300 bar"), row("200 bar")))).toEqual([
      ["plan/rows-not-rising", { found: "200 bar" }, '"200 bar"'],
    ]);
    expect(mistakes(by(row("300 bar"), row("300 bar"), row("400 bar")))).toEqual([
      ["plan/rows-not-rising", { found: "300 bar" }, '"300 bar"'],
    ]);
    expect(mistakes(by(row("300 bar"), row("29 MPa")))).toEqual([
      ["plan/rows-not-rising", { found: "29 MPa" }, '"29 MPa"'],
    ]);
  });

  it("are of a quantity that is known, and end at one", () => {
    const known = ["rated-pressure", "water-capacity"];
    const fact = "rated-presure";
    expect(mistakes({ "accept-by": { fact, rows: [row("200 bar")] } })).toEqual([
      [
        "plan/unknown-name",
        { thing: "quantity fact", name: fact, known, nearest: "rated-pressure" },
        '"rated-presure"',
      ],
    ]);
    expect(mistakes(by(row("90 % of rated-pressure"))).map(([code, params]) => [code, params])).toEqual([
      ["plan/share-in-row", {}],
    ]);
    expect(mistakes(by(row("200"))).map(([code]) => code)).toEqual(["plan/bad-quantity"]);
    expect(mistakes(by(row("9 L"))).map(([code]) => code)).toEqual(["plan/bad-quantity"]);
    expect(mistakes(by(row("200 bar", "10"), row("300", "10 bar"))).map(([, , at]) => at)).toEqual(['"10"', '"300"']);
  });
});

describe("the basis of limits", () => {
  it("is that of the tolerance, else of the step, and must be one", () => {
    const noBasis = mistakes({ accept: { "at-most": "10 bar" } }, {}, { basis: undefined });
    expect(noBasis.map(([code]) => code)).toEqual(["plan/no-basis"]);
    const named = { tolerances: { charge: { accept: { "at-most": "10 bar" }, basis } } };
    expect(listMistakes("charge", named, { basis: undefined }).told).toEqual([]);
  });

  it("stands on each finding", () => {
    const local = { kind: "local", order: "LO 14" };
    const accept = { "at-most": "10 bar" };
    const basisOf = (tolerance: unknown, step: Data) => {
      const tolerances = tolerance === "charge" ? { tolerances: { charge: { accept, basis: local } } } : {};
      const policy = makePolicy(
        [{ step: "one", kind: "reading", quantity: "pressure", tolerance, ...step }],
        tolerances,
      );
      return assess(policy, [{ step: "one", reading: "20 bar" }]).findings[0]?.basis;
    };
    expect(basisOf("charge", {})).toEqual(local);
    expect(basisOf("charge", { basis })).toEqual(local);
    expect(basisOf({ accept }, { basis: local })).toEqual(local);
  });
});
