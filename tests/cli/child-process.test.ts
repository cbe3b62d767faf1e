import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, openSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { makeFolder } from "./run-in-process.js";
import { POLICY_TEXT, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const good = files.put("good.json", writeRecord({ id: "good" }));
const leak = files.put("leak.json", writeRecord({ id: "leak", end: "270 bar" }));
const PROGRAM = ["--import", "tsx", "src/cli/main.ts"] as const;

function runChild(words: readonly string[], options: { input?: string; env?: Record<string, string> } = {}) {
  const environment = { PATH: process.env["PATH"], ...options.env };
  return spawnSync(process.execPath, [...PROGRAM, ...words], {
    encoding: "utf8",
    input: options.input,
    env: environment,
  });
}

describe("the program as a process", () => {
  it("ends with each of its codes", () => {
    expect(runChild(["evaluate", policy, good]).status).toBe(0);
    expect(runChild(["evaluate", policy, leak]).status).toBe(1);
    expect(runChild(["evaluate", policy, `${good}.gone`]).status).toBe(2);
  });

  it("reads records from standard input, and prints without colour into a pipe", () => {
    const { status, stdout, stderr } = runChild(["evaluate", policy, "-"], { input: writeRecord({ id: "piped" }) });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("piped, S-014, daily");
    expect(stdout).not.toContain("\u001B");
  });

  it("compares a review date with the day of the clock in compile", () => {
    const passed = files.put(
      "passed.yaml",
      POLICY_TEXT.replace("2026-04-01, review: 2027-02-01", "2020-01-01, review: 2021-01-01"),
    );
    expect(runChild(["compile", passed]).stdout).toContain("plan/review-passed");
    expect(runChild(["evaluate", passed, good]).stderr).toBe("");
  });

  it("stops quietly once the reader has gone, with the code so far", async () => {
    const lines = Array.from({ length: 20_000 }, (_, index) => writeRecord({ id: `r${index}`, end: "270 bar" }));
    const path = files.put("many.ndjson", lines.join("\n"));
    const child = spawn(process.execPath, [...PROGRAM, "evaluate", policy, path, "--format", "ndjson"]);
    const errors: string[] = [];
    child.stderr.on("data", (chunk) => errors.push(String(chunk)));
    await once(child.stdout, "data");
    child.stdout.destroy();
    const [code] = await once(child, "close");
    expect(errors.join("")).toBe("");
    expect(code).toBe(1);
  });

  it("does not break where nobody reads its errors", async () => {
    const child = spawn(process.execPath, [...PROGRAM, "evaluate", policy, `${good}.gone`, good]);
    child.stderr.destroy();
    child.stdout.resume();
    const [code] = await once(child, "close");
    expect(code).toBe(2);
  });

  it.skipIf(!existsSync("/dev/full"))("says so where the report cannot be written (skipped without /dev/full)", () => {
    const full = openSync("/dev/full", "w");
    const { status, stderr } = spawnSync(process.execPath, [...PROGRAM, "evaluate", policy, good], {
      encoding: "utf8",
      stdio: ["ignore", full, "pipe"],
    });
    expect(stderr).toBe("the report could not be written: the disk is full\n");
    expect(status).toBe(2);
  });
});
