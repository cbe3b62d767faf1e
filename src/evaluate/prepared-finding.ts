import type { Finding, Plan } from "../model/index.js";
import type { PreparedRequirement } from "../steps/index.js";
import { joinAsked } from "./fingerprint.js";
import { findPositions, type Positions } from "./positions.js";

export type FindingOutcome = NonNullable<Finding["outcome"]>;

/** What every finding about one requirement has, whatever the record. */
export interface PreparedFinding {
  readonly positions: Positions;
  readonly of: Readonly<Record<FindingOutcome, DecidedFinding>>;
}

/** What findings have in common that are about one requirement and have one outcome. */
interface DecidedFinding {
  readonly code: string;
  /** The part of the fingerprint that the policy gives. */
  readonly asked: string;
}

/** What findings of each requirement of a plan have in common, made when a record first needs it. */
export function createFindingReader(plan: Plan): (requirement: PreparedRequirement) => PreparedFinding {
  const known = new Map<PreparedRequirement, PreparedFinding>();
  return (requirement) => {
    const before = known.get(requirement);
    if (before !== undefined) return before;
    const prepared = prepareFinding(requirement, plan);
    known.set(requirement, prepared);
    return prepared;
  };
}

function prepareFinding(requirement: PreparedRequirement, plan: Plan): PreparedFinding {
  const { kind, name, step, label, key } = requirement;
  const decide = (outcome: FindingOutcome): DecidedFinding => {
    const code = `${kind}/${name}-${outcome}`;
    return { code, asked: joinAsked(step ?? label, name, code) };
  };
  const of = { caution: decide("caution"), outside: decide("outside"), undecided: decide("undecided") };
  return { positions: findPositions(plan, key), of };
}
