import { readdirSync, readFileSync } from "node:fs";
import { type Assessment, evaluate, type Policy } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";

/** An assessment of a record of the cases, the record's own time, and where the record stands. */
export interface CaseAssessment {
  readonly name: string;
  readonly at: string | undefined;
  readonly assessment: Assessment;
}

/** Every record of the cases under its policy; and a record that is none, and one whose steps are no list. */
export async function assessCases(): Promise<readonly CaseAssessment[]> {
  const cases = readdirSync("tests/cases").map((name) => {
    const { policy, record }: { policy: string; record: string } = JSON.parse(
      readFileSync(`tests/cases/${name}/case.json`, "utf8"),
    );
    return { name, policy, record: JSON.parse(readFileSync(record, "utf8")) };
  });
  const policy = "policies/common-practice/open-circuit.yaml";
  const broken = [null, 5, [], {}, { tenbar: 1, id: "lm9-1", check: "daily", at: "soon", subject: {}, steps: 1 }];
  const all = [...cases, ...broken.map((record, index) => ({ name: `broken ${index}`, policy, record }))];
  const paths = [...new Set(all.map((one) => one.policy))];
  const policies = new Map(await Promise.all(paths.map(async (path) => [path, await load(path)] as const)));
  return all.map(({ name, policy: path, record }) => assess(name, policies.get(path), record));
}

async function load(path: string): Promise<Policy> {
  const { policy } = await loadPolicy(path);
  if (policy === undefined) throw new Error(`${path} does not compile`);
  return policy;
}

function assess(name: string, policy: Policy | undefined, record: unknown): CaseAssessment {
  if (policy === undefined) throw new Error(`${name} has no policy`);
  const at = typeof record === "object" && record !== null && "at" in record ? record.at : undefined;
  const assessment = evaluate(policy, record, { digest: true });
  return { name, at: typeof at === "string" ? at : undefined, assessment };
}
