import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { afterAll, describe, expect, it } from "vitest";
import { type ReadRecord, readRecords } from "../../src/files/index.js";
import { makeFolder, streamBytes } from "./run-in-process.js";
import { makeRecord, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

async function readAll(input: string | Uint8Array): Promise<readonly ReadRecord[]> {
  const records: ReadRecord[] = [];
  for await (const record of readRecords("-", streamBytes(input))) records.push(record);
  return records;
}

/** Each record by its id, each problem by its place and words. */
async function summarise(input: string | Uint8Array): Promise<readonly string[]> {
  return (await readAll(input)).map(summariseOne);
}

function summariseOne(record: ReadRecord): string {
  if ("problem" in record) return `${record.line ?? ""}:${record.column ?? ""} ${record.problem}`;
  const { value } = record;
  return typeof value === "object" && value !== null && "id" in value ? String(value.id) : JSON.stringify(value);
}

const A = writeRecord({ id: "a" });
const B = writeRecord({ id: "b" });
const C = writeRecord({ id: "c" });
const PRETTY = JSON.stringify(makeRecord({ id: "a" }), undefined, 2);

describe("the records of an input", () => {
  it.each([
    ["one object on one line", A, ["a"]],
    ["one object over many lines", PRETTY, ["a"]],
    ["one object over many lines with blank ones between", PRETTY.replaceAll("\n", "\n\n"), ["a"]],
    ["an array on one line", `[${A},${B}]`, ["a", "b"]],
    [
      "an array over many lines",
      JSON.stringify([makeRecord({ id: "a" }), makeRecord({ id: "b" })], undefined, 2),
      ["a", "b"],
    ],
    ["an array with one record a line", `[\n${A},\n${B}\n]\n`, ["a", "b"]],
    ["lines", `${A}\n${B}\n${C}\n`, ["a", "b", "c"]],
    ["lines that end as on Windows", `${A}\r\n${B}\r\n`, ["a", "b"]],
    ["lines with blank ones, the last without an end", `\n\n${A}\n  \n\n${B}`, ["a", "b"]],
    ["a byte order mark", `\uFEFF${A}\n${B}`, ["a", "b"]],
    ["a byte order mark before an array", `\uFEFF[${A}]`, ["a"]],
    ["nothing", "", []],
    ["blank lines alone", "\n \n\t\n", []],
    ["values that are no records, which evaluation refuses", "5\nnull", ["5", "null"]],
  ])("are told apart by content: %s", async (_, text, expected) => {
    expect(await summarise(text)).toEqual(expected);
  });

  it("say whether the input is one object", async () => {
    const isSingle = async (text: string) => (await readAll(text)).map((one) => "value" in one && one.isSingle);
    expect(await isSingle(A)).toEqual([true]);
    expect(await isSingle(PRETTY)).toEqual([true]);
    expect(await isSingle(`[${A}]`)).toEqual([false]);
    expect(await isSingle(`${A}\n${B}`)).toEqual([false, false]);
  });

  it("keep `__proto__` as a key and a lone surrogate as text", async () => {
    const [record] = await readAll('{"id":"\\ud800","__proto__":{"id":"x"}}');
    if (record === undefined || !("value" in record)) throw new Error("the record was not read");
    expect(JSON.stringify(record.value)).toBe('{"id":"\\ud800","__proto__":{"id":"x"}}');
  });
});

describe("what cannot be read", () => {
  it.each([
    ["in the middle", `${A}\n{"id": oops}\n${B}`, ["a", "2:8 `oops` stands where a value is wanted", "b"]],
    ["at the start", `{"id": oops}\n${A}\n${B}`, ["1:8 `oops` stands where a value is wanted", "a", "b"]],
    ["at the start, cut short", `{"tenbar":1,"steps":[\n${A}\n${B}`, ["1:22 the JSON text ends too early", "a", "b"]],
    [
      "twice at the start",
      `x\n\ny\n${A}`,
      ["1:1 `x` stands where a value is wanted", "3:1 `y` stands where a value is wanted", "a"],
    ],
    ["at the end", `${A}\n${B.slice(0, -2)}`, ["a", `2:${B.length - 1} the JSON text ends too early`]],
  ])("is one line %s, and the others are read", async (_, text, expected) => {
    expect(await summarise(text)).toEqual(expected);
  });

  it("is a whole record where it stands over many lines, and none of its parts is taken for a record", async () => {
    const lines = PRETTY.replace('"check": "daily",', '"check": "daily"').split("\n");
    const text = lines.join("\n").replace(/\{\n +"step": "leak",[\s\S]*?\}/, '{ "step": "leak", "start": "290 bar" }');
    expect(text).toContain('\n    { "step": "leak"');
    expect(await summarise(text)).toEqual(['5:3 `"` stands where `,` or `}` is wanted']);
  });

  it("is a key that stands twice, with its place", async () => {
    const twice = '{"id":"a",\n "steps":[{"step":"leak","end":"200 bar",\n  "end":"290 bar"}]}';
    expect(await summarise(twice)).toEqual(["3:3 the key `end` stands twice in one object"]);
    expect(await summarise(`${A}\n{"id":"x","i\\u0064":"y"}\n${B}`)).toEqual([
      "a",
      "2:11 the key `id` stands twice in one object",
      "b",
    ]);
  });

  it("is one member of an array in which a key stands twice, and the others are read", async () => {
    const text = `[${A},\n {"id":"x","note":"], {","id":"y"},\n ${B}]`;
    expect(await summarise(text)).toEqual(["a", "2:26 the key `id` stands twice in one object", "b"]);
  });

  it("is an array as a whole where its JSON is not sound", async () => {
    expect(await summarise(`[\n${A},\n${B},\n]`)).toEqual(["4:1 a comma stands before the closing `]`"]);
    expect(await summarise(`[${A}]\n${B}`)).toEqual(["2:1 `{` stands where the end of the text is wanted"]);
  });

  it("is a line that is not UTF-8, and no other", async () => {
    const bytes = Buffer.concat([Buffer.from(`${A}\n`), Buffer.from([0x7b, 0xff, 0x7d, 0x0a]), Buffer.from(B)]);
    expect(await summarise(bytes)).toEqual(["a", "2: it is not UTF-8 text", "b"]);
    expect(await summarise(Buffer.from(`\uFEFF${A}`, "utf16le"))).toEqual(["1: it is not UTF-8 text"]);
  });

  it("is nesting without end, which reaches no parser", async () => {
    const bomb = "[".repeat(200_000);
    expect(await summarise(bomb)).toEqual(["1:513 it nests more than 512 levels deep"]);
    expect(await summarise(`${A}\n${'{"a":'.repeat(100_000)}\n${B}`)).toEqual([
      "a",
      "2:2561 it nests more than 512 levels deep",
      "b",
    ]);
  });

  it("is a line over 8 MiB; one of just 8 MiB is read", async () => {
    const room = 8 * 1024 * 1024;
    const pad = (bytes: number) => `{"id":"big","note":"${"x".repeat(bytes - 22)}"}`;
    expect(pad(100)).toHaveLength(100);
    const sizes = await summarise(`${A}\n${pad(room)}\n${pad(room + 1)}\n${B}`);
    expect(sizes).toEqual(["a", "big", "3: the line is longer than 8 MiB", "b"]);
  });

  it("is an endless line, of which nothing is kept, and the next one is read", async () => {
    const filler = new Uint8Array(1024 * 1024).fill(0x20);
    async function* flood(): AsyncGenerator<Uint8Array, void, undefined> {
      yield Buffer.from(`${A}\n`);
      for (let count = 0; count < 65; count += 1) yield filler;
      yield Buffer.from(`\n${B}`);
    }
    const records: string[] = [];
    for await (const record of readRecords("-", flood())) records.push(summariseOne(record));
    expect(records).toEqual(["a", "2: the line is longer than 64 MiB", "b"]);
  });
});

describe("where records come from", () => {
  const readPath = async (path: string) => {
    const records: string[] = [];
    for await (const record of readRecords(path)) records.push(summariseOne(record));
    return records;
  };

  it("a file, whatever its name", async () => {
    expect(await readPath(files.put("records.txt", `${A}\n${B}`))).toEqual(["a", "b"]);
  });

  it("a folder, a missing file and a path through a file are problems", async () => {
    expect(await readPath(files.folder)).toEqual([": it is a folder"]);
    expect(await readPath(`${files.folder}/gone.json`)).toEqual([": there is no such file"]);
    expect(await readPath(`${files.put("plain.json", A)}/x`)).toEqual([": part of its path is no folder"]);
  });

  it("standard input holds nothing where none is given", async () => {
    expect(await readPath("-")).toEqual([]);
  });

  it.skipIf(process.platform === "win32")("a named pipe (skipped on Windows, which has none)", async () => {
    const pipe = `${files.folder}/pipe`;
    execFileSync("sh", ["-c", 'mkfifo "$1"', "sh", pipe]);
    const source = files.put("piped.ndjson", `${A}\n${B}\n`);
    const writer = spawn("sh", ["-c", 'cat "$1" > "$2"', "sh", source, pipe]);
    const ended = once(writer, "exit");
    expect(await readPath(pipe)).toEqual(["a", "b"]);
    await ended;
  });

  it("an error that is none of the file system's is thrown, as a fault of the program", async () => {
    // biome-ignore lint/correctness/useYield: the stream fails before it gives anything
    async function* fail(): AsyncGenerator<Uint8Array, void, undefined> {
      throw new TypeError("a bug");
    }
    const read = async () => {
      for await (const _ of readRecords("-", fail())) expect.unreachable();
    };
    await expect(read()).rejects.toThrow("a bug");
  });
});
