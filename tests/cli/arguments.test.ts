import { afterAll, describe, expect, it } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { COMMON_OPTIONS, type Command } from "../../src/cli/command.js";
import { run } from "../../src/cli/run.js";
import { ENGINE_VERSION } from "../../src/index.js";
import { makeFolder, runProgram, streamBytes } from "./run-in-process.js";
import { POLICY_TEXT, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const good = files.put("good.json", writeRecord());
const COMMANDS = ["compile", "evaluate", "describe", "schema"] as const;

describe("arguments that make no sense", () => {
  it.each([
    [["evalute", policy, good], "there is no command `evalute`; did you mean `evaluate`?"],
    [["frobnicate"], "there is no command `frobnicate`\n"],
    [["--halp"], "there is no option `--halp`; did you mean `--help`?"],
    [["evaluate", policy, good, "--fromat", "json"], "there is no option `--fromat`; did you mean `--format`?"],
    [["evaluate", policy, good, "-x"], "there is no option `-x`\n"],
    [
      ["evaluate", policy, good, "--format", "jsn"],
      "`--format jsn` is none of text, json, ndjson, junit, csv; did you mean `json`?",
    ],
    [["evaluate", policy, good, "--fail-on", "safe"], "is none of note, advise, refer, withdraw, never"],
    [["evaluate", policy, good, "--format"], "`--format` needs FORMAT"],
    [["evaluate", policy, good, "--format="], "`--format` needs FORMAT"],
    [["evaluate", policy, good, "--format", "json", "--format", "text"], "`--format` is given twice"],
    [["evaluate", policy, good, "--allow-empty=yes"], "`--allow-empty` takes no value"],
    [["evaluate", policy, good, "--as-of", "2026-02-30"], "`--as-of 2026-02-30` is no day such as 2026-04-01"],
    [["evaluate", policy, good, "--as-of", "2026-02"], "is no day such as"],
    [["compile", policy, "--out", "--resolved"], "one that begins with `-` is written `--out=--resolved`"],
    [["evaluate", policy], "RECORDS is missing; usage: tenbar evaluate POLICY RECORDS..."],
    [["evaluate"], "POLICY is missing"],
    [["compile", policy, "another.yaml"], "`another.yaml` is one argument too many; usage: tenbar compile POLICY"],
    [["compile", policy, "\u001B[2J"], "`\uFFFD[2J` is one argument too many"],
  ])("%j are refused with a hint", async (words, message) => {
    const { code, out, error } = await runProgram(words);
    expect(error).toContain(message);
    expect(error).toMatch(/`tenbar (\w+ )?--help` tells more\n$/);
    expect({ code, out }).toEqual({ code: 2, out: "" });
  });

  it("are none where a name begins with a dash behind `--`", async () => {
    const { code, error } = await runProgram(["evaluate", policy, "--", "--good.json"]);
    expect(error).toContain("--good.json: there is no such file");
    expect(code).toBe(2);
  });
});

describe("help", () => {
  it("lists every command, and stands on the error stream where nothing was asked", async () => {
    const asked = await runProgram(["--help"]);
    expect(asked.code).toBe(0);
    for (const name of COMMANDS) expect(asked.out).toMatch(new RegExp(`^  ${name} `, "m"));
    expect(await runProgram([])).toEqual({ code: 2, out: "", error: asked.out });
    expect(await runProgram(["help"])).toEqual(asked);
  });

  it.each(COMMANDS)("of %s has usage, arguments, options, examples and exit codes in 80 columns", async (name) => {
    const { code, out } = await runProgram([name, "--help"]);
    expect(code).toBe(0);
    for (const part of [`usage: tenbar ${name}`, "arguments:", "options:", "examples:", "exit codes:"]) {
      expect(out).toContain(part);
    }
    expect(out.split("\n").filter((line) => line.length > 80)).toEqual([]);
    expect(await runProgram(["help", name])).toEqual({ code, out, error: "" });
  });

  it.each(COMMANDS)("of %s names only options that it takes", async (name) => {
    const { out } = await runProgram([name, "--help"]);
    const listed = out.slice(out.indexOf("options:"), out.indexOf("examples:"));
    const options = [...listed.matchAll(/^ {2}(--[a-z-]+)( [A-Z]+)?/gm)].map(([, option = "", value]) => ({
      option,
      value,
    }));
    expect(options.length).toBeGreaterThanOrEqual(COMMON_OPTIONS.length);
    for (const { option, value } of options.filter((one) => one.option !== "--help")) {
      const { error } = await runProgram([name, value === undefined ? `${option}=x` : option]);
      expect(error).toContain(value === undefined ? `\`${option}\` takes no value` : `\`${option}\` needs${value}`);
    }
  });

  it.each(COMMANDS)("of %s gives examples that name the command and known options", async (name) => {
    const { out } = await runProgram([name, "--help"]);
    const examples = out.slice(out.indexOf("examples:"), out.indexOf("exit codes:")).split("\n").slice(1);
    const lines = examples.map((line) => line.trim()).filter((line) => line !== "");
    expect(lines.length).toBeGreaterThanOrEqual(2);
    for (const line of lines) {
      const words = line
        .replace(/^.*\| /, "")
        .replace(/ > .*$/, "")
        .split(" ");
      expect(words.slice(0, 2)).toEqual(["tenbar", name]);
      const { error } = await runProgram(words.slice(1));
      expect(error).toContain("policy.yaml: there is no such file".slice(words.includes("plan.json") ? 13 : 0));
    }
  });
});

describe("the version", () => {
  it("is that of the package", async () => {
    expect(await runProgram(["--version"])).toEqual({ code: 0, out: `${manifest.version}\n`, error: "" });
    expect(ENGINE_VERSION).toBe(manifest.version);
  });
});

describe("a mistake of the program itself", () => {
  it("is told as one, with a code and without a stack", async () => {
    const broken: Command = {
      name: "break",
      usage: "tenbar break",
      summary: "break",
      about: "break",
      arguments: [],
      options: [],
      examples: [],
      exitCodes: [],
      run: () => Promise.reject(new Error("a row is described\n without its record")),
    };
    const error: string[] = [];
    const streams = {
      out: () => Promise.resolve(true),
      error: (text: string) => void error.push(text),
      input: streamBytes(""),
      isTerminal: false,
      isErrorTerminal: false,
      columns: undefined,
      environment: {},
      today: "2026-04-12",
    };
    expect(await run(["break"], streams, [broken])).toBe(2);
    expect(error).toEqual([
      "a fault of tenbar itself, please report it: a row is described\uFFFD without its record\n",
    ]);
  });
});
