import { compilePolicy, evaluate, quantity } from "tenbar";
import { german } from "tenbar/german";
import { loadPolicy } from "tenbar/node";
import * as plan from "tenbar/plan";

const { policy, diagnostics } = compilePolicy("", { file: "case.yaml" });
export const verdict: "meets" | "refer" | "withdraw" | null | undefined =
  policy === undefined ? undefined : evaluate(policy, null).verdict;
export const codes: readonly string[] = diagnostics.map((diagnostic) => diagnostic.code);
export const text: string = quantity(290, "bar");
export const names: readonly unknown[] = [plan.evaluate, loadPolicy];

export const said: readonly string[] = compilePolicy("", { words: german }).diagnostics.map(({ message }) => message);

// @ts-expect-error a policy is compiled before it judges
evaluate("tenbar: 1", {});
// @ts-expect-error a file name is text
compilePolicy("", { file: 1 });
// @ts-expect-error a language is a catalogue, not its name
compilePolicy("", { words: "de" });
