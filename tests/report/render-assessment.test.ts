import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Assessment, Finding } from "../../src/index.js";
import { evaluate } from "../../src/index.js";
import { renderAssessment } from "../../src/report/index.js";
import { makeRecord } from "../cli/sample-policy.js";
import { assessSample, compileSample } from "./sample-assessments.js";

const PLAIN = { color: false, width: 80 } as const;
const render = (assessment: Assessment) => renderAssessment(assessment, PLAIN);

function replaceFinding(assessment: Assessment, change: Partial<Finding>): Assessment {
  const [first, ...others] = assessment.findings;
  if (first === undefined) throw new Error("there is no finding");
  return { ...assessment, findings: [{ ...first, ...change }, ...others] };
}

describe("an assessment as text", () => {
  it("says the verdict in words at the right edge of the head", () => {
    const [meets] = render(assessSample({})).split("\n");
    expect(meets).toMatch(/^lm1-1, S-014, daily +meets the policy$/);
    expect(meets).toHaveLength(80);
    expect(render(assessSample({ harness: "" })).split("\n")[0]).toMatch(/ refer to a competent person$/);
    expect(render(assessSample({ end: "270 bar" })).split("\n")[0]).toMatch(/ withdraw from use$/);
  });

  it("puts the verdict on a line of its own where the names are long", () => {
    const lines = render(assessSample({ id: "lowmere-".repeat(7) })).split("\n");
    expect(lines[1]).toBe("  meets the policy");
  });

  it("tells of a finding what follows, where, what was seen, what is accepted, by how much, and on what it rests", () => {
    expect(
      render(assessSample({ end: "270 bar" }))
        .split("\n")
        .slice(1, 13),
    ).toEqual([
      "",
      "  withdraw  leak, drop: outside",
      "            Pressure fell `20 bar` over the hold; at most `10 bar` is accepted",
      "            seen        20 bar",
      "            accepted    at most 10 bar",
      "            margin      10 bar beyond the limit",
      "            true value  between 10 bar and 30 bar; hardly any chance that it is",
      "                        inside the limit",
      "            policy      lowmere.yaml:38:9",
      "            limit       lowmere.yaml:17:13",
      "            basis       common practice, no source",
      "            record      /steps/1",
    ]);
  });

  it("tells a margin on the limit, and one inside it", () => {
    expect(render(assessSample({ end: "280 bar" }))).toContain("margin      none: exactly on the limit");
    const wider = compileSample((text) => text.replace("at-most: 10 bar", "at-most: 30 bar"));
    expect(render(assessSample({ end: "270 bar" }, wider))).toContain("margin      10 bar inside the limit");
  });

  it("cuts a chance and never rounds it up", () => {
    // Triangular over (d - 10, d + 10): a drop read as 10 bar is at most 10 bar with probability one half exactly.
    const text = render(assessSample({ end: "280 bar" })).replaceAll(/\s+/g, " ");
    expect(text).toContain("between 0 bar and 20 bar; about 50 in 100 that it is inside the limit");
    const assessment = assessSample({ end: "280 bar" });
    const results = assessment.results.map((one) =>
      one.confidence === undefined ? one : { ...one, confidence: 0.9999 },
    );
    expect(render({ ...assessment, results }).replaceAll(/\s+/g, " ")).toContain("about 99 in 100");
  });

  it("says why a requirement is undecided", () => {
    const text = render(assessSample({ harness: "" }));
    expect(text).toContain("  refer     harness, condition: undecided, missing\n");
    expect(text).toContain("            The condition cannot be judged: nothing is recorded");
  });

  it("puts notes short and last", () => {
    const text = render(assessSample({ end: "270 bar", extra: { weather: "rain" } }));
    expect(text).toMatch(/\n\n {2}note {6}The key `weather` is not known and was not judged\n/);
    expect(text.indexOf("note  ")).toBeGreaterThan(text.indexOf("withdraw  "));
    expect(text.slice(text.indexOf("  note"))).not.toContain("record  ");
  });

  it("counts outcomes in one line", () => {
    expect(render(assessSample({ end: "270 bar" }))).toContain(
      "\n  3 within, 0 caution, 1 outside, 0 undecided, 0 not applicable\n",
    );
  });

  it("says why a record could not be judged at all, and counts nothing", () => {
    const text = render(evaluate(compileSample(), { tenbar: 1 }));
    expect(text).toContain("a record without an id");
    expect(text).toContain("refer to a competent person");
    expect(text).toContain("  cannot be judged: `id`");
    expect(text).not.toContain("within");
  });

  it("has no verdict while a form is half filled", () => {
    const text = renderAssessment(evaluate(compileSample(), makeRecord(), { partial: true }), PLAIN);
    expect(text.split("\n")[0]).toBe("lm1-1, S-014, daily");
  });

  it.each([
    [{ kind: "common-practice" }, "common practice, no source"],
    [{ kind: "published", source: "EN 137", edition: "2006", clause: "6.19" }, "published: EN 137, 2006, 6.19"],
    [{ kind: "published", source: "EN 137", seen: "quoted" }, "published: EN 137, as quoted"],
    [{ kind: "published", source: "EN 137", seen: "memory" }, "published: EN 137, from memory"],
    [{ kind: "manufacturer" }, "the manufacturer's instructions"],
    [{ kind: "manufacturer", document: "MI 4" }, "the manufacturer's instructions: MI 4"],
    [{ kind: "local", order: "LO 14" }, "local order: LO 14"],
  ] as const)("names the basis %j", (basis, words) => {
    const text = render(replaceFinding(assessSample({ end: "270 bar" }), { basis }));
    expect(text).toContain(`            basis       ${words}\n`);
  });

  it("names an interval and a rule as such", () => {
    const assessment = assessSample({ end: "270 bar" });
    const [first] = assessment.findings;
    if (first === undefined) throw new Error("there is no finding");
    const { step: _step, ...others } = first;
    const renderOther = (change: Partial<Finding>) => render({ ...assessment, findings: [{ ...others, ...change }] });
    expect(renderOther({ interval: "requalified", part: "C-1" })).toContain("interval requalified, C-1, drop: outside");
    expect(renderOther({ rule: "shift" })).toContain("rule shift, drop: outside");
  });
});

