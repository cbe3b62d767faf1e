import { describe, expect, it } from "vitest";
import { describeCheck, type Policy, recordSchema } from "../../src/index.js";
import { adopt, compile, compileStep, head, parentWith } from "./orders.js";
import { assess, summarise } from "./sample.js";

const COMMON = "basis: { kind: common-practice }";

const during = "2026-04-12";
const after = "2026-05-12";

function describeStep(policy: Policy, at: string, subject: Readonly<Record<string, unknown>> = {}) {
  const form = describeCheck(policy, "daily", { kind: "set", id: "S-014", ...subject }, { at });
  const step = form?.steps.find((one) => one.step === "one");
  if (step === undefined) throw new Error("the form lacks the step");
  return step;
}

/** What the form says is asked: part, requirement and limit. */
function listAsked(policy: Policy, at: string, subject: Readonly<Record<string, unknown>> = {}) {
  return describeStep(policy, at, subject).asked.flatMap(({ part, limits }) =>
    limits.map(({ requirement, accept, reason }) => [part ?? "", requirement, accept ?? reason].join(" ").trim()),
  );
}

/** What is asked of a record: step requirements that are not left out, with their part. */
function listJudged(policy: Policy, at: string, subject: Readonly<Record<string, unknown>>) {
  return Object.entries(summarise(assess(policy, [], subject, { at })))
    .filter(([name, outcome]) => name.startsWith("one ") && !outcome.startsWith("not-applicable"))
    .map(([name]) => name.slice("one ".length))
    .sort();
}

const reading = (accept: string, rest = "") =>
  `kind: reading, quantity: pressure, tolerance: { accept: ${accept} }, ${COMMON}${rest}`;

