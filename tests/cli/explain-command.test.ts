import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readCodePages, readWordPages } from "../../src/files/index.js";
import { CONSEQUENCES, NOT_APPLICABLE_REASONS, OUTCOMES, VERDICTS } from "../../src/terms/index.js";
import { runProgram } from "./run-in-process.js";

const ESCAPE = "\u001B";

describe("tenbar explain", () => {
  it("shows the page of a code: sections, text and examples indented", async () => {
    const { code, out, error } = await runProgram(["explain", "plan/no-basis"]);
    expect([code, error]).toEqual([0, ""]);
    expect(out).toMatch(
      /^plan\/no-basis\nseverity: error, since: 0\.1\.0\n\nMeans\n {2}A limit does not say where it comes from\.\n/,
    );
    expect(out).toContain("\nBad\n    tenbar: 1\n");
    expect(out).toContain("\n          - step: charge\n");
    expect(out).not.toContain("```");
    expect(out).not.toContain(ESCAPE);
  });

  it("loses no line of an example", async () => {
    const page = readFileSync("docs/codes/hold/drop-outside.md", "utf8");
    const { out } = await runProgram(["explain", "hold/drop-outside"]);
    const lines = [...page.matchAll(/^```[^\n]+\n([\s\S]*?)\n```$/gm)].flatMap(([, text = ""]) => text.split("\n"));
    expect(lines.length).toBeGreaterThan(20);
    expect(out.split("\n")).toEqual(expect.arrayContaining(lines.map((line) => `    ${line}`)));
  });

  it("keeps a list together, and what follows it apart", async () => {
    const { out } = await runProgram(["explain", "check/competence-undecided"]);
    expect(out).toMatch(/\nReasons\n {2}- `fact-missing`: [^\n]*\n(?: {4}\S[^\n]*\n)* {2}- `unreadable`: /);
    expect(out).toMatch(/ {4}\S[^\n]*\n\nPolicy\n {4}tenbar: 1\n/);
  });

  it("keeps to the width of the screen and paints where colour is asked for", async () => {
    const plain = await runProgram(["explain", "hold/drop-undecided"], { streams: { columns: 50 } });
    const texts = plain.out.split("\n").filter((line) => !line.startsWith("    "));
    expect(Math.max(...texts.map((line) => line.length))).toBeLessThanOrEqual(50);
    const { out } = await runProgram(["explain", "hold/drop-outside", "--color", "always"]);
    expect(out).toContain(`${ESCAPE}[31mBad${ESCAPE}[0m`);
    expect(out).toContain(`${ESCAPE}[32mGood${ESCAPE}[0m`);
  });

  it("takes the reason of an undecided result", async () => {
    const { code, out } = await runProgram(["explain", "start-too-low"]);
    expect(code).toBe(0);
    expect(out).toContain("start-too-low\n");
    expect((await runProgram(["explain", "reasons/start-too-low"])).out).toBe(out);
  });

  it("takes every word that an assessment says", async () => {
    const words = [...OUTCOMES, ...VERDICTS, ...CONSEQUENCES, ...NOT_APPLICABLE_REASONS, "not-judged", "not-read"];
    expect(new Set(readWordPages().map(({ code }) => code))).toEqual(new Set(words));
    for (const word of words) {
      const { code, out } = await runProgram(["explain", word]);
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`^${word}\\n\\nMeans\\n {2}[A-Z][^\\n]{20}`));
      expect(out).not.toMatch(/\bsafe/i);
    }
  });

  it("shows every page that there is", async () => {
    const pages = readCodePages();
    expect(pages.length).toBeGreaterThan(150);
    for (const { code } of pages) {
      const ran = await runProgram(["explain", code]);
      expect([ran.code, ran.error]).toEqual([0, ""]);
      expect(ran.out).toContain("\nMend\n  ");
    }
  });

  it("lists all codes with one sentence each", async () => {
    const { code, out } = await runProgram(["explain"], { streams: { columns: 100 } });
    expect(code).toBe(0);
    expect(out).toContain("plan/no-basis\n      A limit does not say where it comes from.\n");
    expect(out).toContain("\nstart-too-low\n      A hold did not start from what it must start from");
    const names = out.split("\n").filter((line) => /^\S/.test(line));
    expect(names).toEqual(readCodePages().map(({ code: name }) => name.replace("reasons/", "")));
  });
});

describe("a code that is not there", () => {
  it.each([
    ["plan/no-bassis", "did you mean `plan/no-basis`?"],
    ["no-basis", "did you mean `plan/no-basis`?"],
    ["unknown-name", "did you mean `plan/unknown-name` or `rule/unknown-name`?"],
    ["start-to-low", "did you mean `start-too-low`?"],
    ["drop-outside", "did you mean `hold/drop-outside`?"],
    ["undecied", "did you mean `undecided`?"],
  ])("%s: %s", async (word, hint) => {
    const { code, out, error } = await runProgram(["explain", word]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(`there is no code \`${word}\`; ${hint}`);
  });

  it("is offered nothing where nothing is near", async () => {
    const { code, error } = await runProgram(["explain", "xylophone"]);
    expect(code).toBe(2);
    expect(error).toBe("there is no code `xylophone`\n`tenbar explain` lists them all\n");
  });

  it.each(["", "../README", "plan/../plan/no-basis", "README", `a${ESCAPE}[31mb`])(
    "%j reads no other file",
    async (word) => {
      const { code, out, error } = await runProgram(["explain", word]);
      expect([code, out]).toEqual([2, ""]);
      expect(error).not.toContain(ESCAPE);
    },
  );

  it("goes with one code at a time", async () => {
    const { code, error } = await runProgram(["explain", "plan/no-basis", "plan/unused"]);
    expect(code).toBe(2);
    expect(error).toContain("one argument too many");
  });
});

describe("the pager", () => {
  const open = (isTerminal: boolean, isShown: boolean) => {
    const shown: string[] = [];
    const page = (text: string) => {
      shown.push(text);
      return Promise.resolve(isShown);
    };
    return { shown, streams: { isTerminal, page } };
  };

  it("shows the page on a screen", async () => {
    const { shown, streams } = open(true, true);
    const { code, out } = await runProgram(["explain", "plan/no-basis", "--color", "never"], { streams });
    expect([code, out]).toEqual([0, ""]);
    expect(shown).toEqual([(await runProgram(["explain", "plan/no-basis"])).out]);
  });

  it("is left out where it cannot be started: the page is printed", async () => {
    const { shown, streams } = open(true, false);
    const { code, out } = await runProgram(["explain", "plan/no-basis", "--color", "never"], { streams });
    expect(code).toBe(0);
    expect([out]).toEqual(shown);
  });

  it("is never asked for where standard output is no screen", async () => {
    const { shown, streams } = open(false, true);
    const { out } = await runProgram(["explain", "plan/no-basis"], { streams });
    expect(shown).toEqual([]);
    expect(out).toContain("plan/no-basis");
  });
});
