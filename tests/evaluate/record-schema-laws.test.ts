import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate, recordSchema } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";
import { replaceAt, walkLeaves } from "../laws/evidence-path.js";
import { countRuns } from "../laws/run-count.js";

const { policy } = await loadPolicy("policies/common-practice/open-circuit.yaml");
if (policy === undefined) throw new Error("the shipped policy does not compile");

const ajv = new Ajv2020({ strict: false });
const validate = ajv.compile(recordSchema(policy, "daily") ?? false);

const records = readdirSync("examples/records")
  .map((file) => JSON.parse(readFileSync(`examples/records/${file}`, "utf8")))
  .filter(({ check }) => check === "daily");

const spoiler = fc.oneof(
  fc.jsonValue({ maxDepth: 1 }),
  fc.constantFrom<unknown>(
    "280 bar",
    "280bar",
    "5,5 bar",
    "9999999.99999999 bar",
    "99999999999 bar",
    "-0 bar",
    "0.00000001 bar",
    "1 h",
    "2026-02-30",
    "2026-02",
    "2026-04-12T07:00:60Z",
    "2026-04-12T24:00:00Z",
    "2026-04-12T07:00:00+23:59",
    "satisfactory",
    "60 s",
    "1 min",
    "5.95 m",
  ),
);

describe("the schema of a check's records", () => {
  it("accepts the clean samples", () => {
    const clean = records.filter(
      (record) => evaluate(policy, record).findings.length === 0 && evaluate(policy, record).judged,
    );
    expect(clean.length).toBeGreaterThan(2);
    for (const record of clean) expect(validate(record), ajv.errorsText(validate.errors)).toBe(true);
  });

  it("accepts nothing that is judged unreadable, and refuses nothing that passes without a note", () => {
    const seen = { accepted: 0, refused: 0 };
    fc.assert(
      fc.property(fc.constantFrom(...records), fc.nat(), spoiler, (record, pick, value) => {
        const paths = [...walkLeaves(record)];
        const changed = replaceAt(record, paths[pick % paths.length] ?? [], value);
        const assessment = evaluate(policy, changed);
        if (validate(changed)) {
          seen.accepted += 1;
          expect(assessment.results.filter(({ reason }) => reason === "unreadable")).toEqual([]);
          expect(assessment.judged).toBe(true);
        } else {
          seen.refused += 1;
          if (assessment.judged)
            expect(assessment.findings.length, JSON.stringify([paths[pick % paths.length], value])).toBeGreaterThan(0);
        }
      }),
      { numRuns: countRuns(7500) },
    );
    expect(seen.accepted).toBeGreaterThan(100);
    expect(seen.refused).toBeGreaterThan(100);
  });

  it("is a schema of patterns that every validator reads, in every shipped policy", async () => {
    const folder = "policies/common-practice";
    for (const file of readdirSync(folder)) {
      const { policy: shipped } = await loadPolicy(`${folder}/${file}`);
      const checks = shipped?.plan.checks ?? [];
      expect(checks.length).toBeGreaterThan(0);
      if (shipped === undefined) continue;
      for (const { check } of checks)
        expect(() => new Ajv2020({ strict: false }).compile(recordSchema(shipped, check) ?? {})).not.toThrow();
    }
  });
});
