import { describe, expect, it } from "vitest";
import { createDiagnostics, DIAGNOSTICS } from "../../src/diagnostics/index.js";
import type { Place } from "../../src/source/index.js";

const SOURCE = { file: "b.yaml", text: "one\ntwo\nthree\n" };

function placeAt(start: number, end: number, file = SOURCE.file): Place {
  return { source: { ...SOURCE, file }, span: { start, end } };
}

describe("diagnostics", () => {
  it("carry place, frame, message and what the code has to say", () => {
    const diagnostics = createDiagnostics();
    const related = [{ message: "the first one", place: placeAt(0, 3) }];
    diagnostics.report("read/duplicate-key", placeAt(4, 7), { key: "two", found: "two", nearest: undefined }, related);
    expect(diagnostics.list()).toEqual([
      {
        code: "read/duplicate-key",
        severity: "error",
        message: "the key `two` stands here a second time",
        file: "b.yaml",
        line: 2,
        column: 1,
        endLine: 2,
        endColumn: 4,
        frame: "1 | one\n2 | two\n  | ^^^",
        found: "two",
        wanted: "every key of a map once",
        mend: "delete one of the two, or rename it",
        params: { key: "two", found: "two" },
        related: [{ message: "the first one", file: "b.yaml", line: 1, column: 1 }],
      },
    ]);
    expect(Object.hasOwn(diagnostics.list()[0] ?? {}, "nearest")).toBe(false);
  });

  it("are sorted by file, position and code, and an exact repeat is dropped", () => {
    const diagnostics = createDiagnostics();
    diagnostics.report("read/tag", placeAt(8, 9), { found: "!a" });
    diagnostics.report("read/tag", placeAt(4, 5), { found: "!a" });
    diagnostics.report("read/alias", placeAt(4, 5), { found: "*a" });
    diagnostics.report("read/tag", placeAt(8, 9), { found: "!a" });
    diagnostics.report("read/tag", placeAt(8, 9), { found: "!b" });
    diagnostics.report("read/tag", placeAt(9, 10, "a.yaml"), { found: "!a" });
    expect(diagnostics.list().map((one) => [one.file, one.line, one.code, one.found])).toEqual([
      ["a.yaml", 3, "read/tag", "!a"],
      ["b.yaml", 2, "read/alias", "*a"],
      ["b.yaml", 2, "read/tag", "!a"],
      ["b.yaml", 3, "read/tag", "!a"],
      ["b.yaml", 3, "read/tag", "!b"],
    ]);
  });

  it("have errors once an error, not a warning, is reported", () => {
    const diagnostics = createDiagnostics();
    expect(diagnostics.hasErrors).toBe(false);
    diagnostics.report("read/text-cut-by-comment", placeAt(0, 1), { whole: "a #b" });
    expect(diagnostics.hasErrors).toBe(false);
    diagnostics.report("read/tag", placeAt(0, 1), {});
    expect(diagnostics.hasErrors).toBe(true);
  });

  it("of two runs do not know each other", () => {
    createDiagnostics().report("read/tag", placeAt(0, 1), {});
    expect(createDiagnostics().list()).toEqual([]);
  });
});

describe("the registry", () => {
  it.each(Object.keys(DIAGNOSTICS))("names %s by a room and words", (code) => {
    expect(code).toMatch(/^[a-z]+\/[a-z]+(-[a-z]+)*$/);
  });
});