describe("a form on a day on which the order for a looser step has ended", () => {
  const cylinders = [
    { id: "C-1", ratedPressure: "300 bar" },
    { id: "C-2", ratedPressure: "200 bar" },
  ];
  const eachOf = reading(
    "{ at-least: 90 % of rated-pressure }",
    ", each: subject.cylinders, apart: { at-most: 20 bar, consequence: refer }",
  );

  it.each([
    [
      "no longer",
      eachOf,
      reading("{ at-least: 260 bar }"),
      ["level at least 260 bar"],
      [
        "level at least 260 bar",
        "apart at most 20 bar",
        "C-1 level at least 270 bar (90 % of rated-pressure)",
        "C-2 level at least 180 bar (90 % of rated-pressure)",
      ],
    ],
    [
      "only here",
      reading("{ at-least: 270 bar }"),
      reading("{ at-least: 260 bar }", ", each: subject.cylinders"),
      ["C-1 level at least 260 bar", "C-2 level at least 260 bar"],
      ["C-1 level at least 260 bar", "C-2 level at least 260 bar", "level at least 270 bar"],
    ],
  ])("shows what is judged where a step is asked of each cylinder %s", (_, parents, own, first, then) => {
    const policy = compileStep(parents, own);
    expect(listAsked(policy, during, { cylinders })).toEqual(first);
    expect(listAsked(policy, after, { cylinders })).toEqual(then);
    for (const at of [during, after]) {
      const shown = describeStep(policy, at, { cylinders }).asked.flatMap(({ part, limits }) =>
        limits.map(({ requirement }) => (part === undefined ? requirement : `${requirement} ${part}`)),
      );
      expect(shown.sort()).toEqual(listJudged(policy, at, { cylinders }));
    }
  });

  it.each([
    ["a side each", "{ at-most: 10 bar }", "{ at-least: 5 bar }", "at least 5 bar and at most 10 bar"],
    [
      "limits that overlap",
      "{ at-least: 2 bar, at-most: 10 bar }",
      "{ at-least: 5 bar, at-most: 20 bar }",
      "5 bar to 20 bar and 2 bar to 10 bar",
    ],
    ["the parent's alone where it goes without saying", "{ at-most: 10 bar }", "{ at-most: 20 bar }", "at most 10 bar"],
    [
      "the parent's alone where one side is the same",
      "{ at-least: 5 bar, at-most: 10 bar }",
      "{ at-least: 5 bar, at-most: 20 bar }",
      "5 bar to 10 bar",
    ],
    ["sides that nothing is on", "{ at-most: 10 bar }", "{ at-least: 20 bar }", "at least 20 bar and at most 10 bar"],
    ["one that excludes its limit", "{ below: 10 bar }", "{ at-most: 10 bar }", "below 10 bar"],
  ])("shows both limits that are judged: %s", (_, parents, own, accept) => {
    expect(listAsked(compileStep(reading(parents), reading(own)), after)).toEqual([`level ${accept}`]);
  });

  it.each([
    ["everyone", "kind: confirm", "kind: confirm, when-fitted: radio", "yes"],
    ["those with a mast", "kind: confirm, when-fitted: mast", "kind: confirm, when-fitted: radio", "open"],
  ])("asks a step that the parent asks of %s", (_, parents, own, applies) => {
    const policy = compileStep(parents, own);
    const subject = { fitted: { radio: false } };
    expect(describeStep(policy, during, subject)).toMatchObject({ applies: "no", reason: "not-fitted" });
    expect(describeStep(policy, after, subject).applies).toBe(applies);
    expect(listJudged(policy, during, subject)).toEqual([]);
    expect(listJudged(policy, after, subject)).toEqual(["condition"]);
  });

  it.each([
    ["withdraw", "refer", "refer", "withdraw"],
    ["refer", "withdraw", "withdraw", "withdraw"],
    ["note", "refer", "refer", "refer"],
  ])("says what weighs more: the parent's %s, or its own %s", (parents, own, first, then) => {
    const policy = compileStep(
      reading("{ at-most: 10 bar }", `, consequence: ${parents}`),
      reading("{ at-least: 5 bar }", `, consequence: ${own}`),
    );
    const weigh = (at: string) =>
      describeStep(policy, at).asked.flatMap(({ limits }) => limits.map(({ consequence }) => consequence));
    expect([weigh(during), weigh(after)]).toEqual([[first], [then]]);
  });

  it("says why a limit is not known, though the other is", () => {
    const share = compileStep(reading("{ at-least: 90 % of rated-pressure }"), reading("{ at-least: 200 bar }"));
    const limitsAt = (at: string) => describeStep(share, at).asked.flatMap(({ limits }) => limits);
    expect(limitsAt(during)).toEqual([{ requirement: "level", consequence: "withdraw", accept: "at least 200 bar" }]);
    expect(limitsAt(after)).toEqual([{ requirement: "level", consequence: "withdraw", reason: "fact-missing" }]);
  });

  it("has a field for every place and event that the parent asks for, as has the schema of records", () => {
    const tally = compileStep("kind: match, places: [a, b, c]", "kind: match, places: [a, b]");
    const placesAt = (at: string) =>
      describeStep(tally, at).fields.flatMap((field) => (field.type === "places" ? field.places : []));
    expect(placesAt(during)).toEqual(["a", "b"]);
    expect(placesAt(after)).toEqual(["a", "b", "c"]);
    expect(JSON.stringify(recordSchema(tally, "daily"))).toContain('"c":{"anyOf":');
    const timing = (rest: string) => `kind: timing, tolerance: { accept: { at-most: 30 s } }, ${COMMON}${rest}`;
    const alarm = compileStep(timing(", from-event: still, to-event: sound"), timing(""));
    const keysAt = (at: string) => describeStep(alarm, at).fields.map(({ key }) => key);
    expect(keysAt(during)).not.toContain("events");
    expect(keysAt(after)).toContain("events");
    const called = compileStep(
      timing(", from-event: still, to-event: sound"),
      timing(", from-event: call, to-event: sound"),
    );
    const eventsAt = (at: string) =>
      describeStep(called, at).fields.flatMap((field) => (field.type === "events" ? field.events : []));
    expect(eventsAt(during)).toEqual(["call", "sound"]);
    expect(eventsAt(after)).toEqual(["call", "sound", "still"]);
  });

  it("lets nobody vouch for a step that the parent wants recorded, and names the defects of both", () => {
    const policy = compileStep(
      "kind: confirm, defects: { torn: { consequence: refer } }",
      "kind: confirm, attestable: true, defects: { worn: { consequence: refer } }",
    );
    const read = (at: string) => {
      const { attestable, defects } = describeStep(policy, at);
      return [attestable, ...defects.map(({ name }) => name)];
    };
    expect(read(during)).toEqual([true, "worn"]);
    expect(read(after)).toEqual([false, "worn", "torn"]);
  });
});

