import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createDiagnostics } from "../../src/diagnostics/index.js";
import { type ReadTree, readTree } from "../../src/read/read-tree.js";
import { createTextReport } from "../../src/read/text-report.js";
import { policyData } from "../compare/generate-policies.js";
import { generatedCase } from "../laws/generated-case.js";
import { readWrittenJson } from "./quick-tree.js";

const makeReport = (text: string) => {
  const diagnostics = createDiagnostics();
  return { diagnostics, output: createTextReport({ file: "lowmere.yaml", text }, diagnostics) };
};

const show = (tree: ReadTree | undefined) =>
  tree && { value: tree.value, positions: tree.walk.positions, nodes: tree.walk.nodes };

/** Both ways of reading a text; the quick one must give what the other gives or nothing at all, and report nothing. */
function readBoth(text: string): { quick: ReadTree | undefined; full: ReadTree | undefined } {
  const { diagnostics, output } = makeReport(text);
  const quick = readWrittenJson(output);
  expect(diagnostics.list()).toEqual([]);
  return { quick, full: readTree(makeReport(text).output) };
}

describe("the quick reading of policies that tests write", () => {
  it("gives what the reader gives", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          policyData,
          generatedCase.map(({ data }) => data),
        ),
        (data) => {
          const { quick, full } = readBoth(JSON.stringify(data));
          expect(show(quick)).toEqual(show(full));
          expect(quick).toBeDefined();
        },
      ),
      { numRuns: 200 },
    );
  });

  it("gives it or nothing for any JSON", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (data) => {
        const { quick, full } = readBoth(JSON.stringify(data));
        if (quick !== undefined) expect(show(quick)).toEqual(show(full));
      }),
      { numRuns: 1000 },
    );
  });

  it("gives nothing for what is written another way", () => {
    const texts = [
      '{"a": 1}',
      '{"a":null}',
      '{"a":1,"a":2}',
      '{"<<":1}',
      '{"a":"\\u0007"}',
      '{"a":"\\""}',
      '{"a":1.5}',
    ];
    for (const text of [...texts, '{"a":1e3}', '{"a":9007199254740993}', "a: 1", "[1]", '{"a":1', ""])
      expect(readBoth(text).quick, text).toBeUndefined();
  });
});
