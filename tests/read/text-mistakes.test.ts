import { describe, expect, it } from "vitest";
import { alter, readText, SMALL } from "./read-text.js";

type Mistake = readonly [what: string, text: string, code: string, line: number, column: number, mend?: string];

/** Every text has exactly one mistake; `mend` are words of what is proposed. */
const MISTAKES: readonly Mistake[] = [
  ["nothing", "", "read/empty", 1, 1],
  ["a comment only", "# to be written\n", "read/empty", 1, 1],
  ["an empty document", "---\n...\n", "read/empty", 1, 1],
  ["a NUL", alter("Small", "Sm\0all"), "read/control-character", 4, 12, "delete it"],
  ["an escape character", alter("Small", "Sm\u001ball"), "read/control-character", 4, 12],
  ["a control written as an escape", alter("Small checks", '"a\\0b"'), "read/control-character", 4, 10],
  ["half a character", alter("Small", "Sm\ud800all"), "read/lone-surrogate", 4, 12],
  ["half a character as an escape", alter("Small checks", '"a\\ud800b"'), "read/lone-surrogate", 4, 10],
  ["line ends without line feeds", SMALL.replaceAll("\n", "\r"), "read/control-character", 1, 10],
  ["two documents", `${SMALL}---\ntenbar: 1\n`, "read/several-documents", 21, 1],
  ["a directive", `%YAML 1.1\n---\n${SMALL}`, "read/directive", 1, 1, "delete the line"],
  ["an anchor", alter("Small checks", "&title Small checks"), "read/anchor", 4, 10, "quotes"],
  ["an alias", alter("Small checks", "*title"), "read/alias", 4, 10, "write the value out"],
  ["a text that begins with a star", alter("Small checks", "*very* small"), "read/alias", 4, 10, "put it in quotes"],
  ["a tag", alter("Small checks", "!!str Small"), "read/tag", 4, 10],
  ["a tag on a map", alter("accept: {", "accept: !limits {"), "read/tag", 9, 13],
  ["a merge key", alter("    accept", "    <<: *shared\n    accept"), "read/merge-key", 9, 5, "`extends`"],
  ["a tab", alter("  id: low", "\tid: low"), "read/tab-indent", 3, 1, "indent with spaces"],
  ["a tab behind blanks", alter("  title: S", "  \ttitle: S"), "read/tab-indent", 4, 3, "indent with spaces"],
  ["a tab before a list", alter("      - step: harness", "\t\t- step: harness"), "read/tab-indent", 18, 1],
  ["an unclosed double quote", alter('"1"', '"1'), "read/unclosed-quote", 5, 12, 'put " behind the text'],
  ["an unclosed single quote", alter("Small checks", "'Small checks"), "read/unclosed-quote", 4, 10],
  ["an unclosed quote in braces", alter("10 bar }", '"10 bar }'), "read/unclosed-quote", 9, 24],
  ["a quote inside quotes", alter("Small checks", "'it's'"), "read/text-behind-quote", 4, 14, "twice"],
  ["a text behind a quote", alter('"1"', '"1" beta'), "read/text-behind-quote", 5, 16],
  ["an unclosed brace", alter("10 bar }", "10 bar"), "read/unclosed-bracket", 9, 13, "put `}` at its end"],
  ["a brace closed by a bracket", alter("10 bar }", "10 bar ]"), "read/unclosed-bracket", 9, 13],
  ["a brace too many", alter("10 bar }", "10 bar } }"), "read/bad-yaml", 9, 33],
  ["cut-off JSON", '{ "tenbar": 1, "policy": {', "read/unclosed-bracket", 1, 26],
  ["a line too far right", alter("  title: S", "   title: S"), "read/bad-indentation", 4, 4],
  ["a line too far left", alter("  title: S", " title: S"), "read/bad-indentation", 4, 2],
  ["a step without its hyphen", alter("      - step: leak", "      step: leak"), "read/bad-indentation", 15, 9],
  ["no space behind a colon", alter("id: low", "id:low"), "read/no-space-behind-colon", 3, 3, "ordinary space"],
  ["a no-break space behind it", alter("id: low", "id:\u00a0low"), "read/no-space-behind-colon", 3, 3],
  ["no space in the last line", alter("status: local", "status:local"), "read/no-space-behind-colon", 6, 3],
  ["no space in a step", alter("step: leak", "step:leak"), "read/no-space-behind-colon", 14, 9],
  ["no space in all there is", "tenbar: 1\npolicy:\n  id:a\n", "read/no-space-behind-colon", 3, 3],
  ["no colon", alter("title: S", "title S"), "read/no-colon", 4, 3, "put a colon"],
  ["a colon in a text", alter("Small checks", "Small: checks"), "read/colon-in-text", 4, 10, "put the text in quotes"],
  ["a reserved character", alter("Small checks", "@station"), "read/reserved-start", 4, 10, "put the text in quotes"],
  ["a percent sign", alter("10 bar }", "10 bar, below: %5 }"), "read/reserved-start", 9, 39],
  ["an unknown escape", alter('"1"', '"\\q"'), "read/bad-escape", 5, 13, "write the backslash twice"],
];

describe("a text with one mistake of YAML", () => {
  it.each(MISTAKES.map(([what, text, ...expected]) => ({ what, text, expected })))(
    "$what: one diagnostic at its place",
    ({ text, expected }) => {
      const [code, line, column, mend] = expected;
      const { policy, list } = readText(text);
      expect(list.map((one) => [one.code, one.line, one.column])).toEqual([[code, line, column]]);
      expect(list[0]?.mend ?? "").toContain(mend ?? "");
      expect(policy).toBeUndefined();
    },
  );

  it("lists slips in separate entries together", () => {
    const text = alter("      - step: leak", "\t- step: leak", alter("title: S", "title S"));
    expect(readText(text).list.map(({ code, line }) => [code, line])).toEqual([
      ["read/no-colon", 4],
      ["read/tab-indent", 14],
    ]);
  });

  it("reports what is refused beside mistakes of shape", () => {
    const text = alter("status: local", "status: lokal", alter("Small checks", "&t Small checks"));
    expect(readText(text).list.map(({ code }) => code)).toEqual(["read/anchor", "read/unknown-value"]);
  });
});

describe("a hash behind a plain text", () => {
  it("is a warning where something follows it at once, and the policy is read", () => {
    const { policy, list } = readText(alter("Small checks", "Set #4"));
    expect(list.map((one) => [one.code, one.severity, one.line, one.column, one.found])).toEqual([
      ["read/text-cut-by-comment", "warning", 4, 14, "Set"],
    ]);
    expect(list[0]?.mend).toContain('`"Set #4"`');
    expect(policy?.document.policy.title).toBe("Set");
  });

  it.each(["Set # four", '"Set #4"', "Set#4", "Set ## four"])("is a comment or a character in %s", (title) => {
    expect(readText(alter("Small checks", title)).list).toEqual([]);
  });

  it("is not mentioned beside an error of the same value", () => {
    expect(readText(alter("status: local", "status: lokal #4")).list.map(({ code }) => code)).toEqual([
      "read/unknown-value",
    ]);
  });
});
