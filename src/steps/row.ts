import type { AdoptionStanding } from "../model/index.js";
import type { Unit } from "../quantities/index.js";
import {
  type Consequence,
  type NotApplicableReason,
  type Outcome,
  type UndecidedReason,
  weighConsequence,
} from "../terms/index.js";
import type { RemarkCode } from "../words/index.js";
import { firstReason } from "./first-reason.js";
import type { PreparedRequirement } from "./prepared-requirement.js";

/** What became of one requirement in one record: the kernel's output, from which words are made later. */
export interface Row {
  readonly requirement: PreparedRequirement;
  outcome: Outcome;
  /** Why, where undecided. */
  undecidedFor: UndecidedReason | undefined;
  /** Why, where not applicable. */
  notApplicableFor: NotApplicableReason | undefined;
  /** What failing weighs here: the requirement's consequence, or that of the defect found. */
  consequence: Consequence;
  /** A floor under what an outcome other than within weighs; bad news that was recorded never weighs less. */
  leastWeight: number;
  /** The value as recorded, in whole quanta of `unit`'s family; NaN where there is none. */
  quanta: number;
  unit: Unit | undefined;
  /** The id of the member, where the step is asked of each. */
  part: string | undefined;
  /** The member's place in its list, -1 where the step is not asked of each. */
  member: number;
  /** Places in the record's steps that were judged, the deciding one first; empty where nothing was recorded. */
  entries: readonly number[];
  /**
   * Why the evidence cannot be trusted, kept whatever the outcome: a value that is outside as recorded is no better known for it,
   * and other requirements may rest on it.
   */
  doubt: UndecidedReason | undefined;
  /** The rows of every entry for the same thing, this one among them; empty where there is one entry or none. */
  candidates: readonly Row[];
  /** True where the record vouches for the step together with others instead of recording it. */
  attested: boolean;
  /** Codes of notes that belong to this row. */
  notes: readonly RemarkCode[];
  /** What the outcome would have been without the adoption that applies. */
  without: Outcome | undefined;
  /** The adoption that applies, or may apply. */
  adopted: AdoptionStanding | undefined;
  /** Where in the record the evidence stands, other than in a step. */
  pointer: string | undefined;
  /** Words of the record that explain the outcome: a defect's name, the places that differ. */
  details: Readonly<Record<string, string>> | undefined;
}

const NONE: readonly never[] = [];

/** A row without a value; the reason is why it is undecided. */
export function makeRow(requirement: PreparedRequirement, outcome: Outcome, undecidedFor?: UndecidedReason): Row {
  return {
    requirement,
    outcome,
    undecidedFor,
    notApplicableFor: undefined,
    consequence: requirement.consequence,
    leastWeight: 0,
    quanta: Number.NaN,
    unit: undefined,
    part: undefined,
    member: -1,
    entries: NONE,
    doubt: undefined,
    candidates: NONE,
    attested: false,
    notes: NONE,
    without: undefined,
    adopted: undefined,
    pointer: undefined,
    details: undefined,
  };
}

const REFER = weighConsequence("refer");
const ADVISE = weighConsequence("advise");

/**
 * What a row weighs, as a position in `CONSEQUENCES`; -1 for within and not applicable.
 *
 * A gap weighs the lesser of `refer` and the failure, so that a blank fares no better than `refer` where failing matters;
 * `gapsAsOutside` makes it weigh what the failure weighs.
 */
export function weighRow(row: Row, gapsAsOutside: boolean): number {
  // Why: asked of every row of every record, most of which weigh nothing.
  if (row.outcome === "within" || row.outcome === "not-applicable") return -1;
  const failure = weighConsequence(row.consequence);
  switch (row.outcome) {
    case "outside":
      return Math.max(failure, row.leastWeight);
    case "undecided":
      return Math.max(gapsAsOutside ? failure : Math.min(REFER, failure), row.leastWeight);
    case "caution":
      return Math.min(ADVISE, failure);
  }
}

/** A requirement that is not asked of this record. */
export function makeNotApplicable(requirement: PreparedRequirement, reason: NotApplicableReason): Row {
  const row = makeRow(requirement, "not-applicable");
  row.notApplicableFor = reason;
  return row;
}

/**
 * Keeps a decision against the record, else withholds it for `reason`, or for the reason there already if that comes first. The
 * doubt stays with the row either way.
 */
export function withholdDecision(row: Row, reason: UndecidedReason): void {
  row.doubt = firstReason(row.doubt, reason);
  if (row.outcome === "outside" || row.outcome === "not-applicable") return;
  row.undecidedFor = firstReason(row.undecidedFor, reason);
  row.outcome = "undecided";
}
