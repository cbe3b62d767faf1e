import type { IntervalPlan, PolicyDocument } from "../model/index.js";
import { parseCalendarSpan } from "../quantities/index.js";
import { findNearest } from "../terms/index.js";
import { compileScope } from "./compile-scope.js";
import type { PlanContext } from "./plan-context.js";

/** Every interval of the policy by name; a span that is none is reported. */
export function compileIntervals(context: PlanContext): ReadonlyMap<string, IntervalPlan> {
  const entries = Object.entries(context.resolved.document.intervals ?? {});
  return new Map(entries.map(([name, interval]) => [name, compileInterval(name, interval, context)]));
}

type PolicyInterval = NonNullable<PolicyDocument["intervals"]>[string];

function compileInterval(name: string, interval: PolicyInterval, context: PlanContext): IntervalPlan {
  const { diagnostics, resolved, positions } = context;
  const pointer = `/intervals/${name}`;
  const { of, every, counted, date, forbids, consequence = "withdraw", basis } = interval;
  if (parseCalendarSpan(every) === undefined) {
    diagnostics.report("plan/bad-span", resolved.place(`${pointer}/every`), { found: every });
  }
  positions.add(`interval/${name}`, resolved.place(pointer, "key"), resolved.place(`${pointer}/every`));
  const scope = compileScope(interval.for, `${pointer}/for`, context);
  return {
    interval: name,
    of,
    ...(scope === undefined ? {} : { for: scope }),
    every,
    counted,
    date,
    ...(forbids === undefined ? {} : { forbids }),
    requirement: { name: "due", consequence, basis },
    adoptions: [],
  };
}

/** The intervals that a check judges too. */
export function findIntervals(
  names: readonly string[],
  pointer: string,
  { diagnostics, resolved, intervals }: PlanContext,
): IntervalPlan[] {
  return names.flatMap((name, index) => {
    const found = intervals.get(name);
    if (found !== undefined) return [{ ...found, adoptions: [] }];
    const known = [...intervals.keys()];
    diagnostics.report("plan/unknown-name", resolved.place(`${pointer}/${index}`), {
      thing: "interval",
      name,
      known,
      nearest: findNearest(name, known),
    });
    return [];
  });
}
