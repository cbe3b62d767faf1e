import { describe, expect, it } from "vitest";
import { describeCheck } from "../../src/index.js";
import { makePolicy } from "./sample.js";

type Data = Readonly<Record<string, unknown>>;

const basis = { kind: "common-practice" };
const harness = { step: "harness", kind: "confirm" };
const reading = (accept: Data, rest: Data = {}) => ({
  step: "one",
  kind: "reading",
  quantity: "pressure",
  tolerance: { accept },
  basis,
  ...rest,
});
const dial = { quantity: "pressure", division: "10 bar", rounding: "down", range: ["0 bar", "400 bar"] };

/** The one step of a form, beside those of `parts`. */
function describeOne(step: Data, parts: Data = {}, subject: Data = {}) {
  const form = describeCheck(makePolicy([step], parts), "daily", { kind: "set", id: "S-014", ...subject });
  const one = form?.steps[0];
  if (one === undefined) throw new Error("the form lacks the step");
  return one;
}

describe("the head of a form", () => {
  it("says what the policy and the check say, and leaves out what they do not", () => {
    const bare = makePolicy([harness]);
    const digest = bare.plan.digest;
    const { steps, ...head } = describeCheck(bare, "daily") ?? {};
    expect(steps).toHaveLength(1);
    expect(JSON.stringify(head)).toBe(
      JSON.stringify({
        tenbar: 1,
        kind: "form",
        policy: { id: "test/one", version: "1", digest },
        check: "daily",
        competence: [],
        order: "any",
        cautions: [],
        deference: "Local procedure stands above this policy.",
      }),
    );
    const full = makePolicy(
      [harness],
      { cautions: ["Let no set stand without air."] },
      { title: "Daily", subject: "set", competence: ["wearer", "technician"], order: { "listed-by": "at" } },
    );
    expect(describeCheck(full, "daily")).toMatchObject({
      title: "Daily",
      subject: "set",
      competence: ["wearer", "technician"],
      order: "at",
      cautions: ["Let no set stand without air."],
    });
  });
});

