import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { renderDiagnostics } from "../../src/report/index.js";
import { POLICY_TEXT } from "../cli/sample-policy.js";

function render(text: string, width = 80): string {
  const { diagnostics } = compilePolicy(text, { file: "lowmere.yaml" });
  return renderDiagnostics(diagnostics, { color: false, width });
}

describe("diagnostics as text", () => {
  it("give severity, code, place, message, the line, what was wanted and the mend", () => {
    expect(render(POLICY_TEXT.replace("accept:", "acept:"))).toBe(
      [
        "error read/unknown-key lowmere.yaml:17:5",
        "  the key `acept` is not known here",
        "",
        "  16 |   leak-drop:",
        "  17 |     acept: { at-most: 10 bar }",
        "     |     ^^^^^",
        "",
        "  wanted: one of `title`, `accept`, `caution`, `cases`, `accept-by`,",
        "  `comparison`, `confidence`, `trust`, `consequence`, `basis`",
        "  mend: write `accept`",
        "",
        "1 error, 0 warnings",
        "",
      ].join("\n"),
    );
  });

  it("say so where there are none", () => {
    expect(render(POLICY_TEXT)).toBe("0 errors, 0 warnings\n");
  });

  it.each([40, 60, 80])("show a long line round its mistake within %i columns, the marks under it", (width) => {
    const lines = render(POLICY_TEXT.replace("errors: shared", "errors: sharde"), width).split("\n");
    expect(lines.filter((line) => line.length > width)).toEqual([]);
    const marked = lines.findIndex((line) => line.includes("^^^^^^"));
    const column = lines[marked]?.indexOf("^") ?? -1;
    expect(lines[marked - 1]?.slice(column, column + 6)).toBe("sharde");
    expect(lines[marked - 1]).toContain("...");
  });

  it("keep marks within the width where a mistake is wider than that", () => {
    const lines = render(POLICY_TEXT.replace("kind: confirm", `kind: ${"confirm".repeat(15)}`), 60).split("\n");
    expect(lines.filter((line) => line.length > 60 && !line.includes("`"))).toEqual([]);
    expect(lines.some((line) => line.includes("^^^^^^"))).toBe(true);
  });

  it("let no text of a policy drive the terminal", () => {
    const text = render(POLICY_TEXT.replace("instrument: dial", 'instrument: "\\e[2J\\nerror"'));
    expect(text).not.toContain("\u001B");
    expect(text).toMatch(/\d errors?, \d warnings?\n$/);
  });
});
