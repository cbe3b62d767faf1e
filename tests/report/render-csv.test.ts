import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/index.js";
import { renderCsvHead, renderCsvRows, renderUnreadRow } from "../../src/report/index.js";
import { makeRecord } from "../cli/sample-policy.js";
import { assessCases } from "./case-assessments.js";
import { readRows, readTable, unguardCell } from "./csv-table.js";
import { assessSample, compileSample } from "./sample-assessments.js";

const CASES = (await assessCases()).map((one) => [one.name, one] as const);

describe("the table of a record", () => {
  it("has the header that is documented, and lines that end as RFC 4180 wants", () => {
    expect(renderCsvHead()).toBe(
      "recordId,at,check,subject,verdict,step,interval,rule,part,requirement,outcome,reason,consequence,weighs," +
        "observed,accept,margin,confidence,code,message,pointer,policy,deference\r\n",
    );
    expect(readTable(renderCsvHead())).toEqual([]);
  });

  it.each(CASES)("has a row for each result, remark and problem, each with its deference: %s", (_name, given) => {
    const { assessment, at } = given;
    const { results, findings, problems = [], recordId, verdict, deference } = assessment;
    const rows = readRows(renderCsvRows(assessment, at));
    const remarks = findings.filter(({ outcome, requirement }) => outcome === undefined || requirement === undefined);
    expect(rows).toHaveLength(results.length + remarks.length + problems.length);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row).toMatchObject({ recordId: recordId ?? "", at: at ?? "", verdict: verdict ?? "", deference });
    }
    const told = rows.map(({ message = "" }) => unguardCell(message)).join("\n");
    for (const { message } of [...findings, ...problems]) expect(told).toContain(message);
  });

  it.each(CASES)("gives results as they are: %s", (_name, { assessment, at }) => {
    const rows = readRows(renderCsvRows(assessment, at)).slice(assessment.problems?.length ?? 0);
    for (const [index, result] of assessment.results.entries()) {
      const row = rows[index] ?? {};
      const { pointers, span, without, adopted, evidence, ...shown } = result;
      for (const [name, value] of Object.entries(shown)) expect(unguardCell(row[name] ?? "")).toBe(String(value));
      for (const pointer of pointers.slice(0, 1)) expect(row["pointer"]).toContain(pointer);
    }
  });

  it.each(CASES)("has a row that weighs exactly where the verdict is not `meets`: %s", (_name, given) => {
    const { assessment, at } = given;
    const rows = readRows(renderCsvRows(assessment, at));
    const isBad = rows.some(({ weighs = "" }) => ["refer", "withdraw"].includes(weighs));
    expect(isBad).toBe(assessment.verdict !== "meets");
  });

  it("tells a reading beyond its limit with both figures", () => {
    const rows = readRows(renderCsvRows(assessSample({ end: "270 bar" }), "2026-04-12"));
    expect(rows.find(({ outcome }) => outcome === "outside")).toMatchObject({
      step: "leak",
      requirement: "drop",
      weighs: "withdraw",
      observed: "20 bar",
      accept: "at most 10 bar",
      margin: "-10 bar",
      code: "hold/drop-outside",
    });
  });

  it("names each reason why a record could not be judged, and it weighs", () => {
    const assessment = evaluate(compileSample(), { ...makeRecord({}), at: "yesterday" });
    const rows = readRows(renderCsvRows(assessment, "yesterday"));
    expect(rows).toMatchObject([{ verdict: "refer", weighs: "refer", code: "not-judged", pointer: "/at" }]);
  });

  it("names what could not be read", () => {
    const [row] = readRows(renderUnreadRow("a.ndjson:3:5: no JSON; not judged", "Local orders."));
    expect(row).toMatchObject({
      verdict: "",
      weighs: "refer",
      code: "not-read",
      message: "a.ndjson:3:5: no JSON; not judged",
      deference: "Local orders.",
    });
  });
});

describe("a cell", () => {
  const sample = assessSample({});
  const cellOf = (text: string) => readRows(renderCsvRows({ ...sample, recordId: text }, undefined))[0]?.["recordId"];

  // What spreadsheets take for a formula: common practice, no source.
  it.each([
    ["=1+1", "'=1+1"],
    ["+44 20", "'+44 20"],
    ["-2+3", "'-2+3"],
    ["-10 bar+1", "'-10 bar+1"],
    ["-10 bars", "'-10 bars"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["\t=1", "'\t=1"],
    ["\r=1", "'\r=1"],
    ["\uFF1D1", "'\uFF1D1"],
    ["'=1", "''=1"],
    ["-10 bar", "-10 bar"],
    ["-0.5 mbar", "-0.5 mbar"],
    ["-10", "-10"],
    ["-10.50", "-10.50"],
    ["S-014", "S-014"],
    ["'quoted'", "'quoted'"],
    ["a=1", "a=1"],
  ])("%j is %j", (text, cell) => {
    expect(cellOf(text)).toBe(cell);
  });

  it("comes back as it was, but for what no table holds", () => {
    const texts = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string({ unit: fc.constantFrom(...`'=+-@\t\r\n",;a1 \0`) }),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const value = text.replaceAll(/[^\t\n\r -\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "\ufffd");
        const cell = cellOf(text) ?? "";
        expect(unguardCell(cell)).toBe(value);
        if (/^[=+\-@\t\r\n]/.test(cell)) expect(cell).toMatch(/^-\d+(\.\d+)?( [^\s=+@-]+)?$/);
      }),
    );
  });
});
