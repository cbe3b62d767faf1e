import type { Reason as AnyReason, Outcome, UndecidedReason } from "../../src/index.js";
import { UNDECIDED_REASONS } from "../../src/terms/index.js";

export type Entry = Readonly<Record<string, unknown>>;
export type Reason = UndecidedReason;

/** What became of one requirement. */
export interface Ruling {
  outcome: Outcome;
  reason: AnyReason | undefined;
}

const RANKS: ReadonlyMap<AnyReason | undefined, number> = new Map(
  UNDECIDED_REASONS.map((reason, rank) => [reason, rank]),
);

export function ruleOutcome(outcome: Outcome): Ruling {
  return { outcome, reason: undefined };
}

export function leaveOpen(reason: Reason): Ruling {
  return { outcome: "undecided", reason };
}

/** The reason that comes first in the language's list. */
export function firstOf<R extends AnyReason>(one: R | undefined, other: R | undefined): R | undefined {
  if (one === undefined) return other;
  if (other === undefined) return one;
  return (RANKS.get(one) ?? 0) <= (RANKS.get(other) ?? 0) ? one : other;
}

/** Keeps what is outside, else leaves it open for `reason` or an earlier one. */
export function withhold(ruling: Ruling & { doubt?: AnyReason | undefined }, reason: AnyReason): void {
  if ("doubt" in ruling) ruling.doubt = firstOf(ruling.doubt, reason);
  if (ruling.outcome === "outside" || ruling.outcome === "not-applicable") return;
  ruling.reason = firstOf(ruling.reason, reason);
  ruling.outcome = "undecided";
}

export function isMissing(value: unknown): boolean {
  if (value === undefined || value === null) return true;
  return typeof value === "string" ? value.trim() === "" : Array.isArray(value) && value.length === 0;
}
