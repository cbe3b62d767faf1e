import type { PolicyDocument } from "../model/index.js";
import type { CompileContext } from "../steps/index.js";
import { findNearest } from "../terms/index.js";
import { compileScope } from "./compile-scope.js";
import type { PlanContext } from "./plan-context.js";

type PolicyCheck = NonNullable<PolicyDocument["checks"]>[string];

/** What the compile half of one step may know; `pointer` is the step's place in the document. */
export function makeStepContext(
  { consequence }: Pick<PolicyCheck, "consequence">,
  pointer: string,
  context: PlanContext,
): CompileContext {
  return {
    diagnostics: context.diagnostics,
    tolerances: context.tolerances,
    instruments: context.instruments,
    factTypes: context.factTypes,
    checkConsequence: consequence ?? "withdraw",
    pointer,
    place: context.resolved.place,
    scope: (scope, at) => compileScope(scope, at, context) ?? {},
    nearest: findNearest,
  };
}
