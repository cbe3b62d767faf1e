import { describe, expect, it } from "vitest";
import { assess, makePolicy, summarise } from "./sample.js";

const due = { every: "P1Y", counted: "from-last", consequence: "refer", basis: { kind: "common-practice" } };
const facts = { post: { at: "/station", "one-of": ["Lowmere 3", "Lowmere 4"] } };
const policy = makePolicy(
  [{ step: "strap", kind: "confirm" }],
  {
    facts,
    policy: {
      id: "test/due",
      title: "Due",
      version: "1",
      status: "draft",
      effective: { from: "2026-02-01", to: "2026-05-31" },
    },
    intervals: {
      own: { of: "set", date: "testedOn", forbids: "use", ...due },
      masks: { of: "mask", date: "cleanedOn", for: { post: ["Lowmere 3"] }, ...due },
    },
  },
  { subject: "set", intervals: ["own", "masks"] },
);
const steps = [{ step: "strap", result: "satisfactory" }];
const masks = [
  { id: " M-1 ", cleanedOn: "2026-01-10" },
  { id: " ", cleanedOn: "2025-01-10" },
  { id: 7, cleanedOn: "2026-01-10" },
];

function judge(subject: Readonly<Record<string, unknown>>, rest: Readonly<Record<string, unknown>> = {}) {
  return assess(policy, steps, { testedOn: "2026-01-10", masks, ...subject }, { station: "Lowmere 3", ...rest });
}

describe("things that fall due", () => {
  it("are told by their trimmed names, or by their place where they have none", () => {
    const { results } = judge({});
    const told = results.filter(({ interval }) => interval === "masks").map(({ part, outcome }) => [part, outcome]);
    expect(told).toEqual([
      ["M-1", "within"],
      ["#2", "outside"],
      ["#3", "within"],
    ]);
    const own = results.find(({ interval }) => interval === "own");
    expect(own).toMatchObject({ outcome: "within", pointers: ["/subject/testedOn"] });
    expect(own).not.toHaveProperty("part");
  });

  it("are the subject itself where its kind is meant, whatever blanks stand around it", () => {
    expect(summarise(judge({ kind: " set " }))["own due"]).toBe("within");
  });

  it.each([
    ["2026-01-10", "within", undefined],
    ["2025-04-12", "within", undefined],
    ["2025-04-11", "outside", { due: "2026-04-11", forbids: "use", date: "2025-04-11" }],
    ["2026-04-13", "undecided: date-ahead", { reason: "date-ahead" }],
    ["9999-12-31", "undecided: date-ahead", { reason: "date-ahead" }],
    ["11.04.2025", "undecided: unreadable", undefined],
    [undefined, "undecided: no-date", undefined],
  ])("were last done on %s", (testedOn, outcome, params) => {
    const assessment = judge({ testedOn });
    expect(summarise(assessment)["own due"]).toBe(outcome);
    const finding = assessment.findings.find(({ interval }) => interval === "own");
    if (outcome === "within") expect(finding).toBeUndefined();
    else expect(finding?.params).toMatchObject(params ?? {});
  });

  it.each([
    [[], "no-date"],
    [undefined, "no-date"],
    ["M-1", "no-date"],
  ])("are open where the list of them is %j", (list, reason) => {
    const { results } = judge({ masks: list });
    expect(results.filter(({ interval }) => interval === "masks")).toMatchObject([{ outcome: "undecided", reason }]);
  });

  it("are not asked outside the scope, and open where that cannot be told, but where they are overdue", () => {
    const read = (station: unknown, list: unknown = masks) =>
      judge({ masks: list }, { station })
        .results.filter(({ interval }) => interval === "masks")
        .map(({ outcome, reason }) => reason ?? outcome);
    expect(read("Lowmere 4")).toEqual(["out-of-scope"]);
    expect(read(undefined)).toEqual(["fact-missing", "outside", "fact-missing"]);
    expect(read(undefined, [])).toEqual(["fact-missing"]);
  });
});

describe("the days on which a policy holds", () => {
  it.each([
    ["2026-01-31", true],
    ["2026-02-01", false],
    ["2026-05-31", false],
    ["2026-06-01", true],
  ])("%s", (at, isOutside) => {
    const { findings } = judge({ testedOn: "2026-01-10" }, { at });
    const remarks = findings.filter(({ code }) => code === "record/outside-effective");
    expect(remarks.map(({ params }) => params)).toEqual(
      isOutside ? [{ date: at, from: "2026-02-01", to: "2026-05-31" }] : [],
    );
  });

  it("is judged by a check whose name has blanks around it, and by none that is not there", () => {
    expect(judge({}, { check: " daily " }).judged).toBe(true);
    const unknown = judge({}, { check: "dialy" });
    expect(unknown.verdict).not.toBe("meets");
    expect(JSON.stringify(unknown)).toContain("dialy");
  });
});
