import type { PolicyDocument } from "../model/index.js";
import { findNearest } from "../terms/index.js";
import type { PlanContext } from "./plan-context.js";

type PolicyCheck = NonNullable<PolicyDocument["checks"]>[string];

/** `after` names steps of the same check, in no circle, and none that a listed order puts behind. */
export function checkAfter(check: PolicyCheck, pointer: string, { diagnostics, resolved }: PlanContext): void {
  const steps = check.steps ?? [];
  const names = steps.map(({ step }) => step);
  const afterOf = new Map(steps.map(({ step, after = [] }) => [step, after]));
  steps.forEach(({ step, after = [] }, index) => {
    after.forEach((name, position) => {
      const place = resolved.place(`${pointer}/steps/${index}/after/${position}`);
      const circle = findCircle(step, name, afterOf);
      if (!names.includes(name)) {
        const nearest = findNearest(name, names);
        diagnostics.report("plan/unknown-name", place, { thing: "step of this check", name, known: names, nearest });
      } else if (circle !== undefined) {
        diagnostics.report("plan/step-before-itself", place, { steps: circle });
      } else if (check.order !== "any" && names.indexOf(name) > index) {
        diagnostics.report("plan/after-later-step", place, { step, after: name });
      }
    });
  });
}

/** The steps from `name` back to `step` by way of `after`, where there is such a way; each step is visited once. */
function findCircle(
  step: string,
  name: string,
  afterOf: ReadonlyMap<string, readonly string[]>,
): readonly string[] | undefined {
  const visited = new Map<string, readonly string[]>([[name, [step, name]]]);
  for (const [current, path] of visited) {
    if (current === step) return path;
    for (const next of afterOf.get(current) ?? []) {
      if (!visited.has(next)) visited.set(next, [...path, next]);
    }
  }
  return undefined;
}
