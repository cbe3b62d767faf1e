import { spawnSync } from "node:child_process";
import { beforeAll, describe, expect, it } from "vitest";
import { BOMBS } from "./bombs.js";

interface Answer {
  readonly name: string;
  readonly compiled: number;
  readonly codes: readonly string[];
  readonly each: number;
}

/** Why generous: the bound is to catch what grows with the square of a text, on any machine and beside other work. */
const MOST_MILLISECONDS = 20_000;
const answers = new Map<string, Answer>();
let status: number | null = null;
let signal: string | null = null;
let errors = "";

beforeAll(() => {
  const program = ["--import", "tsx", "--max-old-space-size=1024", "tests/bad-input/bomb-child.ts"];
  const child = spawnSync(process.execPath, program, { encoding: "utf8", timeout: 170_000 });
  ({ status, signal, stderr: errors } = child);
  for (const line of child.stdout
    .trim()
    .split("\n")
    .filter((one) => one !== "")) {
    const answer: Answer = JSON.parse(line);
    answers.set(answer.name, answer);
  }
}, 180_000);

describe("texts that are to break the reader, one after the other in one process", () => {
  it("leave the process alive to its end", () => {
    expect({ status, signal, errors }).toEqual({ status: 0, signal: null, errors: "" });
    expect(answers.get("end")).toEqual({ name: "end", polluted: null });
    expect(answers.size).toBe(BOMBS.length + 1);
  });

  it.each(BOMBS)("$name: refused as $code every time, and soon", ({ name, code }) => {
    const answer = answers.get(name);
    expect(answer).toMatchObject({ compiled: 0 });
    expect(answer?.codes).toContain(code);
    expect(answer?.each).toBeLessThan(MOST_MILLISECONDS);
  });
});
