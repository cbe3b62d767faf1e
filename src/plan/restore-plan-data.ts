import type { Plan } from "../model/index.js";
import { PLAN_FORMAT } from "../terms/index.js";
import { digestValue } from "./digest-plan.js";

/** A plan, or why the value is none that this version can judge with. */
export type RestoredPlan = { readonly plan: Plan } | { readonly problem: string };

/**
 * Takes back a plan that was saved as JSON. Its digest must fit its content: what was changed by hand or cut short is refused,
 * and so is the format of another version.
 */
export function restorePlanData(value: unknown): RestoredPlan {
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return { problem: "a plan is a JSON object" };
  const { kind, format, digest, positions, ...rest }: Readonly<Record<string, unknown>> = { ...value };
  if (kind !== "plan") return { problem: "this is no plan: `kind` is not `plan`" };
  if (format !== PLAN_FORMAT) {
    return { problem: `the plan has format ${JSON.stringify(format)}; this version judges with format ${PLAN_FORMAT}` };
  }
  if (typeof digest !== "string" || !isPositions(positions)) return { problem: "the plan is incomplete" };
  const found = digestValue({ kind, format, ...rest });
  if (found === undefined) return { problem: "the plan holds a value that JSON has no canonical form for" };
  if (found !== digest)
    return { problem: "the plan was changed after it was saved: its digest does not fit its content" };
  return { plan: asPlan({ ...value }) };
}

/** Positions stand outside the digest, so their shape is checked here. */
function isPositions(value: unknown): boolean {
  if (typeof value !== "object" || value === null || !("files" in value) || !("at" in value)) return false;
  const { files, at } = value;
  if (!Array.isArray(files) || !files.every((file) => typeof file === "string")) return false;
  if (typeof at !== "object" || at === null) return false;
  return Object.values(at).every(isPosition);
}

function isPosition(value: unknown): boolean {
  if (typeof value !== "object" || value === null || !("where" in value)) return false;
  return isSpot(value.where) && (!("limitAt" in value) || isSpot(value.limitAt));
}

function isSpot(value: unknown): boolean {
  return Array.isArray(value) && value.length === 3 && value.every((number) => Number.isInteger(number));
}

function asPlan(value: object): Plan {
  // Boundary: the digest of this library stands for the shape, which was checked when the plan was made.
  return value as Plan;
}
