import type { IntervalPlan } from "../model/index.js";
import { weighConsequence } from "../terms/index.js";
import { relateSpans } from "./relate-steps.js";
import { joinRelations, type Relation, relateFixed, relateNumbers } from "./relation.js";

/** How an interval stands to the parent's of the same name. A change of what it counts, and from when, can work either way. */
export function relateIntervals(parent: IntervalPlan, child: IntervalPlan): Relation {
  const fixed = ({ of, for: scope, counted, date }: IntervalPlan) => [of, scope, counted, date];
  return joinRelations([
    relateFixed(fixed(parent), fixed(child)),
    relateSpans(parent.every, child.every),
    relateNumbers(weighConsequence(parent.requirement.consequence), weighConsequence(child.requirement.consequence)),
  ]);
}
