import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { frameOf, locatePlace } from "../../src/source/index.js";

function placeOf(text: string, start: number, end = start + 1) {
  return { source: { file: "a.yaml", text }, span: { start, end } };
}

describe("a location", () => {
  it.each([
    ["the start", "ab\ncd", 0, 1, [1, 1, 1, 2]],
    ["the second line", "ab\ncd", 3, 5, [2, 1, 2, 3]],
    ["the line feed itself", "ab\ncd", 2, 3, [1, 3, 2, 1]],
    ["behind a carriage return", "ab\r\ncd", 4, 6, [2, 1, 2, 3]],
    ["behind a byte order mark", "\ufeffab", 1, 3, [1, 1, 1, 3]],
    ["the byte order mark", "\ufeffab", 0, 1, [1, 1, 1, 1]],
    ["behind a character of two units", "\u{1f525}b", 2, 3, [1, 3, 1, 4]],
    ["outside the text", "ab\ncd", 90, 99, [2, 3, 2, 3]],
    ["before the text", "ab", -4, -1, [1, 1, 1, 1]],
  ] as const)("of %s", (_, text, start, end, expected) => {
    const { file, line, column, endLine, endColumn } = locatePlace(placeOf(text, start, end));
    expect([file, line, column, endLine, endColumn]).toEqual(["a.yaml", ...expected]);
  });

  it("counts as many lines and columns as splitting the text does", () => {
    const lines = fc.array(
      fc.string({ maxLength: 5 }).map((line) => line.replaceAll(/[\r\n\ufeff]/g, "x")),
      { minLength: 1 },
    );
    const property = fc.property(lines, fc.nat(), (list, pick) => {
      const text = list.join("\n");
      const offset = pick % (text.length + 1);
      const before = text.slice(0, offset).split("\n");
      const { line, column } = locatePlace(placeOf(text, offset, offset));
      expect([line, column]).toEqual([before.length, (before.at(-1) ?? "").length + 1]);
    });
    fc.assert(property);
  });
});

describe("a code frame", () => {
  it("shows the line, the one before it and a mark under the place", () => {
    expect(frameOf(placeOf("a: 1\nb: two\nc: 3", 8, 11))).toBe("1 | a: 1\n2 | b: two\n  |    ^^^");
  });

  it("shows one line where there is none before, and one mark for an empty place", () => {
    expect(frameOf(placeOf("a: 1\nb: 2", 4, 4))).toBe("1 | a: 1\n  |     ^");
  });

  it("keeps numbers of different length in one column", () => {
    const text = `${"x\n".repeat(9)}y`;
    expect(frameOf(placeOf(text, text.length - 1))).toBe(" 9 | x\n10 | y\n   | ^");
  });

  it("marks a place of several lines to the end of its first", () => {
    expect(frameOf(placeOf("a: [1,\n  2]", 3, 11))).toBe("1 | a: [1,\n  |    ^^^");
  });

  it("keeps tabs so that the mark stays under the place", () => {
    expect(frameOf(placeOf("\ta:\tb", 4))).toBe("1 | \ta:\tb\n  | \t  \t^");
  });

  it("shows what could disturb a terminal as a replacement", () => {
    const frame = frameOf(placeOf("a\u001b[31m\u202eb\u2028\0\ud800c", 0));
    expect(frame.split("\n")[0]).toBe("1 | a\ufffd[31m\ufffdb\ufffd\ufffd\ufffdc");
  });

  it("cuts long lines to a window that holds the place", () => {
    const text = `${"a".repeat(500)}b${"c".repeat(500)}`;
    const [line = "", marks = ""] = frameOf(placeOf(text, 500)).split("\n");
    expect(line).toBe(`1 | …${"a".repeat(40)}b${"c".repeat(79)}…`);
    expect(line.charAt(marks.indexOf("^"))).toBe("b");
    expect(frameOf(placeOf(text, 0, 1001)).length).toBeLessThan(300);
  });

  it("never throws, and puts its mark under the place's first character", () => {
    const property = fc.property(fc.string({ unit: "binary" }), fc.nat(), fc.nat(), (text, from, length) => {
      const start = from % (text.length + 1);
      expect(frameOf(placeOf(text, start, start + length))).toMatch(/ \| [ \t]*\^+$/);
    });
    fc.assert(property);
  });
});
