import { afterAll, describe, expect, it } from "vitest";
import { assessmentModel } from "../../src/model/assessment-model.js";
import { makeFolder, runProgram } from "./run-in-process.js";
import { POLICY_TEXT, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const one = files.put("one.json", writeRecord({ id: "one" }));
const two = files.put("two.json", writeRecord({ id: "two", end: "270 bar" }));
const list = files.put("list.json", `[${writeRecord({ id: "a" })}]`);
const lines = files.put("lines.ndjson", `${writeRecord({ id: "a" })}\n${writeRecord({ id: "b" })}\n`);
const empty = files.put("empty.json", "[]");

const idsOf = (text: string): unknown => {
  const value: unknown = JSON.parse(text);
  return Array.isArray(value)
    ? value.map((each) => assessmentModel.parse(each).recordId)
    : assessmentModel.parse(value).recordId;
};

describe("json", () => {
  it.each([
    ["an object for one object", [one], "one"],
    ["an array for an array of one", [list], ["a"]],
    ["an array for lines", [lines], ["a", "b"]],
    ["an array for several files", [one, two], ["one", "two"]],
    ["an empty array for an empty one", [empty], []],
    ["an array for what cannot be read", [`${one}.gone`], []],
  ])("is %s", async (_, paths, ids) => {
    const { out } = await runProgram(["evaluate", policy, ...paths, "--format", "json"]);
    expect(idsOf(out)).toEqual(ids);
  });

  it("fits the published model and carries the digest of the record", async () => {
    const { out } = await runProgram(["evaluate", policy, two, "--format", "json"]);
    const assessment = assessmentModel.parse(JSON.parse(out));
    expect(assessment.verdict).toBe("withdraw");
    expect(assessment.recordDigest).toMatch(/^sha256:[0-9a-f]{64}$/);
  });
});

describe("ndjson", () => {
  it("is one assessment a line, whatever the input was", async () => {
    const { out } = await runProgram(["evaluate", policy, one, list, lines, "--format", "ndjson"]);
    expect(out.endsWith("\n")).toBe(true);
    expect(out.trimEnd().split("\n").map(idsOf)).toEqual(["one", "a", "a", "b"]);
  });
});

describe("colour", () => {
  const ESCAPE = "\u001B[";
  const screen = { isTerminal: true, isErrorTerminal: true };

  it.each([
    ["off a screen", [], {}, false],
    ["on a screen", [], screen, true],
    ["under NO_COLOR", [], { ...screen, environment: { NO_COLOR: "1" } }, false],
    ["under an empty NO_COLOR, which means nothing", [], { ...screen, environment: { NO_COLOR: "" } }, true],
    ["on a screen that cannot show it", [], { ...screen, environment: { TERM: "dumb" } }, false],
    ["where it is wanted always", ["--color", "always"], { environment: { NO_COLOR: "1" } }, true],
    ["where it is wanted never", ["--color", "never"], screen, false],
  ] as const)("%s", async (_, words, streams, expected) => {
    const { out } = await runProgram(["evaluate", policy, two, ...words], { streams });
    expect(out.includes(ESCAPE)).toBe(expected);
  });

  it("is settled for each stream by itself", async () => {
    const bad = files.put("bad.yaml", POLICY_TEXT.replace("at-most: 10 bar", "at-most: 10bar"));
    const piped = await runProgram(["evaluate", bad, one], { streams: { isTerminal: true } });
    expect(piped.error).not.toContain(ESCAPE);
    const shown = await runProgram(["evaluate", bad, one], { streams: { isErrorTerminal: true } });
    expect(shown.error).toContain(ESCAPE);
  });

  it("carries no meaning alone: without it the text is the same", async () => {
    const plain = await runProgram(["evaluate", policy, two]);
    const colored = await runProgram(["evaluate", policy, two, "--color", "always"]);
    const stripped = colored.out
      .split(ESCAPE)
      .map((part, index) => (index === 0 ? part : part.replace(/^\d+m/, "")))
      .join("");
    expect(stripped).toBe(plain.out);
    expect(colored.out).not.toBe(plain.out);
  });

  it("never reaches json", async () => {
    const { out } = await runProgram(["evaluate", policy, two, "--format", "json", "--color", "always"]);
    expect(out).not.toContain(ESCAPE);
  });
});

describe("width", () => {
  it.each([40, 60, 80, 100])("keeps the report within %i columns", async (columns) => {
    const { out } = await runProgram(["evaluate", policy, one, two], { streams: { columns } });
    // Why: a path is one word and stands alone where it is longer.
    const long = out.split("\n").filter((line) => line.length > columns && !line.includes("policy.yaml"));
    expect(long).toEqual([]);
    expect(out).toContain("withdraw from use");
  });
});
