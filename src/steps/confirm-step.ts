import type { PolicyStep, StepPlanOf } from "../model/index.js";
import { STEP_RESULTS, weighConsequence } from "../terms/index.js";
import type { CompileContext, CompiledStep } from "./compile-context.js";
import { isMissing, type JsonObject } from "./json-value.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { PreparedStep } from "./prepared-step.js";
import { makeRow, type Row } from "./row.js";
import { sayPlainly } from "./row-words.js";
import { compileCommon, compilePlainRequirement, finishStep } from "./step-common.js";
import { RESULT_FIELD, type StepField } from "./step-field.js";
import type { StepSlots } from "./step-slots.js";

type ConfirmPlan = StepPlanOf<"confirm">;

const REFER = weighConsequence("refer");

/** A condition or a function is satisfactory. A defect with a consequence below `refer` is a warning. */
export function compileConfirm(
  step: Extract<PolicyStep, { kind: "confirm" }>,
  context: CompileContext,
): CompiledStep | undefined {
  const defects = Object.entries(step.defects ?? {}).map(([name, { consequence, title }]) => {
    if (weighConsequence(consequence) < REFER) {
      const place = context.place(`${context.pointer}/defects/${name}/consequence`);
      context.diagnostics.report("plan/mild-defect", place, { defect: name, consequence });
    }
    return { name, consequence, ...(title === undefined ? {} : { title }) };
  });
  const condition = compilePlainRequirement("condition", step, `${context.pointer}/step`, undefined, context);
  return finishStep(
    (requirements) => ({
      ...compileCommon(step),
      kind: "confirm",
      defects,
      attestable: step.attestable === true,
      requirements,
    }),
    [condition],
  );
}

export function prepareConfirm(plan: ConfirmPlan, requirements: readonly PreparedRequirement[]): PreparedStep {
  const [condition] = requirements;
  if (condition === undefined) throw new Error(`${plan.step} has no requirement`);
  const defects = new Map(plan.defects.map((defect) => [defect.name, defect]));
  return {
    plan,
    requirements,
    evidenceKeys: new Set(["result", "defect"]),
    judge(entry, _member, context, rows) {
      const row = judgeCondition(condition, entry ?? {}, defects);
      if (row.undecidedFor === "missing" && plan.attestable && context.isAttested(plan.step)) {
        row.outcome = "within";
        row.undecidedFor = undefined;
        row.attested = true;
      }
      rows.push(row);
    },
    describe(row, entry, _member, _context, words) {
      const result = typeof entry?.result === "string" ? entry.result : undefined;
      const observed =
        row.details?.defect ??
        (row.undecidedFor === "unreadable" && entry?.defect === false ? "defect: false" : result);
      return sayPlainly(observed, words.satisfactory);
    },
  };
}

/**
 * A defect stands whatever `result` says beside it; named ones weigh what the policy says, others at least `refer`, as does
 * `not-done`. A word outside the closed list might be bad news and weighs at least `refer` too, as does `false` in place of a
 * defect's name, which neither names a defect nor is evidence that there is none.
 */
function judgeCondition(
  condition: PreparedRequirement,
  entry: JsonObject,
  defects: ReadonlyMap<string, ConfirmPlan["defects"][number]>,
): Row {
  const { result, defect } = entry;
  if (defect === false && result !== "defect") {
    const row = makeRow(condition, "undecided", "unreadable");
    row.leastWeight = REFER;
    return row;
  }
  if (!isMissing(defect) || result === "defect") {
    const row = makeRow(condition, "outside");
    const name = typeof defect === "string" ? defect.trim() : "";
    const named = defects.get(name);
    if (named === undefined) row.leastWeight = REFER;
    else row.consequence = named.consequence;
    row.details = { defect: name === "" ? "defect" : name };
    return row;
  }
  if (isMissing(result)) return makeRow(condition, "undecided", "missing");
  if (result === "satisfactory") return makeRow(condition, "within");
  const row = makeRow(
    condition,
    "undecided",
    result === "not-done" ? "not-done" : typeof result === "string" ? "unknown-word" : "unreadable",
  );
  row.leastWeight = REFER;
  if (typeof result === "string") row.details = { recorded: result, wanted: STEP_RESULTS.join(", ") };
  return row;
}

export function listConfirmSlots(): StepSlots {
  return { defect: { kind: "text" } };
}

export function listConfirmFields({ defects }: ConfirmPlan): readonly StepField[] {
  const words = defects.map(({ name }) => name);
  return [
    RESULT_FIELD,
    words.length === 0 ? { key: "defect", type: "text" } : { key: "defect", type: "choice", words },
  ];
}
