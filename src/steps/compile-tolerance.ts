import type { PolicyBounds, PolicyTolerance, RequirementPlan, TolerancePlan } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";
import type { Consequence, RequirementName } from "../terms/index.js";
import { compileBand, compileCases, compileLimitPair, compileRows } from "./compile-bands.js";
import type { CompileContext, CompiledRequirement } from "./compile-context.js";

type InlineTolerance = Omit<PolicyTolerance, "basis" | "title">;
type Basis = RequirementPlan["basis"];

interface StepLimit extends PolicyBounds {
  readonly consequence?: Consequence | undefined;
}

/** What the requirements of one step share. */
export interface StepDefaults {
  readonly consequence: Consequence | undefined;
  readonly basis: Basis;
}

/**
 * Compiles a requirement that refers to a tolerance by name, or states one in the step.
 *
 * Consequence: the step's own, else the tolerance's, else the check's.
 */
export function compileToleranceUse(
  name: RequirementName,
  use: string | InlineTolerance,
  key: string,
  dimension: Dimension,
  defaults: StepDefaults,
  context: CompileContext,
): CompiledRequirement | undefined {
  const askedAt = `${context.pointer}/${key}`;
  const found = typeof use === "string" ? findTolerance(use, askedAt, context) : undefined;
  if (typeof use === "string" && found === undefined) return undefined;
  const document: InlineTolerance = typeof use === "string" ? (found?.document ?? {}) : use;
  const pointer = found?.pointer ?? askedAt;
  const basis: Basis = found === undefined ? defaults.basis : found.document.basis;
  if (found === undefined && basis === undefined) reportNoBasis(askedAt, context);
  const limits = compileLimits(document, pointer, dimension, context);
  if (limits === undefined) return undefined;
  const tolerance: TolerancePlan = {
    ...(typeof use === "string" ? { name: use } : {}),
    quantity: dimension,
    ...limits,
    comparison: "as-read",
  };
  const consequence = defaults.consequence ?? document.consequence ?? context.checkConsequence;
  return {
    plan: { name, consequence, tolerance, ...(basis === undefined ? {} : { basis }) },
    askedAt,
    limitAt: `${pointer}/${LIMIT_KEYS.find((key) => document[key] !== undefined) ?? "accept"}`,
  };
}

const LIMIT_KEYS = ["accept", "cases", "accept-by"] as const;

type Limits = Pick<TolerancePlan, "bands" | "by" | "byQuantity">;

/** One of `accept`, `cases` and `accept-by`. */
function compileLimits(
  document: InlineTolerance,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): Limits | undefined {
  const given = LIMIT_KEYS.filter((key) => document[key] !== undefined);
  if (given.length > 1) {
    context.diagnostics.report("plan/needs-one-of", context.place(pointer), { keys: LIMIT_KEYS, given });
    return undefined;
  }
  if (document.cases !== undefined) return compileCases(document.cases, `${pointer}/cases`, dimension, context);
  if (document["accept-by"] !== undefined) {
    return compileRows(document["accept-by"], `${pointer}/accept-by`, dimension, context);
  }
  if (document.accept === undefined) {
    context.diagnostics.report("plan/no-accept", context.place(pointer), {});
    return undefined;
  }
  const band = compileLimitPair(document, pointer, dimension, context);
  return band === undefined ? undefined : { bands: [band] };
}

function findTolerance(name: string, pointer: string, context: CompileContext) {
  const found = context.tolerances.get(name);
  if (found === undefined) {
    const known = [...context.tolerances.keys()];
    context.diagnostics.report("plan/unknown-name", context.place(pointer), {
      thing: "tolerance",
      name,
      known,
      nearest: context.nearest(name, known),
    });
  }
  return found;
}

/** Compiles a limit written in the step, such as `start` or `apart`, which takes the step's basis. */
export function compileStepLimit(
  name: RequirementName,
  limit: StepLimit,
  dimension: Dimension,
  consequence: Consequence,
  defaults: StepDefaults,
  context: CompileContext,
): CompiledRequirement | undefined {
  const askedAt = `${context.pointer}/${name}`;
  if (defaults.basis === undefined) reportNoBasis(askedAt, context);
  const { consequence: own, ...bounds } = limit;
  const band = compileBand({ bounds, pointer: askedAt }, undefined, dimension, context);
  if (band === undefined) return undefined;
  return {
    plan: {
      name,
      consequence: own ?? consequence,
      tolerance: { quantity: dimension, bands: [band], comparison: "as-read" },
      ...(defaults.basis === undefined ? {} : { basis: defaults.basis }),
    },
    askedAt,
    limitAt: askedAt,
  };
}

function reportNoBasis(pointer: string, context: CompileContext): void {
  context.diagnostics.report("plan/no-basis", context.place(pointer, "key"), {});
}
