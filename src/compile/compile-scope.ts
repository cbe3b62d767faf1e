import type { PolicyDocument, ScopePlan } from "../model/index.js";
import { findNearest } from "../terms/index.js";
import { findNearestFact, listTextFacts } from "./compile-facts.js";
import type { PlanContext } from "./plan-context.js";

/** Facts and the values that they may have; reports a fact that is not known, and a value that it cannot have. */
export function compileScope(
  scope: PolicyDocument["for"],
  pointer: string,
  { resolved, diagnostics, factTypes }: Pick<PlanContext, "resolved" | "diagnostics" | "factTypes">,
): ScopePlan | undefined {
  if (scope === undefined) return undefined;
  const facts = listTextFacts(factTypes);
  return Object.fromEntries(
    Object.entries(scope).map(([fact, given]) => {
      const values = typeof given === "string" ? [given] : [...given];
      const words = facts.get(fact);
      if (!facts.has(fact)) {
        diagnostics.report("plan/unknown-name", resolved.place(`${pointer}/${fact}`, "key"), {
          thing: "text fact",
          name: fact,
          known: [...facts.keys()],
          nearest: findNearestFact(fact, factTypes),
        });
      }
      values.forEach((value, index) => {
        if (words === undefined || words.includes(value)) return;
        const at = typeof given === "string" ? `${pointer}/${fact}` : `${pointer}/${fact}/${index}`;
        diagnostics.report("plan/unknown-name", resolved.place(at), {
          thing: `value of \`${fact}\``,
          name: value,
          known: words,
          nearest: findNearest(value, words),
        });
      });
      return [fact, values];
    }),
  );
}
