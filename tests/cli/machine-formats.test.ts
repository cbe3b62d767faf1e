import { spawn } from "node:child_process";
import { once } from "node:events";
import { afterAll, describe, expect, it } from "vitest";
import { readTable } from "../report/csv-table.js";
import { readSuites } from "../report/junit-file.js";
import { findSchemaFaults, readRun } from "../report/sarif-log.js";
import { makeFolder, runProgram } from "./run-in-process.js";
import { POLICY_TEXT, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const bad = files.put("bad.yaml", POLICY_TEXT.replace("instrument: dial", "instrument: dail"));
const good = files.put("good.json", writeRecord({ id: "good" }));
const leak = files.put("leak.json", writeRecord({ id: "leak", end: "270 bar" }));
const spoilt = files.put("spoilt.ndjson", `${writeRecord({ id: "a" })}\n{"tenbar": 1,\n${writeRecord({ id: "b" })}\n`);
const broken = files.put("broken.json", '{ "tenbar": 1, "id": "broken" }');
const empty = files.put("empty.json", "[]");

describe("compile", () => {
  it.each([
    ["sarif", policy, 0],
    ["sarif", bad, 2],
    ["github", policy, 0],
    ["github", bad, 2],
  ])("ends with the same code in %s of %s as in text", async (format, path, code) => {
    const run = await runProgram(["compile", path, "--format", format]);
    expect(run).toMatchObject({ code, error: "" });
    expect((await runProgram(["compile", path])).code).toBe(code);
  });

  it("tells a mistake in each format", async () => {
    const { results } = readRun((await runProgram(["compile", bad, "--format", "sarif"])).out);
    expect(results).toMatchObject([{ ruleId: "plan/unknown-name", level: "error" }]);
    const { out } = await runProgram(["compile", bad, "--format", "github"]);
    expect(out).toMatch(/^::error file=.*bad\.yaml,line=34,col=21,endLine=34,endColumn=25,title=plan\/unknown-name::/);
  });

  it("tells a warning as one", async () => {
    const words = ["compile", policy, "--as-of", "2027-02-02", "--format"];
    const { results } = readRun((await runProgram([...words, "sarif"])).out);
    expect(results).toMatchObject([{ ruleId: "plan/review-passed", level: "warning" }]);
    expect((await runProgram([...words, "github"])).out).toMatch(/^::warning file=/);
  });

  it("names the program's own version", async () => {
    const { out: version } = await runProgram(["--version"]);
    const { tool } = readRun((await runProgram(["compile", policy, "--format", "sarif"])).out);
    expect(`${tool.driver.version}\n`).toBe(version);
  });

  it("tells a policy that cannot be read on the error stream, in sarif also in the log", async () => {
    const error = `${policy}.gone: there is no such file\n`;
    expect(await runProgram(["compile", `${policy}.gone`, "--format", "github"])).toEqual({ code: 2, out: "", error });
    const run = await runProgram(["compile", `${policy}.gone`, "--format", "sarif"]);
    expect(run).toMatchObject({ code: 2, error });
    expect(findSchemaFaults(run.out)).toEqual([]);
    expect(readRun(run.out)).toMatchObject({ invocations: [{ executionSuccessful: false }] });
    expect(readRun(run.out).results).toBeUndefined();
  });

  it("offers the format that was probably meant", async () => {
    const { code, error } = await runProgram(["compile", policy, "--format", "sarfi"]);
    expect(code).toBe(2);
    expect(error).toContain("did you mean `sarif`?");
  });
});

const countRecords = (format: string, text: string): number =>
  format === "junit"
    ? readSuites(text).length
    : new Set(readTable(text).map(({ recordId, message }) => recordId || message)).size;

describe.each(["junit", "csv"])("evaluate in %s", (format) => {
  it.each([
    ["a record that meets", [good], 0, 1],
    ["one that does not", [good, leak], 1, 2],
    ["one that cannot be judged", [broken], 1, 1],
    ["a line that cannot be read", [spoilt], 2, 3],
    ["a file that is not there", [good, `${good}.gone`], 2, 2],
    ["no record", [empty], 2, 0],
  ])("ends with the code of text, and holds a piece each, for %s", async (_name, paths, code, pieces) => {
    const run = await runProgram(["evaluate", policy, ...paths, "--format", format]);
    const text = await runProgram(["evaluate", policy, ...paths]);
    expect({ code: run.code, error: run.error }).toEqual({ code: text.code, error: text.error });
    expect(run.code).toBe(code);
    expect(countRecords(format, run.out)).toBe(pieces);
  });

  it("tells what could not be read also on standard output, where it fails", async () => {
    const { out, error } = await runProgram(["evaluate", policy, spoilt, "--format", format]);
    const told = error.split("\n").find((line) => line.includes("spoilt.ndjson:2:")) ?? "";
    expect(told).toContain("not judged");
    if (format === "csv") expect(readTable(out).map(({ message }) => message)).toContain(told);
    else expect(readSuites(out)[1]).toMatchObject({ "@_errors": 1, testcase: [{ error: { "@_message": told } }] });
  });

  it("writes each record before it has read many more", async () => {
    const pieces: string[] = [];
    const lags: number[] = [];
    async function* input() {
      for (let index = 0; index < 300; index += 1) {
        lags.push(index - pieces.length);
        yield new TextEncoder().encode(`${writeRecord({ id: `r${index}` })}\n`);
      }
    }
    const out = (text: string) => Promise.resolve(pieces.push(text) > 0);
    await runProgram(["evaluate", policy, "-", "--format", format], { streams: { input: input(), out } });
    expect(countRecords(format, pieces.join(""))).toBe(300);
    expect(pieces.length).toBeGreaterThanOrEqual(300);
    expect(Math.max(...lags)).toBeLessThan(5);
  });

  it("stops quietly once the reader has gone, with the code so far", async () => {
    const lines = Array.from({ length: 5_000 }, (_, index) => writeRecord({ id: `r${index}`, end: "270 bar" }));
    const path = files.put(`many-${format}.ndjson`, lines.join("\n"));
    const program = ["--import", "tsx", "src/cli/main.ts", "evaluate", policy, path, "--format", format];
    const child = spawn(process.execPath, program);
    const errors: string[] = [];
    child.stderr.on("data", (chunk) => errors.push(String(chunk)));
    await once(child.stdout, "data");
    child.stdout.destroy();
    const [code] = await once(child, "close");
    expect(errors.join("")).toBe("");
    expect(code).toBe(1);
  });

  it("stops at the first piece that nobody takes", async () => {
    const { code, out } = await runProgram(["evaluate", policy, leak, good, `${good}.gone`, "--format", format], {
      takes: 1,
    });
    expect(code).toBe(1);
    expect(out).not.toContain("good");
  });

  it("is never coloured", async () => {
    const words = ["evaluate", policy, leak, "--format", format, "--color", "always"];
    expect((await runProgram(words)).out).not.toContain("\u001B");
  });
});

describe("evaluate in junit", () => {
  it("gives a suite for each record, with the record's own time", async () => {
    const { out } = await runProgram(["evaluate", policy, good, leak, "--format", "junit"]);
    expect(readSuites(out).map((suite) => [suite["@_name"], suite["@_failures"], suite["@_timestamp"]])).toEqual([
      ["good, daily", 0, "2026-04-12T07:04:00+01:00"],
      ["leak, daily", 1, "2026-04-12T07:04:00+01:00"],
    ]);
  });
});
