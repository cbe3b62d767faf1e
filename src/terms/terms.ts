/** What became of one requirement. `caution` lies within, inside the caution band. */
export const OUTCOMES = ["within", "caution", "outside", "undecided", "not-applicable"] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** What follows a finding, mildest first: the position in this list is the weight. */
export const CONSEQUENCES = ["note", "advise", "refer", "withdraw"] as const;
export type Consequence = (typeof CONSEQUENCES)[number];

/** What a record comes to: `refer` leaves it to a competent person, `withdraw` takes the subject out of use. */
export const VERDICTS = ["meets", "refer", "withdraw"] as const;
export type Verdict = (typeof VERDICTS)[number];

/**
 * Why a requirement could not be decided, in order of precedence: where several hold, the first is given.
 * Invariant: saved plans and histories hold these words, so the list only grows.
 */
export const UNDECIDED_REASONS = [
  "not-for-this-policy",
  "nothing-judged",
  "fact-missing",
  "facts-differ",
  "fitting-not-recorded",
  "no-case",
  "no-date",
  "order-unknown",
  "not-yet",
  "missing",
  "not-done",
  "unreadable",
  "no-unit",
  "unknown-unit",
  "wrong-dimension",
  "unknown-word",
  "too-fine",
  "off-range",
  "mixed-units",
  "instrument-unknown",
  "finer-than-division",
  "conflicting",
  "date-ahead",
  "start-too-low",
  "hold-too-short",
  "moved-the-wrong-way",
  "uncertainty",
  "explained-by-temperature",
  "rule-incomplete",
] as const;
export type UndecidedReason = (typeof UNDECIDED_REASONS)[number];

/** Why a requirement was not asked of this record. */
export const NOT_APPLICABLE_REASONS = [
  "not-fitted",
  "out-of-scope",
  "condition-false",
  "only-one",
  "omitted-by-adoption",
] as const;
export type NotApplicableReason = (typeof NOT_APPLICABLE_REASONS)[number];

export type Reason = UndecidedReason | NotApplicableReason;

/** What a requirement is about; a step kind brings one or more of them. */
export const REQUIREMENTS = [
  "condition",
  "match",
  "level",
  "apart",
  "start",
  "lasting",
  "drop",
  "rise",
  "change",
  "elapsed",
  "date",
  "order",
  "competence",
  "due",
  "rule",
] as const;
export type RequirementName = (typeof REQUIREMENTS)[number];

export const STEP_KINDS = ["confirm", "match", "reading", "hold", "timing", "in-date"] as const;
export type StepKind = (typeof STEP_KINDS)[number];

/** What a record step may say about a condition or a function. */
export const STEP_RESULTS = ["satisfactory", "defect", "not-done"] as const;
export type StepResult = (typeof STEP_RESULTS)[number];

/** Facts that every policy may name without declaring them. */
export const BUILT_IN_FACTS = ["kind", "class", "station", "competence", "rated-pressure", "water-capacity"] as const;
export type BuiltInFact = (typeof BUILT_IN_FACTS)[number];

/** The position of a consequence in {@link CONSEQUENCES}: 0 for `note` up to 3 for `withdraw`. */
export function weighConsequence(consequence: Consequence): number {
  return CONSEQUENCES.indexOf(consequence);
}

/** Raised whenever a plan that was saved before can no longer be read. */
export const PLAN_FORMAT = 1;