describe("the defects of a step that names others than its parent", () => {
  const policy = compileStep(
    "kind: confirm, defects: { torn: { consequence: withdraw } }",
    "kind: confirm, consequence: refer, defects: { worn: { consequence: refer } }",
  );
  const listWords = (at: string) =>
    describeStep(policy, at).fields.flatMap((field) => (field.key === "defect" && "words" in field ? field.words : []));

  it("can be chosen wherever they can be named: the parent's too once the order has ended", () => {
    expect(listWords(during)).toEqual(["worn"]);
    expect(listWords(after)).toEqual(["worn", "torn"]);
    for (const at of [during, after]) {
      expect(listWords(at)).toEqual(describeStep(policy, at).defects.map(({ name }) => name));
    }
    expect(JSON.stringify(recordSchema(policy, "daily"))).toContain('{"enum":["worn","torn"]}');
    const torn = [
      { step: "harness", result: "satisfactory" },
      { step: "one", defect: "torn" },
    ];
    expect(assess(policy, torn, {}, { at: after }).verdict).toBe("withdraw");
  });
});

describe("a form on a day on which one requirement of a step is left out by order", () => {
  it("shows what is judged, and before and after that the whole", () => {
    const parent = parentWith(
      `step: one, kind: hold, quantity: pressure, lasting: { at-least: 60 s }, drop: { accept: { at-most: 10 bar } }, ${COMMON}`,
    );
    const child = `${head("c", "./parent.yaml")}adopted:
${adopt("trial", "step: daily/one, requirement: drop, omit: true, until: 2026-04-30")}`;
    const { policy, diagnostics } = compile(child, { "./parent.yaml": parent });
    if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
    const lasting = "lasting at least 60 s";
    expect(listAsked(policy, during)).toEqual([lasting]);
    expect(describeStep(policy, during)).toMatchObject({ applies: "yes" });
    expect(listJudged(policy, during, {})).toEqual(["lasting"]);
    for (const at of ["2026-03-31", after]) {
      expect(listAsked(policy, at)).toEqual([lasting, "drop at most 10 bar"]);
      expect(listJudged(policy, at, {})).toEqual(["drop", "lasting"]);
    }
  });
});

describe("a place that only a looser step asks for", () => {
  const policy = compileStep("kind: match, places: [a, b]", "kind: match, places: [a, b, c], consequence: note");
  const listPlaces = (at: string, seen: Readonly<Record<string, string>>) =>
    assess(policy, [{ step: "one", seen: { a: "014", b: "014", ...seen } }], {}, { at })
      .findings.filter(({ code }) => code === "step/unknown-place")
      .map(({ consequence, pointer }) => `${consequence} ${pointer}`);

  it("is one too many to the parent once the order has ended, where it says otherwise", () => {
    expect(listPlaces(during, { c: "015" })).toEqual([]);
    expect(listPlaces(after, { c: "015" })).toEqual(["refer /steps/0/seen/c"]);
    expect(listPlaces(after, { c: "014" })).toEqual([]);
  });

  it("is told once where neither asks for it", () => {
    for (const at of [during, after]) {
      expect(listPlaces(at, { c: "014", d: "015" })).toEqual(["refer /steps/0/seen/d"]);
      expect(listPlaces(at, { c: "014", d: "014" })).toEqual(["note /steps/0/seen/d"]);
    }
  });
});