describe("a step of a form", () => {
  it("says what it says in the policy, and leaves out what it does not", () => {
    expect(JSON.stringify(describeOne(harness))).toBe(
      JSON.stringify({
        step: "harness",
        kind: "confirm",
        applies: "yes",
        after: [],
        attestable: false,
        defects: [],
        fields: [
          { key: "result", type: "choice", words: ["satisfactory", "defect", "not-done"] },
          { key: "defect", type: "text" },
        ],
        asked: [{ limits: [{ requirement: "condition", consequence: "withdraw", accept: "satisfactory" }] }],
      }),
    );
    const defects = { torn: { title: "A strap is torn", consequence: "refer" }, worn: { consequence: "note" } };
    expect(describeOne({ ...harness, ask: "Are all straps sound?", attestable: true, defects })).toMatchObject({
      ask: "Are all straps sound?",
      attestable: true,
      defects: [{ name: "torn", title: "A strap is torn" }, { name: "worn" }],
    });
  });

  it("comes after those that it names", () => {
    const form = describeCheck(makePolicy([harness, { step: "mask", kind: "confirm", after: ["harness"] }]), "daily");
    expect(form?.steps.map(({ after }) => after)).toEqual([[], ["harness"]]);
  });

  it("is asked, is not, or may be, by what is fitted", () => {
    const lamp = { ...harness, "when-fitted": "lamp" };
    const apply = (fitted: unknown) => {
      const { applies, reason } = describeOne(lamp, {}, { fitted });
      return reason === undefined ? applies : `${applies}: ${reason}`;
    };
    expect([{ lamp: true }, { lamp: false }, {}, null, { lamp: "yes" }].map(apply)).toEqual([
      "yes",
      "no: not-fitted",
      "open: fitting-not-recorded",
      "open: fitting-not-recorded",
      "open: unreadable",
    ]);
  });

  it("names its instrument, those that it may be, and how fine it is", () => {
    const parts = { instruments: { other: dial, dial, any: { "one-of": ["dial", "other"] } } };
    const named = (instrument?: string) =>
      describeOne(reading({ "at-least": "200 bar" }, instrument === undefined ? {} : { instrument }), parts).instrument;
    expect(named()).toBeUndefined();
    expect(named("dial")).toEqual({ name: "dial", division: "10 bar" });
    expect(named("any")).toEqual({ name: "any", oneOf: ["dial", "other"] });
  });

  it.each<[string, Data, Data, string]>([
    ["of its limit", { "at-least": "3000 psi" }, {}, "psi"],
    [
      "of its instrument where the limit is a share",
      { "at-least": "90 % of rated-pressure" },
      { instrument: "dial" },
      "MPa",
    ],
    ["of pressure where neither says one", { "at-least": "90 % of rated-pressure" }, {}, "bar"],
  ])("offers first the unit %s", (_name, accept, rest, unit) => {
    const parts = { instruments: { dial: { ...dial, division: "1 MPa", range: ["0 MPa", "40 MPa"] } } };
    const [field] = describeOne(reading(accept, rest), parts).fields;
    const units = field?.type === "quantity" ? field.units : [];
    expect(units[0]).toBe(unit);
    expect([...units].sort()).toEqual(["MPa", "Pa", "bar", "kPa", "mbar", "mmH2O", "psi"]);
  });

  it("offers the unit of its instrument's range where it has no division", () => {
    const parts = { instruments: { dial: { quantity: "pressure", range: ["0 psi", "5000 psi"] } } };
    const [field] = describeOne(
      reading({ "at-least": "90 % of rated-pressure" }, { instrument: "dial" }),
      parts,
    ).fields;
    expect(field).toMatchObject({ units: expect.arrayContaining(["bar"]) });
    expect(field?.type === "quantity" && field.units[0]).toBe("psi");
  });

  it("offers each of its fields with what it may hold", () => {
    expect(describeOne({ step: "number", kind: "match", places: ["back", "mask"] }).fields).toEqual([
      { key: "seen", type: "places", places: ["back", "mask"] },
    ]);
    const timing = {
      step: "alarm",
      kind: "timing",
      "from-event": "still",
      "to-event": "sounds",
      tolerance: { accept: { "at-most": "35 s" } },
      basis,
    };
    expect(describeOne(timing).fields).toEqual([
      { key: "elapsed", type: "quantity", quantity: "duration", units: ["s", "min", "h"] },
      { key: "occurred", type: "flag" },
      { key: "events", type: "events", events: ["still", "sounds"] },
    ]);
  });

  it("says of each member what it must hold, or why that is not known", () => {
    const cylinders = [{ id: "A", ratedPressure: "300 bar" }, { ratedPressure: "200 bar" }, { id: "C" }];
    const each = { each: "subject.cylinders", apart: { "at-most": "20 bar", consequence: "refer" } };
    const { asked } = describeOne(reading({ "at-least": "90 % of rated-pressure" }, each), {}, { cylinders });
    const level = { requirement: "level", consequence: "withdraw" };
    expect(asked).toStrictEqual([
      { part: "A", limits: [{ ...level, accept: "at least 270 bar (90 % of rated-pressure)" }] },
      { limits: [{ ...level, accept: "at least 180 bar (90 % of rated-pressure)" }] },
      { part: "C", limits: [{ ...level, reason: "fact-missing" }] },
      { limits: [{ requirement: "apart", consequence: "refer", accept: "at most 20 bar" }] },
    ]);
  });

  it("still says what it would ask where an order leaves it out, but not what an order leaves out of it", () => {
    const order = { from: "2026-01-01", until: "2026-12-31", order: "TO 1", by: "An officer", reason: "A trial" };
    const hold = {
      step: "leak",
      kind: "hold",
      quantity: "pressure",
      lasting: { "at-least": "60 s" },
      drop: { accept: { "at-most": "10 bar" } },
      basis,
    };
    const ask = (adopted: Data) => {
      const policy = makePolicy([harness, hold], { adopted: [{ id: "a", step: "daily/leak", ...order, ...adopted }] });
      const step = describeCheck(policy, "daily", { kind: "set", id: "S-014" }, { at: "2026-04-12" })?.steps[1];
      return {
        applies: step?.applies,
        reason: step?.reason,
        asked: step?.asked.flatMap(({ limits }) => limits.map(({ requirement }) => requirement)),
      };
    };
    expect(ask({ omit: true })).toEqual({
      applies: "no",
      reason: "omitted-by-adoption",
      asked: ["lasting", "drop"],
    });
    expect(ask({ requirement: "lasting", omit: true })).toEqual({ applies: "yes", reason: undefined, asked: ["drop"] });
  });
});
