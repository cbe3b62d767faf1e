import type { Finding, Plan } from "../model/index.js";

type Spot = NonNullable<Finding["where"]>;

/** Where the policy asks for a requirement, and where it states its limit. */
export interface Positions {
  readonly where: Spot | undefined;
  readonly limitAt: Spot | undefined;
}

const NOWHERE: Positions = { where: undefined, limitAt: undefined };

/** Nothing for a plan without positions. */
export function findPositions(plan: Plan, key: string): Positions {
  const known = Object.hasOwn(plan.positions.at, key) ? plan.positions.at[key] : undefined;
  if (known === undefined) return NOWHERE;
  return {
    where: readSpot(plan, known.where),
    limitAt: known.limitAt === undefined ? undefined : readSpot(plan, known.limitAt),
  };
}

function readSpot(plan: Plan, [fileNumber, line, column]: readonly [number, number, number]): Spot | undefined {
  const file = plan.positions.files[fileNumber];
  return file === undefined ? undefined : { file, line, column };
}

/** Adds the positions to a finding, which gets them as its own. */
export function addPositions(finding: Partial<Finding>, { where, limitAt }: Positions): void {
  if (where !== undefined) finding.where = copySpot(where);
  if (limitAt !== undefined) finding.limitAt = copySpot(limitAt);
}

function copySpot({ file, line, column }: Spot): Spot {
  return { file, line, column };
}
