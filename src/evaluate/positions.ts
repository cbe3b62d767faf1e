import type { Finding, Plan } from "../model/index.js";

type Positions = Pick<Finding, "where" | "limitAt">;

/** Where the policy asks for a requirement, and where it states its limit; nothing for a plan without positions. */
export function findPosition(plan: Plan, key: string): Positions {
  const known = Object.hasOwn(plan.positions.at, key) ? plan.positions.at[key] : undefined;
  if (known === undefined) return {};
  const where = readSpot(plan, known.where);
  const limitAt = known.limitAt === undefined ? undefined : readSpot(plan, known.limitAt);
  return { ...(where === undefined ? {} : { where }), ...(limitAt === undefined ? {} : { limitAt }) };
}

function readSpot(plan: Plan, [fileNumber, line, column]: readonly [number, number, number]): Positions["where"] {
  const file = plan.positions.files[fileNumber];
  return file === undefined ? undefined : { file, line, column };
}
