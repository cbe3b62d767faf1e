import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { german } from "../../src/german.js";
import { type Assessment, compilePolicy, describeCheck, evaluate, type Form, type Policy } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";

interface Case {
  readonly policy: string;
  readonly record: string;
}

const policies = new Map<string, Policy>();

async function findPolicy(path: string): Promise<Policy> {
  const known = policies.get(path);
  if (known !== undefined) return known;
  const { policy } = await loadPolicy(path);
  if (policy === undefined) throw new Error(`${path} does not compile`);
  policies.set(path, policy);
  return policy;
}

/** What is seen where no plain figure or word of the record is: it is said in words. */
const IN_WORDS = /^did not occur$|^at most | to /;
const OPEN_END = /^(?:any day|further notice)$/;

/** An assessment without its sentences; `twin` is the English one, by which texts in words are told from those of the record. */
function keepData(assessment: Assessment, twin: Assessment) {
  const isPlain = (observed: string | undefined) => observed !== undefined && !IN_WORDS.test(observed);
  return {
    ...assessment,
    results: assessment.results.map(({ accept, observed, ...result }, index) => ({
      ...result,
      hasAccept: accept !== undefined,
      observed: isPlain(twin.results[index]?.observed) ? observed : observed !== undefined,
    })),
    findings: assessment.findings.map(({ message, params, ...finding }, index) => {
      const { accept, observed, ...others } = params;
      const own = Object.entries(others).filter(([name]) => !OPEN_END.test(twin.findings[index]?.params[name] ?? ""));
      const seen = isPlain(twin.findings[index]?.params["observed"]) ? observed : observed !== undefined;
      return { ...finding, params: Object.fromEntries(own), hasAccept: accept !== undefined, seen };
    }),
    problems: assessment.problems?.map(({ pointer }) => pointer),
  };
}

function keepFormData(form: Form | undefined) {
  return {
    ...form,
    steps: form?.steps.map((step) => ({
      ...step,
      asked: step.asked.map(({ part, limits }) => ({
        part,
        limits: limits.map(({ accept, ...limit }) => ({ ...limit, hasAccept: accept !== undefined })),
      })),
    })),
  };
}

const names = readdirSync("tests/cases");
const readCase = (name: string): Case => JSON.parse(readFileSync(`tests/cases/${name}/case.json`, "utf8"));
const readRecord = (path: string): { readonly subject?: Readonly<Record<string, unknown>> } =>
  JSON.parse(readFileSync(path, "utf8"));

describe("a language", () => {
  it.each(names)("changes only the sentences of %s", async (name) => {
    const one = readCase(name);
    const policy = await findPolicy(one.policy);
    const record = readRecord(one.record);
    for (const partial of [false, true]) {
      const inEnglish = evaluate(policy, record, { partial, digest: true });
      const inGerman = evaluate(policy, record, { partial, digest: true, words: german });
      expect(keepData(inGerman, inEnglish)).toEqual(keepData(inEnglish, inEnglish));
      expect(inGerman.findings.map(({ fingerprint }) => fingerprint)).toEqual(
        inEnglish.findings.map(({ fingerprint }) => fingerprint),
      );
      const messages = new Set(inEnglish.findings.map(({ message }) => message));
      for (const { message } of inGerman.findings) expect(messages.has(message)).toBe(false);
      // What was said before in another language leaves no trace.
      expect(evaluate(policy, record, { partial, digest: true })).toEqual(inEnglish);
    }
  });

  it("changes only the limits in words of a form", async () => {
    const policy = await findPolicy("examples/lowmere/policy.yaml");
    const { subject = {} } = readRecord("examples/lowmere/records/lowmere-clean.json");
    for (const { check } of policy.plan.checks) {
      const inEnglish = describeCheck(policy, check, subject, { at: "2026-04-14" });
      const inGerman = describeCheck(policy, check, subject, { at: "2026-04-14", words: german });
      expect(keepFormData(inGerman)).toEqual(keepFormData(inEnglish));
      expect(JSON.stringify(inGerman)).not.toMatch(/at (least|most) \d/);
    }
  });

  it("changes nothing in a plan", () => {
    const text = readFileSync("policies/common-practice/open-circuit.yaml", "utf8");
    const digests = [undefined, german].map((words) => compilePolicy(text, { words }).policy?.plan.digest);
    expect(digests[0]).toMatch(/^sha256:/);
    expect(digests[1]).toBe(digests[0]);
  });
});
