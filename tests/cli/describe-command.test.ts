import { afterAll, describe, expect, it } from "vitest";
import { makeFolder, runProgram } from "./run-in-process.js";
import { POLICY_TEXT } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const subject = files.put("subject.json", '{ "kind": "set", "id": "S-014" }');

describe("describe and schema", () => {
  it("print JSON", async () => {
    const form = await runProgram(["describe", policy, "daily", "--subject", subject]);
    expect({ ...form, out: JSON.parse(form.out) }).toMatchObject({ code: 0, error: "", out: { check: "daily" } });
    const schema = await runProgram(["schema", policy, "daily"]);
    expect(JSON.parse(schema.out)).toHaveProperty("$schema", "https://json-schema.org/draft/2020-12/schema");
  });

  it("name the check that was probably meant, else those there are", async () => {
    const near = await runProgram(["describe", policy, "dayly"]);
    expect(near).toEqual({
      code: 2,
      out: "",
      error: "the policy has no check `dayly`; it has daily; did you mean `daily`?\n",
    });
    const far = await runProgram(["schema", policy, "yearly-overhaul"]);
    expect(far).toEqual({ code: 2, out: "", error: "the policy has no check `yearly-overhaul`; it has daily\n" });
  });

  it.each([
    ["no object", "[]", "a subject is a JSON object"],
    ["a whole record", '{"tenbar":1,"subject":{"kind":"set","id":"S-014"},"steps":[]}', "it holds a whole record"],
    ["no JSON", "{", "the JSON text ends too early"],
    ["an object with a key twice", '{"id":"a","id":"b"}', "the key `id` stands twice in one object"],
  ])("refuse a subject that is %s", async (_, text, message) => {
    const { code, out, error } = await runProgram([
      "describe",
      policy,
      "daily",
      "--subject",
      files.put("bad.json", text),
    ]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(error).toContain(`bad.json: ${message}`);
  });

  it("say what applies on a day and at a station", async () => {
    const readSteps = async (...words: string[]): Promise<readonly string[]> => {
      const { code, out } = await runProgram(["describe", "examples/lowmere/policy.yaml", "daily", ...words]);
      expect(code).toBe(0);
      return JSON.parse(out).steps.map(({ step, reason }: Record<string, string>) => `${step} ${reason ?? ""}`);
    };
    const lapsed = "telemetry omitted-by-adoption";
    expect(await readSteps("--at", "2026-05-10", "--station", "Lowmere 3")).toContain(lapsed);
    expect(await readSteps("--at", "2026-05-10T07:04:00+01:00", "--station", "Lowmere 3")).toContain(lapsed);
    expect(await readSteps("--at", "2026-05-10", "--station", "Lowmere 4")).not.toContain(lapsed);
    expect(await readSteps("--at", "2026-05-30", "--station", "Lowmere 3")).not.toContain(lapsed);
    expect(await readSteps("--station", "Lowmere 3")).not.toContain(lapsed);
  });

  const NAMES = "`Lowmere 3`, `Lowmere 4`";
  const DAYLESS = "note: no adoption applies without `--at`, and none of the station either\n";

  it.each([
    ["Lowmere 3", ["--at", "2026-05-10"], ""],
    ["Lowmere 3", [], DAYLESS],
    [
      "Lowmere3",
      ["--at", "2026-05-10"],
      `note: the policy says nothing of a station \`Lowmere3\`; it names ${NAMES}; did you mean \`Lowmere 3\`?\n`,
    ],
    [
      "Highmoor",
      ["--at", "2026-05-10"],
      `note: the policy says nothing of a station \`Highmoor\`; it names ${NAMES}\n`,
    ],
  ])("tell of a station %s that changes nothing", async (station, words, told) => {
    const given = ["describe", "examples/lowmere/policy.yaml", "daily", "--station", station, ...words];
    const { code, error } = await runProgram(given);
    expect({ code, error }).toEqual({ code: 0, error: told });
  });

  it("tell of a station where the policy names none", async () => {
    const { code, error } = await runProgram([
      "describe",
      policy,
      "daily",
      "--at",
      "2026-05-10",
      "--station",
      "Lowmere 3",
    ]);
    expect({ code, error }).toEqual({ code: 0, error: "note: nothing in the policy depends on a station\n" });
  });

  it.each(["today", "2026-02-30", "2026-05", "12.04.2026"])("refuse a time such as %s", async (at) => {
    const { code, out, error } = await runProgram(["describe", policy, "daily", "--at", at]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(error).toBe(`\`--at ${at}\` is no time such as 2026-04-12 or 2026-04-12T07:04:00+01:00\n`);
  });

  it("read standard input once", async () => {
    const { code, error } = await runProgram(["describe", "-", "daily", "--subject", "-"], { input: POLICY_TEXT });
    expect(code).toBe(2);
    expect(error).toContain("named twice");
  });
});
