import type { RequirementName, UndecidedReason } from "../terms/index.js";
import type { FindingParams, FindingWords } from "./assessment-words.js";
import { quoteQuantities } from "./quote-quantities.js";

export const ENGLISH_REASONS: Readonly<Record<UndecidedReason, string>> = {
  "not-for-this-policy": "the policy is not for this record",
  "nothing-judged": "nothing that matters could be judged",
  "fact-missing": "the record does not state a fact that the limit depends on",
  "facts-differ": "the record states different figures for a fact that the limit depends on",
  "fitting-not-recorded": "the record does not say whether this is fitted",
  "no-case": "no case of the tolerance is for this record",
  "no-date": "the record does not state the date that this counts from",
  "order-unknown": "the record does not tell in which order the steps were taken",
  "not-yet": "it is not filled in yet",
  missing: "nothing is recorded",
  "not-done": "it is recorded as not done",
  unreadable: "what is recorded cannot be read",
  "no-unit": "the figure has no unit",
  "unknown-unit": "the unit is not known",
  "wrong-dimension": "the figure measures something else",
  "unknown-word": "the word is not one of those that are understood",
  "too-fine": "the figure is finer than its unit is kept",
  "off-range": "the instrument cannot show such a value",
  "mixed-units": "the readings are in units that cannot be compared exactly",
  "instrument-unknown": "another instrument is recorded than the policy names",
  "finer-than-division": "the instrument cannot show a value between two divisions",
  conflicting: "the record contradicts itself",
  "date-ahead": "the date lies ahead of the record",
  "start-too-low": "the hold did not start from what it must start from",
  "hold-too-short": "the hold is not shown to have lasted long enough",
  "moved-the-wrong-way": "the value moved the other way",
  uncertainty: "what is recorded leaves both sides open",
  "explained-by-temperature": "only the correction for temperature brings it inside",
  "rule-incomplete": "a fact that the rule needs is missing, or written another way",
};

const SUBJECTS: Readonly<Record<RequirementName, string>> = {
  condition: "the condition",
  match: "the agreement of the texts",
  level: "the reading",
  apart: "how far the readings lie apart",
  start: "the start of the hold",
  lasting: "the length of the hold",
  drop: "the drop over the hold",
  rise: "the rise over the hold",
  change: "the change over the hold",
  elapsed: "the time",
  date: "the date",
  order: "the order of the steps",
  competence: "who carried the check out",
  due: "what falls due",
  rule: "the rule",
};

/** What is missing where something is recorded: a place among several, or which of several things a figure belongs to. */
function namePart(requirement: RequirementName): string {
  return requirement === "match" ? "not every place is recorded" : "the entry does not name which one it is for (`of`)";
}

const CHANGES = { drop: "fell", rise: "rose", change: "moved by" } as const;

export const ENGLISH_FINDINGS: FindingWords = {
  decided: {
    condition: ({ defect }) => (defect === undefined ? "a defect is recorded" : `the defect \`${defect}\` is recorded`),
    match: ({ observed = "nothing", accept }) =>
      `the texts are not as they should be: ${observed}; wanted is ${accept}`,
    level: sayReading,
    start: sayReading,
    apart: (params) => `the readings lie ${quoteObserved(params)} apart; ${sayAccepted(params)}`,
    lasting: (params) => `the hold lasted ${quoteObserved(params)}; ${sayAccepted(params)}`,
    drop: (params) => sayChange("drop", params),
    rise: (params) => sayChange("rise", params),
    change: (params) => sayChange("change", params),
    elapsed: (params) => (params.never ? sayNever(params) : `it took ${quoteObserved(params)}; ${sayAccepted(params)}`),
    date: ({ observed = "nothing", accept }) => `the date is \`${observed}\`; ${accept} is accepted`,
    order: ({ late = "", early = "" }) => `\`${late}\` stands after \`${early}\`, which it should come before`,
    competence: ({ observed = "nothing", accept }) =>
      `the check was carried out by \`${observed}\`; it is for ${accept}`,
    due: ({ observed = "nothing", accept, forbids }) =>
      `it was last done on \`${observed}\`; ${accept} is accepted${sayForbidden(forbids)}`,
    rule: ({ accept }) => `the rule does not hold: ${accept}`,
  },
  undecided(requirement, reason, observed) {
    // Why: how far apart readings lie is made of them, and was not recorded by itself.
    const isRecorded = observed !== undefined && observed.trim() !== "" && requirement !== "apart";
    const recorded = isRecorded ? `, recorded is \`${observed}\`` : "";
    const isGap = isRecorded && reason === "missing";
    const why = reason === undefined ? "it is not known" : isGap ? namePart(requirement) : ENGLISH_REASONS[reason];
    return `${SUBJECTS[requirement]} cannot be judged: ${why}${recorded}`;
  },
};

function sayReading(params: FindingParams): string {
  return params.never ? sayNever(params) : `${quoteObserved(params)} was read; ${sayAccepted(params)}`;
}

function sayNever(params: FindingParams): string {
  return `it never came; ${sayAccepted(params)}`;
}

function sayChange(requirement: keyof typeof CHANGES, params: FindingParams): string {
  const { quantity = "the value" } = params;
  return `${quantity} ${CHANGES[requirement]} ${quoteObserved(params)} over the hold; ${sayAccepted(params)}`;
}

function quoteObserved({ observed = "nothing" }: FindingParams): string {
  return quoteQuantities(observed);
}

function sayAccepted({ outcome, accept }: FindingParams): string {
  const close = outcome === "caution" ? ", and this is close to the limit" : "";
  return `${quoteQuantities(accept)} is accepted${close}`;
}

/** What may not be done once an interval has passed; printed, never judged. */
function sayForbidden(forbids: string | undefined): string {
  if (forbids === undefined) return "";
  return `; until it is done again it may not be ${forbids === "fill" ? "filled" : "used"}`;
}
