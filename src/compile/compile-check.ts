import type { CheckPlan, PolicyDocument } from "../model/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import { type CompiledStep, compileStep } from "../steps/index.js";
import { checkAfter } from "./check-after.js";
import { findIntervals } from "./compile-intervals.js";
import { compileScope } from "./compile-scope.js";
import { listRepeated } from "./list-repeated.js";
import { makeStepContext } from "./make-step-context.js";
import type { PlanContext } from "./plan-context.js";

type PolicyCheck = NonNullable<PolicyDocument["checks"]>[string];

/** Compiles one check with its steps; undefined where it cannot be used, which is then reported. */
export function compileCheck(name: string, check: PolicyCheck, context: PlanContext): CheckPlan | undefined {
  const { diagnostics, resolved, positions } = context;
  const pointer = `/checks/${name}`;
  const { steps = [], order } = check;
  if (steps.length === 0) {
    diagnostics.report("plan/no-steps", resolved.place(pointer, "key"), { check: name });
    return undefined;
  }
  if (order === undefined) diagnostics.report("plan/no-order", resolved.place(pointer, "key"), { check: name });
  checkNames(check, pointer, context);
  checkAfter(check, pointer, context);
  const compiled = steps.map((step, index) =>
    compileStep(step, makeStepContext(check, `${pointer}/steps/${index}`, context)),
  );
  const usable = compiled.filter((step) => step !== undefined);
  for (const step of usable) addPositions(name, step, context);
  if (check.competence !== undefined) {
    positions.add(`${name}//competence`, resolved.place(`${pointer}/competence`, "key"), undefined);
  }
  if (order !== undefined) positions.add(`${name}//order`, resolved.place(`${pointer}/order`, "key"), undefined);
  const scope = compileScope(check.for, `${pointer}/for`, context);
  const { competence, subject } = check;
  return {
    check: name,
    ...(check.title === undefined ? {} : { title: check.title }),
    formerly: [...(check.formerly ?? [])],
    ...(scope === undefined ? {} : { for: scope }),
    ...(subject === undefined
      ? {}
      : {
          subject:
            typeof subject === "string"
              ? { kind: subject, formerly: [] }
              : { kind: subject.kind, formerly: [...subject.formerly] },
        }),
    ...(competence === undefined
      ? {}
      : { competence: typeof competence === "string" ? [competence] : [...competence] }),
    order: typeof order === "object" ? order["listed-by"] : "any",
    steps: usable.map(({ plan }) => plan),
    intervals: findIntervals(check.intervals ?? [], `${pointer}/intervals`, context),
    rules: [],
    adoptions: [],
  };
}

/** No two steps share a name or a former name; of two that do, the one further down in the policy is reported. */
function checkNames(check: PolicyCheck, pointer: string, { diagnostics, resolved }: PlanContext): void {
  const repeated = listRepeated(
    listInTextOrder(check, pointer, resolved).flatMap(({ step: { step, formerly = [] }, at }) => [
      { name: step, place: resolved.place(`${at}/step`), at, isFormer: false },
      ...formerly.map((name, index) => ({
        name,
        place: resolved.place(`${at}/formerly/${index}`),
        at,
        isFormer: true,
      })),
    ]),
  );
  for (const { name, place, first, at, isFormer } of repeated) {
    // Why: the former names of a step that stands twice stand twice as well.
    if (isFormer && repeated.some((one) => one.at === at && !one.isFormer)) continue;
    const related = [{ message: diagnostics.words.related.otherOne, place: first }];
    diagnostics.report("plan/duplicate-step", place, { step: name }, related);
  }
}

/** A check's steps with their pointers: inherited ones, then the policy's own as they are written, wherever they are put. */
function listInTextOrder({ steps = [] }: PolicyCheck, pointer: string, resolved: ResolvedPolicy) {
  const own = resolved.place("/policy").source;
  const startOf = (at: string) => {
    const { source, span } = resolved.place(at);
    return source === own ? span.start : -1;
  };
  return steps
    .map((step, index) => ({ step, at: `${pointer}/steps/${index}` }))
    .map((one) => ({ ...one, start: startOf(one.at) }))
    .sort((one, other) => one.start - other.start);
}

function addPositions(check: string, { plan, requirements }: CompiledStep, { positions, resolved }: PlanContext): void {
  for (const { plan: requirement, askedAt, limitAt } of requirements) {
    const limit = limitAt === undefined ? undefined : resolved.place(limitAt, "value");
    positions.add(`${check}/${plan.step}/${requirement.name}`, resolved.place(askedAt, "key"), limit);
  }
}
