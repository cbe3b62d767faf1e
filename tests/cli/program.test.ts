import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { runProgram } from "./run-program.js";

const POLICY = "policies/common-practice/open-circuit.yaml";
const LEAK = "examples/records/leak.json";
const CLEAN = "examples/records/clean-single-cylinder.json";
const folder = mkdtempSync(join(tmpdir(), "program-"));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const put = (name: string, text: string | Uint8Array) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const oneLine = (path: string) => JSON.stringify(JSON.parse(readFileSync(path, "utf8")));

describe("tenbar evaluate", () => {
  it.each([
    ["a record that meets", [CLEAN], 0],
    ["a finding at or above refer", [LEAK], 1],
    ["a finding below the level asked for", [CLEAN, "--fail-on", "note"], 0],
    ["any finding when none is to fail", [LEAK, "--fail-on", "never"], 0],
    ["a record that cannot be judged", [put("bare.json", "{}")], 1],
    ["no record at all", [put("empty.json", "[]")], 2],
    ["no record at all, allowed", [put("empty2.json", "[]"), "--allow-empty"], 0],
    ["a file that is not there", ["nowhere.json", CLEAN], 2],
    ["a folder", [folder, CLEAN], 2],
    ["a text that is no UTF-8", [put("latin.json", new Uint8Array([0xff, 0xfe])), CLEAN], 2],
    ["a key that stands twice", [put("twice.json", '{"tenbar":1,"id":"a","id":"b"}'), CLEAN], 2],
    ["a key that stands twice in two spellings", [put("spelt.json", '{"id":"a","\\u0069d":"b"}'), CLEAN], 2],
    ["nesting without end", [put("deep.json", `${"[".repeat(100_000)}${"]".repeat(100_000)}`), CLEAN], 2],
    ["a text that is cut short", [put("cut.json", readFileSync(LEAK, "utf8").slice(0, 300)), CLEAN], 2],
  ])("%s", async (_name, words, code) => {
    const ran = await runProgram(["evaluate", POLICY, ...words]);
    expect(ran.code).toBe(code);
    if (words.includes(CLEAN)) expect(ran.out).toContain("meets the policy");
    if (code === 2 && words.includes(CLEAN)) expect(ran.error).toContain(words[0]);
  });

  it("judges the lines around a bad one, and names it", async () => {
    const path = put("history.ndjson", `\uFEFF${oneLine(LEAK)}\n\n{"tenbar":\n${oneLine(CLEAN)}\n`);
    const ran = await runProgram(["evaluate", POLICY, path, "--format", "ndjson"]);
    expect(ran.code).toBe(2);
    expect(ran.error).toContain("history.ndjson:3:");
    expect(
      ran.out
        .trim()
        .split("\n")
        .map((line) => JSON.parse(line).verdict),
    ).toEqual(["withdraw", "meets"]);
  });

  it("judges an input whose first line is the bad one", async () => {
    const ran = await runProgram([
      "evaluate",
      POLICY,
      put("first.ndjson", `{"tenbar":\n${oneLine(CLEAN)}\n`),
      "--format",
      "ndjson",
    ]);
    expect(ran.code).toBe(2);
    expect(JSON.parse(ran.out).verdict).toBe("meets");
  });

  it("prints an object for one object, an array for anything else", async () => {
    const print = async (...words: string[]) =>
      JSON.parse((await runProgram(["evaluate", POLICY, ...words, "--format", "json"])).out);
    expect((await print(LEAK)).verdict).toBe("withdraw");
    expect(await print(put("list.json", `[${oneLine(LEAK)}]`))).toHaveLength(1);
    expect(await print(LEAK, CLEAN)).toHaveLength(2);
    expect(await print(put("two.ndjson", `${oneLine(LEAK)}\n${oneLine(CLEAN)}`))).toHaveLength(2);
    expect(await print(put("none.json", "[]"))).toEqual([]);
  });

  it("reads standard input", async () => {
    const ran = await runProgram(["evaluate", POLICY, "-"], { stdin: readFileSync(LEAK, "utf8") });
    expect(ran.code).toBe(1);
    expect(ran.out).toContain("withdraw from use");
  });

  it("judges with a saved plan as with the policy, and refuses a plan that was changed", async () => {
    const plan = join(folder, "plan.json");
    expect((await runProgram(["compile", POLICY, "--out", plan])).code).toBe(0);
    const words = ["evaluate", LEAK, "--format", "json"];
    const [byPlan, byPolicy] = await Promise.all(
      [plan, POLICY].map((path) => runProgram(["evaluate", path, ...words.slice(1)])),
    );
    expect(byPlan?.out).toBe(byPolicy?.out);
    const changed = put("changed.json", readFileSync(plan, "utf8").replaceAll('"10 bar"', '"90 bar"'));
    const refused = await runProgram(["evaluate", changed, LEAK]);
    expect(refused.code).toBe(2);
    expect(refused.error).toContain("changed after it was saved");
  });

  it("shows step, what was seen, what is accepted, by how much, where, the basis, what follows; the deference once", async () => {
    const { out } = await runProgram(["evaluate", POLICY, LEAK, CLEAN]);
    for (const words of [
      "leak, drop",
      "seen 20 bar",
      "accepted at most 10 bar",
      "margin 10 bar beyond the limit",
      `policy ${POLICY}`,
      "basis published: ",
      "withdraw",
      "record /steps/",
    ]) {
      expect(out.replaceAll(/ +/g, " ")).toContain(words);
    }
    expect(out.split("the manufacturer's instructions and the competent person").length - 1).toBe(1);
    expect(out).toMatch(/meets the policy +1\nrefer to a competent person +0\nwithdraw from use +1\nin all +2\n/);
    expect(out).not.toMatch(/\bsafe\b/i);
  });

  it("keeps to 80 columns and to plain text, unless colour is wanted", async () => {
    const records = readdirSync("examples/records")
      .filter((file) => file.endsWith(".json"))
      .map((file) => join("examples/records", file));
    const plain = await runProgram(["evaluate", POLICY, ...records]);
    const paths = /policy policies\//;
    expect(plain.out.split("\n").filter((line) => line.length > 80 && !paths.test(line))).toEqual([]);
    expect(plain.out).not.toContain("\u001B");
    const terminal = { isTerminal: true };
    expect((await runProgram(["evaluate", POLICY, LEAK], terminal)).out).toContain("\u001B[");
    expect(
      (await runProgram(["evaluate", POLICY, LEAK], { ...terminal, environment: { NO_COLOR: "1" } })).out,
    ).not.toContain("\u001B");
    expect((await runProgram(["evaluate", POLICY, LEAK, "--color", "always"])).out).toContain("\u001B[");
  });

  it("lets no record drive the terminal", async () => {
    const record = {
      ...JSON.parse(readFileSync(LEAK, "utf8")),
      id: "\u001B[2J\u0007evil\u202E",
      [`\u001B]0;x\u0007`]: 1,
    };
    const { out } = await runProgram(["evaluate", POLICY, put("evil.json", JSON.stringify(record))]);
    expect(out).toContain("evil");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be there
    expect(out).not.toMatch(/[\u0000-\u0009\u000B-\u001F\u202E]/);
  });

  it("stops where nobody reads any more", async () => {
    let written = 0;
    const out = async () => {
      written += 1;
      return false;
    };
    expect((await runProgram(["evaluate", POLICY, LEAK, CLEAN, CLEAN, "--format", "ndjson"], { out })).code).toBe(1);
    expect(written).toBe(1);
  });
});

