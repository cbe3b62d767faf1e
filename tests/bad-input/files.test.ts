import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
} from "node:fs";
import { open } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { makeFolder, runProgram } from "../cli/run-in-process.js";
import { POLICY_TEXT, writeRecord } from "../cli/sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const good = files.put("good.json", writeRecord({ id: "good" }));
const PROGRAM = ["--import", "tsx", "src/cli/main.ts"] as const;
const at = (name: string) => join(files.folder, name);
const isRoot = process.getuid?.() === 0;
const hasPipes = spawnSync("mkfifo", [at("probe")]).status === 0;
const hasFull = existsSync("/dev/full");

/** What the program says where something failed: each message with its path, none of the inside of the program. */
function expectClear(error: string): void {
  expect(error).not.toMatch(/\n\s+at |node:|Error:|\.ts:|\.js:|undefined|\[object/);
  for (const line of error.trimEnd().split("\n")) expect(line.length).toBeLessThan(300);
}

mkdirSync(at("folder"));
symlinkSync(at("circle-b"), at("circle-a"));
symlinkSync(at("circle-a"), at("circle-b"));
symlinkSync(at("nowhere"), at("dangling"));
files.put("empty", "");
files.put("cut.json", writeRecord().slice(0, 60));
files.put("secret", writeRecord());
chmodSync(at("secret"), 0);

const UNREADABLE = [
  ["a file that is not there", "gone.json", "there is no such file"],
  ["a folder", "folder", "it is a folder"],
  ["links in a circle", "circle-a", "its links go round in a circle"],
  ["a link to nothing", "dangling", "there is no such file"],
  ["a file below a file", "policy.yaml/record.json", "part of its path is no folder"],
  ["a name that is too long", "x".repeat(5000), "its name is too long"],
] as const;

describe.each(UNREADABLE)("%s", (_, name, problem) => {
  it("as a record is named, and the others are still judged", async () => {
    const { code, out, error } = await runProgram(["evaluate", policy, at(name), good, "--format", "ndjson"]);
    expect(error).toBe(`${at(name)}: ${problem}; not judged\n`);
    expect(JSON.parse(out)).toMatchObject({ recordId: "good", verdict: "meets" });
    expect(code).toBe(2);
  });

  it.each(["compile", "evaluate", "describe", "schema"])(
    "as the policy of %s is named, and nothing else is done",
    async (command) => {
      const rest = { compile: [], evaluate: [good], describe: ["daily"], schema: ["daily"] }[command] ?? [];
      const { code, out, error } = await runProgram([command, at(name), ...rest]);
      expect({ code, out, error }).toEqual({ code: 2, out: "", error: `${at(name)}: ${problem}\n` });
    },
  );

  it("as the subject of a form is named", async () => {
    const { code, out, error } = await runProgram(["describe", policy, "daily", "--subject", at(name)]);
    expect({ code, out, error }).toEqual({ code: 2, out: "", error: `${at(name)}: ${problem}\n` });
  });
});

describe("a file that must not be read", () => {
  it.skipIf(isRoot)("is named (skipped for root, who may read everything)", async () => {
    const { code, error } = await runProgram(["evaluate", policy, at("secret"), good]);
    expect({ code, error }).toEqual({
      code: 2,
      error: `${at("secret")}: there is no permission to use it; not judged\n`,
    });
  });
});

describe("a policy that is no text, or none at all", () => {
  it.each([
    ["nothing", Buffer.alloc(0), "read/empty"],
    ["blanks", Buffer.from(" \n\t\n"), "read/empty"],
    ["JSON cut short", Buffer.from('{ "tenbar": 1, "policy": {'), "read/unclosed-bracket"],
    ["a record", Buffer.from(writeRecord()), "read/"],
    ["a list", Buffer.from("[]"), "read/wrong-type"],
    ["a saved plan cut short", Buffer.from('{"tenbar":1,"kind":"plan"'), "the plan cannot be read"],
    ["UTF-16 with its mark", Buffer.from(`\ufeff${POLICY_TEXT}`, "utf16le"), "it is not UTF-8 text"],
    ["UTF-16 without it", Buffer.from(POLICY_TEXT, "utf16le"), "read/control-character"],
    ["bytes of another encoding", Buffer.from(`# Löschzug\n${POLICY_TEXT}`, "latin1"), "it is not UTF-8 text"],
    ["carriage returns alone", Buffer.from(POLICY_TEXT.replaceAll("\n", "\r")), "read/control-character"],
    ["a program", readFileSync(process.execPath).subarray(0, 100_000), "it is not UTF-8 text"],
  ])("%s gives 2 and judges nothing", async (_, bytes, problem) => {
    const path = files.put("bad.yaml", bytes);
    const { code, out, error } = await runProgram(["evaluate", path, good]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(error).toContain(path);
    expect(error).toContain(problem);
    expectClear(error);
    const compiled = await runProgram(["compile", path]);
    expect(compiled.code).toBe(2);
    expect(compiled.out + compiled.error).toContain(problem);
  });

  it.each([
    ["a byte order mark", `\ufeff${POLICY_TEXT}`],
    ["line ends of two characters", POLICY_TEXT.replaceAll("\n", "\r\n")],
  ])("%s makes no difference to its plan", async (_, text) => {
    const [plain, other] = [at("plain.plan.json"), at("other.plan.json")];
    await runProgram(["compile", policy, "--out", plain]);
    const { code } = await runProgram(["compile", files.put("other.yaml", text), "--out", other]);
    expect(code).toBe(0);
    const digestOf = (path: string): unknown => JSON.parse(readFileSync(path, "utf8")).digest;
    expect(digestOf(other)).toBe(digestOf(plain));
    expect(String(digestOf(plain))).toMatch(/^sha256:/);
  });
});

describe("a plan that cannot be saved", () => {
  it.each([
    ["in a folder that is not there", "no-folder/plan.json", "its folder does not exist"],
    ["below a file", "good.json/plan.json", "part of its path is no folder"],
    ["onto a folder", "folder", "it is a folder"],
    ["onto the policy itself", "policy.yaml", "it would replace"],
    ["onto links in a circle", "circle-a", "its link leads to no file"],
    ["onto a link to nothing", "dangling", "its link leads to no file"],
    ["under a name that is too long", "x".repeat(5000), "its name is too long"],
  ])("%s says why, and leaves everything as it was", async (_, name, problem) => {
    const before = readdirSync(files.folder, { recursive: true });
    const { code, error } = await runProgram(["compile", policy, "--out", at(name)]);
    expect(error).toContain(`${at(name)}: the plan was not saved: ${problem}`);
    expectClear(error.replaceAll(at(name), "FILE"));
    expect(code).toBe(2);
    expect(readdirSync(files.folder, { recursive: true })).toEqual(before);
    expect([lstatSync(at("circle-a")).isSymbolicLink(), lstatSync(at("dangling")).isSymbolicLink()]).toEqual([
      true,
      true,
    ]);
    expect(readFileSync(policy, "utf8")).toBe(POLICY_TEXT);
  });

  it.skipIf(!hasFull)("onto a device says why (skipped without /dev/full)", async () => {
    const { code, error } = await runProgram(["compile", policy, "--out", "/dev/full"]);
    expect({ code, error }).toEqual({ code: 2, error: "/dev/full: the plan was not saved: it is no ordinary file\n" });
  });
});

describe.skipIf(!hasPipes)("a named pipe (skipped where none can be made)", () => {
  const makePipe = (name: string) => {
    rmSync(at(name), { force: true });
    spawnSync("mkfifo", [at(name)]);
    return at(name);
  };
  const write = async (path: string, text: string) => {
    const pipe = await open(path, "w");
    if (text !== "") await pipe.writeFile(text);
    await pipe.close();
  };

  it("gives records, or a policy", async () => {
    const pipe = makePipe("pipe");
    const [asRecords] = await Promise.all([runProgram(["evaluate", policy, pipe]), write(pipe, writeRecord())]);
    expect(asRecords).toMatchObject({ code: 0, error: "" });
    const [asPolicy] = await Promise.all([runProgram(["evaluate", pipe, good]), write(pipe, POLICY_TEXT)]);
    expect(asPolicy).toMatchObject({ code: 0, error: "" });
  });

  it("whose writer closes with nothing holds no record, and no policy", async () => {
    const pipe = makePipe("pipe");
    const [asRecords] = await Promise.all([runProgram(["evaluate", policy, pipe]), write(pipe, "")]);
    expect(asRecords).toMatchObject({ code: 2, error: `no record was evaluated: \`${pipe}\` holds none\n` });
    const [asPolicy] = await Promise.all([runProgram(["evaluate", pipe, good]), write(pipe, "")]);
    expect(asPolicy).toMatchObject({ code: 2, out: "" });
    expect(asPolicy.error).toContain("read/empty");
  });

  it("whose writer stops in the middle of a record is named, and the lines before it are judged", async () => {
    const pipe = makePipe("pipe");
    const text = `${writeRecord({ id: "whole" })}\n${writeRecord({ id: "cut" }).slice(0, 50)}`;
    const [{ code, out, error }] = await Promise.all([
      runProgram(["evaluate", policy, pipe, "--format", "ndjson"]),
      write(pipe, text),
    ]);
    expect(JSON.parse(out)).toMatchObject({ recordId: "whole", verdict: "meets" });
    expect(error).toMatch(/pipe:2:51: the JSON text ends too early; not judged\n$/);
    expect(code).toBe(2);
  });

  it("is read while a later file vanishes, which is then named", async () => {
    const pipe = makePipe("pipe");
    const later = files.put("later.json", writeRecord());
    const running = runProgram(["evaluate", policy, pipe, later, good]);
    rmSync(later);
    await write(pipe, writeRecord());
    const { code, error } = await running;
    expect({ code, error }).toEqual({ code: 2, error: `${later}: there is no such file; not judged\n` });
  });
});

describe("the streams of the process", () => {
  const environment = { PATH: process.env["PATH"] };

  it("end it with 2 where standard input is closed, which reads as empty, or a folder", () => {
    const words = [process.execPath, ...PROGRAM, "evaluate", policy, "-"];
    const closed = spawnSync("sh", ["-c", 'exec "$@" <&-', "sh", ...words], { encoding: "utf8", env: environment });
    const folder = spawnSync(process.execPath, words.slice(1), {
      encoding: "utf8",
      env: environment,
      stdio: [openSync(files.folder, "r"), "pipe", "pipe"],
    });
    expect(closed.stderr).toBe("no record was evaluated: standard input holds none\n");
    expect(folder.stderr).toMatch(/^-: it is a folder; not judged\n/);
    for (const { status, stdout } of [closed, folder]) {
      expect(status).toBe(2);
      expect(stdout).not.toContain("meets");
    }
  });

  it.skipIf(!hasFull)(
    "end it with 2 where the form or the schema cannot be written (skipped without /dev/full)",
    () => {
      for (const words of [
        ["describe", policy, "daily"],
        ["compile", policy],
      ]) {
        const { status, stderr } = spawnSync(process.execPath, [...PROGRAM, ...words], {
          encoding: "utf8",
          env: environment,
          stdio: ["ignore", openSync("/dev/full", "w"), "pipe"],
        });
        expect({ status, stderr }).toEqual({
          status: 2,
          stderr: "the report could not be written: the disk is full\n",
        });
      }
    },
  );

  it("leave it quiet where standard output is closed from the start, or after one line", async () => {
    const closed = spawnSync(
      "sh",
      ["-c", `exec "$@" >&-`, "sh", process.execPath, ...PROGRAM, "evaluate", policy, good],
      {
        encoding: "utf8",
        env: environment,
      },
    );
    // The run-time opens the null device in its place, so the report goes there and the code is that of the record.
    expect({ status: closed.status, stderr: closed.stderr }).toEqual({ status: 0, stderr: "" });
    const child = spawn(process.execPath, [...PROGRAM, "compile", policy, "--resolved"], { env: environment });
    const errors: string[] = [];
    child.stderr.on("data", (chunk) => errors.push(String(chunk)));
    child.stdout.destroy();
    const [code] = await once(child, "close");
    expect([errors.join(""), code]).toEqual(["", 0]);
  });
});
