import { lstatSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { makeFolder, runProgram } from "./run-in-process.js";
import { POLICY_TEXT, writeRecord } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const good = files.put("good.json", writeRecord());

/** Five typing mistakes that one run can tell, each with its line. */
const MISTAKES = [
  ["at-most: 10 bar", "at-most: 10bar", 17],
  ["above: 5 bar", "above: 5 bars", 18],
  ["instrument: dial", "instrument: dail", 34],
  ["at-least: 100 bar", "at-least: 1OO bar", 35],
  ["at-least: 60 s", "at-least: 60 bar", 37],
] as const;

describe("compile", () => {
  it("reports on standard output: the policy, what stands above it, its cautions, the count", async () => {
    const { code, out, error } = await runProgram(["compile", policy]);
    expect({ code, error }).toEqual({ code: 0, error: "" });
    expect(out).toMatch(/^policy lowmere\/leak-only 2026\.1, Leak check of Lowmere\s+\(sha256:[0-9a-f]{12}\)\n/);
    expect(out).toContain("  - Anyone in doubt about a set takes it off the run.\n");
    expect(out).toMatch(/\n0 errors, 0 warnings\n$/);
  });

  it("shows every mistake of a policy with its place, its line and the mend", async () => {
    const text = MISTAKES.reduce((held, [right, wrong]) => held.replace(right, wrong), POLICY_TEXT);
    const { code, out } = await runProgram(["compile", files.put("mistakes.yaml", text)]);
    expect(code).toBe(2);
    expect(out).toMatch(/\n5 errors, \d warnings?\n$/);
    for (const [, wrong, line] of MISTAKES) {
      expect(out).toContain(`mistakes.yaml:${line}:`);
      expect(out).toMatch(new RegExp(`\\n {2}${line} \\| .*${wrong.replace(/[.+]/g, "\\$&")}`));
    }
    expect(out).toContain("mend: write `10 bar`");
    expect(out).toContain("mend: write `dial`");
    expect(out.split("\n").filter((row) => row.length > 80 && !row.includes(files.folder))).toEqual([]);
  });

  it("warns of a passed review date against today, or against the day that is given", async () => {
    const today = { streams: { today: "2027-02-02" } };
    expect((await runProgram(["compile", policy], today)).out).toContain("plan/review-passed");
    expect((await runProgram(["compile", policy, "--as-of", "2027-02-01"], today)).out).not.toContain("review-passed");
  });

  it("gives diagnostics as json", async () => {
    const bad = files.put("bad.yaml", POLICY_TEXT.replace("instrument: dial", "instrument: dail"));
    const { code, out } = await runProgram(["compile", bad, "--format", "json"]);
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ diagnostics: [{ severity: "error", line: 34, nearest: "dial" }] });
  });

  it("prints limits with their places where the policy is wanted as it stands", async () => {
    const { out } = await runProgram(["compile", policy, "--resolved"]);
    const told = out.replaceAll(/\s+/g, " ");
    expect(told).toContain(
      `drop: withdraw, at most 10 bar, caution: above 5 bar; common practice, no source [${policy}:17:`,
    );
  });

  it("prints them with their cautions, their cases and what they rest on, in the width of the screen", async () => {
    const lowmere = ["compile", "examples/lowmere/policy.yaml", "--resolved"];
    const { out } = await runProgram(lowmere, { streams: { columns: 60 } });
    const [listed = ""] = out.split("\n\npolicy ");
    const told = listed.replaceAll(/\s+/g, " ");
    expect(told).toContain(
      "level: withdraw, at least 90 % of rated-pressure and at most 110 % of rated-pressure (role front-line or training), " +
        "caution: below 95 % of rated-pressure; " +
        "at least 80 % of rated-pressure and at most 110 % of rated-pressure (role spare); local order: LO 12 [examples/lowmere/policy.yaml:30:7]",
    );
    const long = listed.split("\n").filter((line) => line.length > 60);
    expect(long).toEqual([]);
  });

  it("names a policy that cannot be read on the error stream", async () => {
    expect(await runProgram(["compile", `${policy}.gone`])).toEqual({
      code: 2,
      out: "",
      error: `${policy}.gone: there is no such file\n`,
    });
    const latin = files.put(
      "latin.yaml",
      Buffer.concat([Buffer.from(POLICY_TEXT), Buffer.from("# caf\xe9", "latin1")]),
    );
    expect((await runProgram(["compile", latin])).error).toContain("it is not UTF-8 text");
  });
});

