import { closeSync, openSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { noInput, openStandardInput } from "../../src/files/index.js";
import { makeFolder, runProgram } from "./run-in-process.js";
import { POLICY_TEXT, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const good = files.put("good.json", writeRecord({ id: "good" }));
const near = files.put("near.json", writeRecord({ id: "near", end: "280 bar" }));
const gap = files.put("gap.json", writeRecord({ id: "gap", harness: "" }));
const leak = files.put("leak.json", writeRecord({ id: "leak", end: "270 bar" }));
const odd = files.put("odd.json", writeRecord({ id: "odd", extra: { weather: "rain" } }));
const nameless = files.put("nameless.json", writeRecord({ id: "" }));
const broken = files.put("broken.json", '{ "tenbar": 1,\n  "id": "broken",\n  "check" "daily" }');
const empty = files.put("empty.ndjson", "\n\n");
const bad = files.put("bad.yaml", POLICY_TEXT.replace("at-most: 10 bar", "at-most: 10bar"));

interface Row {
  readonly name: string;
  readonly words: readonly string[];
  readonly code: 0 | 1 | 2;
}

const ROWS: readonly Row[] = [
  { name: "a record that meets", words: [policy, good], code: 0 },
  { name: "a caution below the level", words: [policy, near], code: 0 },
  { name: "a caution at the level", words: [policy, near, "--fail-on", "advise"], code: 1 },
  { name: "a note below the level", words: [policy, odd], code: 0 },
  { name: "a note at the level", words: [policy, odd, "--fail-on", "note"], code: 1 },
  { name: "a gap that is referred", words: [policy, gap], code: 1 },
  { name: "a gap below the level", words: [policy, gap, "--fail-on", "withdraw"], code: 0 },
  { name: "a leak", words: [policy, leak], code: 1 },
  { name: "a leak at the highest level", words: [policy, leak, "--fail-on", "withdraw"], code: 1 },
  { name: "a leak where nothing fails", words: [policy, leak, "--fail-on", "never"], code: 0 },
  { name: "one leak among several", words: [policy, good, leak, good], code: 1 },
  { name: "a record not judged beside one that is", words: [policy, good, nameless], code: 1 },
  { name: "the same where only withdraw fails", words: [policy, good, nameless, "--fail-on", "withdraw"], code: 1 },
  { name: "a record that cannot be judged", words: [policy, nameless], code: 1 },
  { name: "the same where nothing fails", words: [policy, nameless, "--fail-on", "never"], code: 0 },
  { name: "no record", words: [policy, empty], code: 2 },
  { name: "no record, allowed to be empty", words: [policy, empty, "--allow-empty"], code: 0 },
  { name: "an input that is no JSON", words: [policy, good, broken], code: 2 },
  {
    name: "an input that is no JSON where nothing fails",
    words: [policy, good, broken, "--fail-on", "never"],
    code: 2,
  },
  { name: "an unreadable input, allowed to be empty", words: [policy, broken, "--allow-empty"], code: 2 },
  { name: "an input that is missing", words: [policy, good, `${good}.gone`], code: 2 },
  { name: "an input that is a folder", words: [policy, files.folder], code: 2 },
  { name: "a policy with an error", words: [bad, good], code: 2 },
  { name: "a policy that is missing", words: [`${policy}.gone`, good], code: 2 },
  { name: "a policy that is a folder", words: [files.folder, good], code: 2 },
];

describe("the exit code of evaluate", () => {
  it.each(ROWS)("is $code for $name", async ({ words, code }) => {
    expect((await runProgram(["evaluate", ...words])).code).toBe(code);
  });

  it.each(ROWS)("is the same in json and ndjson for $name", async ({ words, code }) => {
    for (const format of ["json", "ndjson"]) {
      expect((await runProgram(["evaluate", ...words, "--format", format])).code).toBe(code);
    }
  });
});

describe("evaluate", () => {
  it("judges what can be read beside what cannot, and names that on the error stream alone", async () => {
    const { out, error } = await runProgram(["evaluate", policy, broken, `${good}.gone`, leak]);
    expect(out).toContain("leak, S-014, daily");
    expect(out).toContain("withdraw from use");
    expect(out).toMatch(/beside these, not read +2\n/);
    expect(error).toContain(`${broken}:3:11: \`"\` stands where \`:\` is wanted; not judged`);
    expect(error).toContain(`${good}.gone: there is no such file`);
    expect(out).not.toContain("no such file");
  });

  it("shows a policy's mistakes on the error stream and reports nothing", async () => {
    const { out, error } = await runProgram(["evaluate", bad, good]);
    expect(out).toBe("");
    expect(error).toContain("bad.yaml:17:24");
    expect(error).toContain("1 error, 0 warnings");
  });

  it("warns of a passed review date only against a day that is given", async () => {
    const clock = { streams: { today: "2030-01-01" } };
    expect((await runProgram(["evaluate", policy, good], clock)).error).toBe("");
    const { error, code } = await runProgram(["evaluate", policy, good, "--as-of", "2027-02-02"], clock);
    expect(error).toContain("plan/review-passed");
    expect(code).toBe(0);
  });

  it("stops quietly with the code so far once nobody reads", async () => {
    const lines = Array.from({ length: 50 }, (_, index) => writeRecord({ id: `r${index}`, end: "270 bar" })).join("\n");
    const path = files.put("many.ndjson", lines);
    const { code, out, error } = await runProgram(["evaluate", policy, path, "--format", "ndjson"], { takes: 2 });
    expect(out.trim().split("\n")).toHaveLength(2);
    expect(error).toBe("");
    expect(code).toBe(1);
  });

  it("reads no further once nobody reads, however long the input is", async () => {
    let lines = 0;
    async function* pour(): AsyncGenerator<Uint8Array, void, undefined> {
      for (; lines < 1000; lines += 1) yield Buffer.from(`${writeRecord({ id: `r${lines}` })}\n`);
    }
    const { code } = await runProgram(["evaluate", policy, "-"], { takes: 1, streams: { input: pour() } });
    expect(code).toBe(0);
    expect(lines).toBeLessThan(10);
  });

  it("takes standard input once, for records or for the policy", async () => {
    const records = await runProgram(["evaluate", policy, "-"], { input: writeRecord({ id: "from-input" }) });
    expect(records.out).toContain("from-input, S-014, daily");
    expect(records.code).toBe(0);
    expect((await runProgram(["evaluate", "-", good], { input: POLICY_TEXT })).code).toBe(0);
    const twice = await runProgram(["evaluate", policy, "-", "-"], { input: writeRecord() });
    expect(twice).toMatchObject({ code: 2, out: "" });
    expect(twice.error).toContain("named twice");
  });

  it("judges by a saved plan as by the policy, digest included", async () => {
    const plan = `${files.folder}/plan.json`;
    expect((await runProgram(["compile", policy, "--out", plan])).code).toBe(0);
    const byPlan = await runProgram(["evaluate", plan, leak, near, "--format", "json"]);
    const byPolicy = await runProgram(["evaluate", policy, leak, near, "--format", "json"]);
    expect(byPlan).toEqual(byPolicy);
    expect(byPlan.out).toContain('"verdict": "withdraw"');
  });

  it("says nothing twice in one run: the deference and each caution stand once", async () => {
    const { out } = await runProgram(["evaluate", policy, leak, near, gap]);
    expect(out.match(/stand\s+above\s+this\s+policy/g)).toHaveLength(1);
    expect(out.match(/takes it off the run/g)).toHaveLength(1);
    expect(out.match(/lowmere\/leak-only 2026\.1/g)).toHaveLength(1);
  });

  it("never calls a set by the one word that no record can bear out", async () => {
    const { out, error } = await runProgram(["evaluate", policy, good, leak, near, gap, odd, nameless, broken]);
    expect(out + error).not.toMatch(/\bsafe/i);
  });
});

describe("an input without a record", () => {
  it.each([
    [[empty], `\`${empty}\` holds none`],
    [[empty, "-"], `\`${empty}\`, standard input hold none`],
    [[files.folder], "what was given could not be read"],
  ])("%j is told before the cautions", async (inputs, why) => {
    const told: string[] = [];
    const streams = {
      out: (text: string) => {
        told.push(text);
        return Promise.resolve(true);
      },
      error: (text: string) => void told.push(text),
    };
    const { code } = await runProgram(["evaluate", policy, ...inputs], { streams });
    expect(code).toBe(2);
    const reason = told.indexOf(`no record was evaluated: ${why}\n`);
    expect(reason).toBeGreaterThanOrEqual(0);
    expect(told.findIndex((text) => text.includes("An assessment speaks of one record"))).toBeGreaterThan(reason);
  });

  it("is named where a folder is given as standard input", async () => {
    const descriptor = openSync(files.folder, "r");
    try {
      const input = openStandardInput(noInput(), descriptor);
      const { code, error } = await runProgram(["evaluate", policy, "-"], { streams: { input } });
      expect(code).toBe(2);
      expect(error).toMatch(/^-: it is a folder; not judged\n/);
    } finally {
      closeSync(descriptor);
    }
  });
});