describe("what a record cannot do to the terminal", () => {
  const anyText = fc.string({ unit: "binary", maxLength: 40 });
  const evil = fc.oneof(
    anyText,
    fc.constantFrom("\u001B[2J", "\u009B31m", "a\nmeets the policy", "\u202Ereversed", "\r", "\u0007"),
  );

  it("drive it: no control character but our own line feeds gets through", () => {
    const policy = compileSample();
    fc.assert(
      fc.property(evil, evil, evil, evil, (id, key, step, reading) => {
        const extra = {
          [key]: 1,
          subject: { kind: "set", id: reading, [step]: 1 },
          steps: [
            { step, result: reading },
            { step: "leak", start: reading, note: id },
            { step: "harness", defect: id },
          ],
        };
        const text = render(evaluate(policy, { ...makeRecord({ id }), ...extra }));
        expect(text).not.toMatch(/[^\P{C}\n\u200C\u200D]|[\u2028\u2029]/u);
      }),
      { numRuns: 300 },
    );
  });

  it("forge a line: a line feed in a name begins none", () => {
    const text = render(assessSample({ id: "x\n\nlm1-9, S-099, daily   meets the policy", harness: "" }));
    expect(text.split("\n").filter((line) => line.startsWith("lm1-9"))).toEqual([]);
  });

  it("flood it: long texts are cut", () => {
    const long = "x".repeat(100_000);
    const text = render(evaluate(compileSample(), { ...makeRecord({ id: long, harness: long }), [long]: 1 }));
    expect(text.length).toBeLessThan(6000);
    expect(text).toContain("...");
  });
});
