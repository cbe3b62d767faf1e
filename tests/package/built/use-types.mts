import { compilePolicy, evaluate, quantity } from "tenbar";
import { loadPolicy } from "tenbar/node";
import * as plan from "tenbar/plan";

const { policy, diagnostics } = compilePolicy("", { file: "case.yaml" });
export const verdict: "meets" | "refer" | "withdraw" | null | undefined =
  policy === undefined ? undefined : evaluate(policy, null).verdict;
export const codes: readonly string[] = diagnostics.map((diagnostic) => diagnostic.code);
export const text: string = quantity(290, "bar");
export const names: readonly unknown[] = [plan.evaluate, loadPolicy];

// @ts-expect-error a policy is compiled before it judges
evaluate("tenbar: 1", {});
// @ts-expect-error a file name is text
compilePolicy("", { file: 1 });