describe("tenbar compile", () => {
  it("shows each mistake with its line and mend, and gives 2", async () => {
    const text = readFileSync(POLICY, "utf8").replace("at-most: 10 bar", "at-most: 10bar");
    const path = put("slip.yaml", text);
    const ran = await runProgram(["compile", path]);
    expect(ran.code).toBe(2);
    expect(ran.out).toContain("mend: write `10 bar`");
    const line = text.split("\n").findIndex((one) => one.includes("10bar")) + 1;
    expect(ran.out).toContain(`slip.yaml:${line}:`);
    const asData = JSON.parse((await runProgram(["compile", path, "--format", "json"])).out);
    expect(asData.diagnostics).toHaveLength(1);
  });

  it("prints the policy as it stands, each limit with its place", async () => {
    const { out, code } = await runProgram(["compile", POLICY, "--resolved"]);
    expect(code).toBe(0);
    const drop = /drop: withdraw, at most 10 bar,[^[]+\[policies\/common-practice\/open-circuit\.yaml:\d+:\d+\]/;
    expect(out).toMatch(drop);
  });

  it("warns of a review date that has passed on the given day", async () => {
    const text = readFileSync(POLICY, "utf8").replace(
      "status: common-practice",
      "status: common-practice\n  effective: { review: 2026-01-01 }",
    );
    const path = put("reviewed.yaml", text);
    expect((await runProgram(["compile", path])).out).toContain("the review date 2026-01-01 has passed on 2026-04-12");
    expect((await runProgram(["compile", path, "--as-of", "2025-12-31"])).out).not.toContain("has passed");
  });

  it("saves nothing where it cannot, and says so", async () => {
    mkdirSync(join(folder, "taken"));
    for (const out of [join(folder, "no", "plan.json"), join(folder, "taken")]) {
      const ran = await runProgram(["compile", POLICY, "--out", out]);
      expect(ran.code).toBe(2);
      expect(ran.error).toContain("was not saved");
    }
    expect(readdirSync(folder).filter((file) => file.includes("draft"))).toEqual([]);
  });
});

describe("tenbar describe and schema", () => {
  it("print JSON, or the checks that there are", async () => {
    const form = JSON.parse((await runProgram(["describe", POLICY, "daily"])).out);
    expect(form).toMatchObject({ kind: "form", check: "daily" });
    const subject = put("subject.json", JSON.stringify({ kind: "set", id: "S", fitted: { torch: false } }));
    const fitted = JSON.parse((await runProgram(["describe", POLICY, "daily", "--subject", subject])).out);
    expect(fitted.steps.find(({ step }: { step: string }) => step === "torch").applies).toBe("no");
    expect(JSON.parse((await runProgram(["schema", POLICY, "daily"])).out).properties.check).toEqual({
      const: "daily",
    });
    const unknown = await runProgram(["schema", POLICY, "dayly"]);
    expect(unknown).toMatchObject({ code: 2, out: "" });
    expect(unknown.error).toContain("daily, after-use, monthly");
  });
});

describe("the program", () => {
  it.each([
    [["--help"], 0, "usage: tenbar COMMAND"],
    [["--version"], 0, "0.1.0"],
    [["evaluate", "--help"], 0, "exit codes:"],
    [["compile", "--help"], 0, "examples:"],
  ])("%j", async (words, code, text) => {
    const ran = await runProgram(words);
    expect(ran.code).toBe(code);
    expect(ran.out).toContain(text);
  });

  it.each([
    [["evalute"], "did you mean `evaluate`?"],
    [["evaluate", POLICY, LEAK, "--formt", "json"], "did you mean `--format`?"],
    [["evaluate", POLICY, LEAK, "--format", "xml"], "text, json, ndjson"],
    [["evaluate", POLICY, LEAK, "--format"], "needs FORMAT"],
    [["evaluate", POLICY], "usage:"],
    [["compile", "a", "b"], "usage:"],
  ])("%j is refused by name", async (words, text) => {
    const ran = await runProgram(words);
    expect(ran).toMatchObject({ code: 2, out: "" });
    expect(ran.error).toContain(text);
  });

  it("is the version that package.json states", async () => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8"));
    expect((await runProgram(["--version"])).out.trim()).toBe(version);
  });

  it("survives a closed pipe as a process", () => {
    const records = readdirSync("examples/records")
      .filter((file) => file.endsWith(".json"))
      .map((file) => join("examples/records", file))
      .join(" ");
    const line = `"${process.execPath}" --import tsx src/cli/main.ts evaluate ${POLICY} ${records} | head -n 1`;
    const ran = spawnSync("sh", ["-c", line], { encoding: "utf8" });
    expect(ran.stderr).toBe("");
    expect(ran.stdout.split("\n")).toHaveLength(2);
  });
});
