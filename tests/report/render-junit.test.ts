import { spawnSync } from "node:child_process";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Assessment } from "../../src/index.js";
import { JUNIT_FOOT, JUNIT_HEAD, renderSuite, renderUnreadSuite } from "../../src/report/index.js";
import { assessCases } from "./case-assessments.js";
import { readSuite } from "./junit-file.js";
import { assessSample } from "./sample-assessments.js";

const CASES = (await assessCases()).map((one) => [one.name, one] as const);
/** A program of the machine, which no package brings. */
const CHECKER = "xmllint";
const HAS_CHECKER = spawnSync(CHECKER, ["--version"]).status === 0;

const weighs = (consequence: string) => consequence === "refer" || consequence === "withdraw";
const countOf = (suite: ReturnType<typeof readSuite>, key: "failure" | "error" | "skipped") =>
  suite.testcase.filter((one) => one[key] !== undefined).length;

describe("the suite of a record", () => {
  it.each(CASES)("fails exactly where the verdict is not `meets`: %s", (_name, { assessment, at }) => {
    const suite = readSuite(renderSuite(assessment, at));
    expect(countOf(suite, "failure") + countOf(suite, "error") > 0).toBe(assessment.verdict !== "meets");
    expect(countOf(suite, "error") > 0).toBe(!assessment.judged);
    expect([suite["@_tests"], suite["@_failures"], suite["@_errors"], suite["@_skipped"]]).toEqual([
      suite.testcase.length,
      countOf(suite, "failure"),
      countOf(suite, "error"),
      countOf(suite, "skipped"),
    ]);
  });

  it.each(CASES)("has a test case a result, and loses no finding: %s", (_name, { assessment, at }) => {
    const suite = readSuite(renderSuite(assessment, at));
    const { results, findings, judged, problems = [] } = assessment;
    const heavyRemarks = findings.filter(({ consequence, outcome, requirement }) => {
      return weighs(consequence) && (outcome === undefined || requirement === undefined);
    });
    expect(suite.testcase).toHaveLength(results.length + heavyRemarks.length + (judged ? 0 : 1));
    const told = JSON.stringify(suite)
      .replaceAll(/(\\n|\s)+/g, " ")
      .toLowerCase();
    for (const { message } of [...findings, ...problems]) {
      expect(told).toContain(JSON.stringify(message).slice(1, -1).replaceAll(/\s+/g, " ").toLowerCase());
    }
  });

  it.each(CASES)("skips what was not asked and nothing else: %s", (_name, { assessment, at }) => {
    const cases = readSuite(renderSuite(assessment, at)).testcase;
    const { results, judged } = assessment;
    const asked = judged ? cases : cases.slice(1);
    for (const [index, { outcome, reason, requirement }] of results.entries()) {
      expect(asked[index]?.["@_name"].split(" ")[0]).toBe(requirement);
      expect(asked[index]?.skipped?.["@_message"]).toBe(outcome === "not-applicable" ? reason : undefined);
      const isTold = asked[index]?.failure ?? asked[index]?.skipped ?? asked[index]?.["system-out"];
      expect(isTold === undefined).toBe(outcome === "within");
    }
  });

  it("names the record, its time, the policy and what stands above it", () => {
    const suite = readSuite(renderSuite(assessSample({ end: "270 bar" }), "2026-04-12T07:04:00+01:00"));
    expect(suite).toMatchObject({ "@_name": "lm1-1, daily", "@_timestamp": "2026-04-12T07:04:00+01:00" });
    const properties = Object.fromEntries(suite.properties.property.map((one) => [one["@_name"], one["@_value"]]));
    expect(properties).toMatchObject({ subject: "S-014", verdict: "withdraw", policy: "lowmere/leak-only" });
    expect(properties["deference"]).toMatch(/^Local orders, the manufacturer's instructions/);
    expect(suite.testcase.find(({ failure }) => failure !== undefined)).toMatchObject({
      "@_classname": "daily/leak",
      "@_name": "drop",
      failure: {
        "@_type": "hold/drop-outside",
        "@_message": "pressure fell `20 bar` over the hold; at most `10 bar` is accepted",
        "#text": expect.stringMatching(/accepted +at most 10 bar\n/),
      },
    });
  });

  it("has no time where the record states none that can be read", () => {
    for (const at of [undefined, "soon", "2026-02-30"]) {
      expect(readSuite(renderSuite(assessSample({}), at))["@_timestamp"]).toBeUndefined();
    }
  });

  it("tells a caution without failing", () => {
    const { testcase } = readSuite(renderSuite(assessSample({ end: "280 bar" }), undefined));
    const drop = testcase.find((one) => one["@_name"] === "drop");
    expect(drop?.failure).toBeUndefined();
    expect(drop?.["system-out"]).toMatch(/^caution\n/);
  });

  it("fails for a remark that weighs, by a test case of its own", () => {
    const steps = [
      { step: "harness", result: "satisfactory" },
      { step: "leak", start: "290 bar", end: "290 bar", held: "60 s" },
      { step: "gauge-glass", defect: "cracked" },
    ];
    const { testcase } = readSuite(renderSuite(assessSample({ extra: { steps } }), undefined));
    expect(testcase.filter(({ failure }) => failure !== undefined)).toMatchObject([
      { "@_classname": "daily/gauge-glass", "@_name": "step/defect", failure: { "@_type": "step/defect" } },
    ]);
  });

  it("of what could not be read has one error", () => {
    const suite = readSuite(renderUnreadSuite("a.ndjson:3:5: no JSON; not judged", "Local orders stand above."));
    expect(suite).toMatchObject({ "@_tests": 1, "@_errors": 1, "@_failures": 0 });
    expect(suite.testcase[0]?.error?.["@_message"]).toBe("a.ndjson:3:5: no JSON; not judged");
  });
});

/** The same assessment with a text in each place that holds words of the record or the policy. */
function fillWith(text: string, assessment: Assessment): Assessment {
  const { results, findings } = assessment;
  return {
    ...assessment,
    recordId: text,
    check: text,
    subject: text,
    deference: text,
    results: results.map((result) => ({ ...result, part: text })),
    findings: findings.map((finding) => ({ ...finding, part: text, message: text })),
  };
}

// XML 1.0, section 2.2: what is no Char cannot be written, not even as a reference.
describe("any text", () => {
  const sample = assessSample({ end: "270 bar" });
  const replaced = (text: string) => text.replaceAll(/[^\t\n\r -\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "\ufffd");
  const texts = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.string({ unit: fc.constantFrom(..."<>&'\"]-; \t\r\n\0\u001b\ufffe\ud800true=") }),
    fc.constantFrom("true", "]]>", "&#10;", "&amp;lt;", "-->", "<![CDATA[", "&lol;"),
  );

  it("comes back from the file as it was, but for what XML forbids", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const suite = readSuite(renderSuite(fillWith(text, sample), undefined));
        const value = replaced(text);
        expect(suite["@_name"]).toBe(`${value}, ${value}`);
        const deference = suite.properties.property.find((one) => one["@_name"] === "deference");
        expect(deference?.["@_value"]).toBe(value);
        expect(suite.testcase.find(({ failure }) => failure !== undefined)?.failure?.["@_message"]).toBe(value);
      }),
    );
  });

  it.skipIf(!HAS_CHECKER)("is well-formed to another parser as well (skipped where xmllint is not installed)", () => {
    const odd = fillWith("a<b>&\"'\t\r\n\0\u001b\ufffe\ud800]]>true", sample);
    const suites = [...CASES.map(([, { assessment, at }]) => renderSuite(assessment, at)), renderSuite(odd, undefined)];
    const input = JUNIT_HEAD + suites.join("") + JUNIT_FOOT;
    const { status, stderr } = spawnSync(CHECKER, ["--noout", "-"], { input, encoding: "utf8" });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  });
});