describe("a saved plan", () => {
  it("takes the place of what stood there, and leaves nothing beside it", async () => {
    const plan = files.put("plan.json", "an older plan");
    const before = readdirSync(files.folder).length;
    const { code, error } = await runProgram(["compile", policy, "--out", plan]);
    expect({ code, error }).toEqual({ code: 0, error: `${plan}: the plan is saved\n` });
    expect(JSON.parse(readFileSync(plan, "utf8"))).toMatchObject({ kind: "plan" });
    expect(readdirSync(files.folder)).toHaveLength(before);
  });

  it("follows a link and leaves it a link", async () => {
    const target = files.put("target.json", "old");
    const link = `${files.folder}/link.json`;
    symlinkSync(target, link);
    expect((await runProgram(["compile", policy, "--out", link])).code).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(target, "utf8")).toContain('"plan"');
  });

  it("never takes the place of the policy itself, by whatever name", async () => {
    const own = files.put("own.yaml", POLICY_TEXT);
    const link = `${files.folder}/other-name.yaml`;
    symlinkSync(own, link);
    for (const path of [own, link]) {
      const { code, error } = await runProgram(["compile", own, "--out", path]);
      expect(code).toBe(2);
      expect(error).toContain("the plan was not saved: it would replace");
      expect(readFileSync(own, "utf8")).toBe(POLICY_TEXT);
    }
  });

  it("is not saved where it cannot be, and says why", async () => {
    mkdirSync(`${files.folder}/folder`);
    for (const [path, why] of [
      [`${files.folder}/folder`, "it is a folder"],
      [`${files.folder}/gone/plan.json`, "its folder does not exist"],
      ["/dev/null", "it is no ordinary file"],
    ] as const) {
      const { code, error } = await runProgram(["compile", policy, "--out", path]);
      expect({ code, error }).toEqual({ code: 2, error: `${path}: the plan was not saved: ${why}\n` });
    }
    expect(readdirSync(`${files.folder}/folder`)).toEqual([]);
  });

  it("is not saved where the policy has errors", async () => {
    const bad = files.put("bad-too.yaml", POLICY_TEXT.replace("instrument: dial", "instrument: dail"));
    const plan = `${files.folder}/never.json`;
    expect((await runProgram(["compile", bad, "--out", plan])).code).toBe(2);
    expect(readdirSync(files.folder)).not.toContain("never.json");
  });

  it.each([
    ["changed by hand", (text: string) => text.replace('"10 bar"', '"90 bar"'), /digest/],
    ["cut short", (text: string) => text.slice(0, -20), /the plan cannot be read: the JSON text ends too early/],
    [
      "with a key that stands twice",
      (text: string) => text.replace('"kind":"plan"', '"kind":"plan","kind":"plan"'),
      /`kind` stands twice/,
    ],
  ])("%s is refused and judges nothing", async (_, spoil, why) => {
    const plan = `${files.folder}/spoilt.json`;
    await runProgram(["compile", policy, "--out", plan]);
    const spoilt = spoil(readFileSync(plan, "utf8"));
    expect(spoilt).not.toBe(readFileSync(plan, "utf8"));
    const { code, out, error } = await runProgram(["evaluate", files.put("spoilt.json", spoilt), good]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(error).toMatch(why);
  });
});

describe("a parent", () => {
  const CHILD = POLICY_TEXT.replace("lowmere/leak-only", "lowmere/child").replace(
    "tenbar: 1\n",
    "tenbar: 1\nextends: ./policy.yaml\n",
  );

  it("is found beside the policy", async () => {
    expect((await runProgram(["compile", files.put("child.yaml", CHILD)])).code).toBe(0);
  });

  it.each([
    ["missing", "./gone.yaml", "there is no such file"],
    ["outside the folder", "./outside.yaml", "it lies outside the policy's folder"],
    ["a folder", "./parent-folder", "it is a folder"],
    ["not UTF-8", "./latin-parent.yaml", "it is not UTF-8 text"],
  ])("that is %s is an error with its reason", async (_, reference, why) => {
    const home = makeFolder();
    try {
      symlinkSync(policy, `${home.folder}/outside.yaml`);
      mkdirSync(`${home.folder}/parent-folder`);
      home.put("latin-parent.yaml", Buffer.from(`${POLICY_TEXT}# caf\xe9\n`, "latin1"));
      const child = home.put("child.yaml", CHILD.replace("./policy.yaml", reference));
      const { code, out } = await runProgram(["compile", child]);
      expect(code).toBe(2);
      expect(out.replaceAll(/\s+/g, " ")).toContain(why);
    } finally {
      home.remove();
    }
  });
});
