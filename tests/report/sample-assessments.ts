import { type Assessment, compilePolicy, evaluate, type Policy } from "../../src/index.js";
import { makeRecord, POLICY_TEXT } from "../cli/sample-policy.js";

/** The sample policy, its text changed as a test needs it. */
export function compileSample(change: (text: string) => string = (text) => text): Policy {
  const { policy, diagnostics } = compilePolicy(change(POLICY_TEXT), { file: "lowmere.yaml" });
  if (policy === undefined) throw new Error(diagnostics.map(({ message }) => message).join("; "));
  return policy;
}

export function assessSample(options: Parameters<typeof makeRecord>[0], policy: Policy = compileSample()): Assessment {
  return evaluate(policy, makeRecord(options));
}
