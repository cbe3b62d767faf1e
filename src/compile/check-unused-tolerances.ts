import type { PolicyDocument } from "../model/index.js";
import { DIMENSIONS, type Dimension, mendQuantity, parseQuantity } from "../quantities/index.js";
import { compileToleranceUse } from "../steps/index.js";
import { makeStepContext } from "./make-step-context.js";
import type { PlanContext } from "./plan-context.js";

type PolicyTolerance = NonNullable<PolicyDocument["tolerances"]>[string];

/**
 * Checks the limits of tolerances that no step uses, whose mistakes nothing else would show. What they measure is taken from
 * their own units.
 */
export function checkUnusedTolerances(context: PlanContext): void {
  const checks = Object.values(context.resolved.document.checks ?? {});
  const used = new Set(checks.flatMap(({ steps = [] }) => steps.flatMap(listTexts)));
  for (const [name, { document, pointer }] of context.tolerances) {
    if (used.has(name)) continue;
    const dimension = findDimension(document, context);
    if (dimension === undefined) continue;
    const stepContext = makeStepContext({}, pointer, context);
    compileToleranceUse(
      "level",
      name,
      "accept",
      dimension,
      { consequence: undefined, basis: document.basis },
      stepContext,
    );
  }
}

/** The first dimension in which a limit can be read, or could with its slip mended. */
function findDimension(document: PolicyTolerance, { factTypes }: PlanContext): Dimension | undefined {
  const texts = listTexts([document.accept, document.cases?.map(({ accept }) => accept), document["accept-by"]?.rows]);
  for (const text of texts) {
    const fact = / of ([a-z][a-z0-9-]*)$/.exec(text)?.[1];
    const type = fact === undefined ? undefined : factTypes.get(fact);
    if (type?.kind === "quantity") return type.dimension;
  }
  const reads = (text: string, dimension: Dimension): boolean => {
    const parsed = parseQuantity(text, dimension);
    if (parsed.ok || parsed.fault === "no-unit") return parsed.ok;
    return parseQuantity(mendQuantity(text, dimension), dimension).ok;
  };
  return DIMENSIONS.find((dimension) => texts.some((text) => reads(text, dimension)));
}

function listTexts(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(listTexts);
}
