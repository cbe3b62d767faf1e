import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clipText, makePrintable } from "../../src/report/printable-text.js";
import { measureText, wrapText } from "../../src/report/wrap-text.js";

describe("the width of a text", () => {
  it.each([
    ["ten bar", 7],
    ["Prüfung", 7],
    ["Pru\u0308fung", 7],
    ["消防", 4],
    ["ﾎｰｽ", 3],
    ["🔥", 2],
    ["©", 1],
    ["", 0],
  ])("of %j is %i columns", (text, columns) => {
    expect(measureText(text)).toBe(columns);
  });
});

describe("wrapping", () => {
  const word = fc.stringMatching(/^[a-z消ü]{1,12}$/);

  it("keeps every word in its order, and every line within the width", () => {
    fc.assert(
      fc.property(fc.array(word), fc.integer({ min: 30, max: 100 }), fc.nat(4), (words, width, margin) => {
        const lines = wrapText(words.join(" "), width, " ".repeat(margin));
        expect(lines.flatMap((line) => line.trim().split(" "))).toEqual(words);
        for (const line of lines) {
          expect(measureText(line)).toBeLessThanOrEqual(width);
          expect(line.startsWith(" ".repeat(margin))).toBe(true);
        }
      }),
    );
  });

  it("fills a line as far as it goes", () => {
    expect(wrapText("aa bb cc", 5, "")).toEqual(["aa bb", "cc"]);
    expect(wrapText("消防 署", 7, "")).toEqual(["消防 署"]);
    expect(wrapText("消防 署", 6, "")).toEqual(["消防", "署"]);
  });

  it("leaves a longer word alone on its line, and puts a lead before the first", () => {
    expect(wrapText("a bbbbbbbb c", 4, "  ", "- ")).toEqual(["- a", "  bbbbbbbb", "  c"]);
  });
});

describe("printable text", () => {
  it("keeps letters, marks and joiners of every script", () => {
    for (const text of ["Löschzug 3", "नमस्ते", "می\u200Cخواهم", "消防署", "👨\u200D🚒"]) {
      expect(makePrintable(text)).toBe(text);
    }
  });

  it("marks what acts on the terminal or hides", () => {
    for (const text of [
      "\u001B",
      "\u009B",
      "\n",
      "\t",
      "\u202E",
      "\u2066",
      "\u200B",
      "\uFEFF",
      "\u2028",
      "\uD800",
      "\u061C",
    ]) {
      expect(makePrintable(`a${text}b`)).toBe("a\uFFFDb");
    }
  });

  it("is cut to a length with a mark, never inside a character", () => {
    expect(clipText("ten bar", 7)).toBe("ten bar");
    expect(clipText("ten bars", 7)).toBe("ten bar...");
    expect(clipText("a \n  b", 10)).toBe("a b");
    expect(clipText("🔥🔥🔥", 2)).toBe("🔥🔥...");
  });
});
