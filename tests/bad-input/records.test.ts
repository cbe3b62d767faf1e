import { spawnSync } from "node:child_process";
import { afterAll, describe, expect, it } from "vitest";
import { makeFolder, runProgram } from "../cli/run-in-process.js";
import { POLICY_TEXT, writeRecord } from "../cli/sample-policy.js";
import { countRuns } from "../laws/run-count.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const MEBIBYTE = 1024 * 1024;

/** What the program makes of an input, its assessments read back. */
async function evaluateBytes(content: string | Uint8Array, name = "records.json") {
  const path = files.put(name, content);
  const { code, out, error } = await runProgram(["evaluate", policy, path, "--format", "ndjson"]);
  const assessments: readonly unknown[] = out
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line));
  return { code, assessments, error: error.replaceAll(path, "FILE") };
}

/** A good record in which a local field holds a piece of JSON as it is written. */
const withJson = (json: string) => writeRecord({ extra: { local: { note: "@" } } }).replace('"@"', () => json);
const meets = (recordId: string) => expect.objectContaining({ recordId, judged: true, verdict: "meets" });
const utf16 = (text: string) => Buffer.from(text, "utf16le");

describe("an input that is no record", () => {
  it.each([
    [
      "JSON a hundred thousand lists deep",
      "[".repeat(100_000) + "]".repeat(100_000),
      "nests more than 512 levels deep",
    ],
    ["JSON a hundred thousand maps deep", `${'{"a":'.repeat(100_000)}1${"}".repeat(100_000)}`, "nests more than 512"],
    ["a deep place in a record", withJson("[".repeat(1000) + "]".repeat(1000)), "nests more than 512"],
    ["a record cut short", writeRecord().slice(0, -20), "the JSON text ends too early"],
    ["the beginning of a record", "{", "the JSON text ends too early"],
    ["a key that stands twice", withJson('1, "note": 2'), "the key `note` stands twice in one object"],
    ["a key that stands twice, once by escapes", withJson('1, "\\u006eote": 2'), "the key `note` stands twice"],
    [
      "a prototype that stands twice",
      withJson('1, "__proto__": 1, "__proto__": 2'),
      "the key `__proto__` stands twice",
    ],
    ["a control character in a text", withJson('"a\u0000b"'), "a control character stands in a text"],
    ["a number that is none", withJson("NaN"), "`NaN` stands where a value is wanted"],
    ["a number with a comma", withJson("1,5"), "stands where"],
    ["records parted by carriage returns", `${writeRecord()}\r${writeRecord()}`, "is wanted"],
    ["UTF-16 with its mark", Buffer.concat([Buffer.from([0xff, 0xfe]), utf16(writeRecord())]), "it is not UTF-8 text"],
    ["UTF-16 without it", utf16(writeRecord()), "is wanted"],
    ["text of another encoding", Buffer.from(withJson('"Löschzug"'), "latin1"), "it is not UTF-8 text"],
    ["NUL", Buffer.alloc(1000), "is wanted"],
    ["a policy", POLICY_TEXT, "is wanted"],
  ])("%s is named with its place and not judged", async (_, content, problem) => {
    const { code, assessments, error } = await evaluateBytes(content);
    expect({ code, assessments }).toEqual({ code: 2, assessments: [] });
    expect(error).toMatch(
      /^FILE:1(:\d+)?: .*; not judged\nno record was evaluated: what was given could not be read\n$/s,
    );
    expect(error).toContain(problem);
  });

  it.each([
    ["nothing", ""],
    ["blanks", " \t\n\r\n "],
    ["a byte order mark", "\ufeff"],
    ["an empty list", "[]"],
  ])("%s is no record, which is a failure unless it is allowed", async (_, content) => {
    const error = "no record was evaluated: `FILE` holds none\n";
    expect(await evaluateBytes(content)).toEqual({ code: 2, assessments: [], error });
    const path = files.put("none.json", content);
    const allowed = await runProgram(["evaluate", policy, path, "--allow-empty"]);
    expect(allowed).toMatchObject({ code: 0, error: "" });
  });

  it.each(["null", "true", "1", "1e999", '"x"', "{}", '{"__proto__":{"tenbar":1}}', "[[]]", "[null]"])(
    "the JSON %s is refused as a record, with what is wrong with it",
    async (content) => {
      const { code, assessments, error } = await evaluateBytes(content);
      expect({ code, error }).toEqual({ code: 1, error: "FILE:1: the record could not be judged\n" });
      expect(assessments).toEqual([expect.objectContaining({ judged: false, verdict: "refer", results: [] })]);
    },
  );
});

describe("a record with odd things in it is judged by the rest", () => {
  it.each([
    ["a number beyond all", withJson("1e999")],
    ["halves of characters in a key and a value", withJson('"\\ud800", "\\udc00": 1')],
    ["NUL as an escape", withJson('"\\u0000"')],
    ["a key of a prototype", withJson('{ "__proto__": { "polluted": true } }')],
    ["a byte order mark before it", `\ufeff${writeRecord()}`],
    ["line ends of two characters", JSON.stringify(JSON.parse(writeRecord()), undefined, 2).replaceAll("\n", "\r\n")],
  ])("%s", async (_, content) => {
    const { code, assessments, error } = await evaluateBytes(content);
    expect({ code, error, assessments }).toEqual({ code: 0, error: "", assessments: [meets("lm1-1")] });
    expect(Reflect.get({}, "polluted")).toBeUndefined();
  });

  it("nests 64 deep at most, and is not judged where it nests deeper", async () => {
    const nest = (levels: number) => withJson("[".repeat(levels) + "]".repeat(levels));
    // The record and its `local` are two levels.
    expect((await evaluateBytes(nest(62))).assessments).toEqual([meets("lm1-1")]);
    const { code, assessments } = await evaluateBytes(nest(63));
    expect(code).toBe(1);
    expect(assessments).toEqual([expect.objectContaining({ judged: false, verdict: "refer" })]);
  });
});

describe("one bad line among good ones", () => {
  const lines = (bad: string | Uint8Array) =>
    Buffer.concat(
      [`${writeRecord({ id: "first" })}\n`, bad, `\n${writeRecord({ id: "last" })}`].map((part) => Buffer.from(part)),
    );

  it.each([
    ["no JSON", "{ not json"],
    ["JSON that is cut short", writeRecord({ id: "cut" }).slice(0, -9)],
    ["bytes that are no text", Buffer.from([0x7b, 0xff, 0xfe, 0x7d])],
    ["deep nesting", "[".repeat(100_000)],
    ["a line over 8 MiB", withJson(`"${"x".repeat(8 * MEBIBYTE)}"`)],
    ["a key twice", withJson('1, "note": 2')],
  ])("%s: the others are still judged", async (_, bad) => {
    const { code, assessments, error } = await evaluateBytes(lines(bad), "records.ndjson");
    expect({ code, assessments }).toEqual({ code: 2, assessments: [meets("first"), meets("last")] });
    expect(error).toMatch(/^FILE:2(:\d+)?: [^\n]*; not judged\n$/);
  });

  it("line ends of two characters make no difference", async () => {
    const text = ["first", "last"].map((id) => `${writeRecord({ id })}\r\n`).join("\r\n");
    const { code, assessments } = await evaluateBytes(text, "records.ndjson");
    expect({ code, assessments }).toEqual({ code: 0, assessments: [meets("first"), meets("last")] });
  });
});

describe("size", () => {
  it("of a record of 50 MB on one line is judged", { timeout: 120_000 }, async () => {
    const { code, assessments, error } = await evaluateBytes(withJson(`"${"x".repeat(50_000_000)}"`));
    expect({ code, error, assessments }).toEqual({ code: 0, error: "", assessments: [meets("lm1-1")] });
  });

  it("of a document beyond 64 MiB is refused", { timeout: 120_000 }, async () => {
    const line = `"${"x".repeat(MEBIBYTE - 4)}",\n`;
    const { code, assessments, error } = await evaluateBytes(`[\n${line.repeat(65)}1]`);
    expect({ code, assessments }).toEqual({ code: 2, assessments: [] });
    expect(error).toMatch(/^FILE:\d+: a JSON document has more than 64 MiB/);
  });

  it("of an array of many records leaves none out", { timeout: 120_000 }, async () => {
    const count = countRuns(10_000);
    const members = Array.from({ length: count }, (_, index) => writeRecord({ id: `r${index}` }));
    const { code, assessments } = await evaluateBytes(`[${members.join(",")}]`);
    expect([code, assessments.length]).toEqual([0, count]);
    expect(assessments.at(-1)).toEqual(meets(`r${count - 1}`));
  });

  it("of an array in which every member has a key twice names each with its line, in time that grows with it", {
    timeout: 120_000,
  }, async () => {
    const count = countRuns(50_000);
    const { code, error } = await evaluateBytes(
      `[\n${Array.from({ length: count }, () => '{"a":1,"a":2}').join(",\n")}\n]`,
    );
    const told = error.trimEnd().split("\n");
    expect([code, told.length]).toEqual([2, count + 1]);
    expect(told.at(-2)).toBe(`FILE:${count + 1}:8: the key \`a\` stands twice in one object; not judged`);
  });
});

describe("millions of short lines", () => {
  // In a process of its own, since what is wanted is that its memory lasts. All of them with TENBAR_RUNS=1000 or more.
  it.skipIf(countRuns(1000) < 1000)(
    "of one document are refused before the memory is gone (skipped unless TENBAR_RUNS is 1000 or more)",
    { timeout: 600_000 },
    () => {
      const path = files.put("short.json", `[\n${"1,\n".repeat(20_000_000)}1]`);
      const program = ["--import", "tsx", "src/cli/main.ts", "evaluate", policy, path];
      const { status, stderr } = spawnSync(process.execPath, program, { encoding: "utf8" });
      expect({ status, stderr: stderr.replace(path, "FILE") }).toEqual({
        status: 2,
        stderr: expect.stringMatching(/^FILE:4000001: a JSON document has more than 4 million lines/),
      });
    },
  );
});
