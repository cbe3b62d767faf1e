import type { Outcome, RequirementName, UndecidedReason } from "../terms/index.js";

type Params = Readonly<Record<string, string>>;

/** Why a requirement is undecided, as the second half of a sentence. */
export const REASON_WORDS: Readonly<Record<UndecidedReason, string>> = {
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
  "rule-incomplete": "a fact that the rule needs is missing",
};

const UNITS = "(?:bar|mbar|kPa|MPa|Pa|psi|mmH2O|s|min|h|mm|cm|m|L/min|L|m3|Cel|K|dB|mg/m3|%|ppm)";
const QUANTITY = new RegExp(`-?\\d+(?:\\.\\d+)? ${UNITS}(?![\\w/])`, "g");

/** Puts the quantities of a text in backticks. */
function quoteQuantities(text: string): string {
  return text.replace(QUANTITY, "`$&`");
}

const SAID = {
  outside: "is accepted",
  caution: "is accepted, and this is close to the limit",
} as const;

const CHANGE_VERBS = { drop: "fell", rise: "rose", change: "moved by" } as const;

/**
 * The sentence of one finding. Params: `observed`, `accept`, and what the requirement adds (`quantity`, `defect`, `reason`…);
 * each is a text of the record or the policy.
 */
export function describeFinding(requirement: RequirementName, outcome: Outcome, params: Params): string {
  const { observed = "nothing", accept = "" } = params;
  if (outcome === "undecided") return describeGap(requirement, params);
  const said = outcome === "caution" ? SAID.caution : SAID.outside;
  const accepted = quoteQuantities(accept);
  switch (requirement) {
    case "condition":
      return params.defect === undefined ? "a defect is recorded" : `the defect \`${params.defect}\` is recorded`;
    case "match":
      return `the texts do not agree: ${observed}; wanted is ${accept}`;
    case "level":
    case "start":
      return observed === "did not occur"
        ? `it never came; ${accepted} ${said}`
        : `${quoteQuantities(observed)} was read; ${accepted} ${said}`;
    case "apart":
      return `the readings lie ${quoteQuantities(observed)} apart; ${accepted} ${said}`;
    case "lasting":
      return `the hold lasted ${quoteQuantities(observed)}; ${accepted} ${said}`;
    case "drop":
    case "rise":
    case "change":
      return `${params.quantity ?? "the value"} ${CHANGE_VERBS[requirement]} ${quoteQuantities(observed)} over the hold; ${accepted} ${said}`;
    case "elapsed":
      return observed === "did not occur"
        ? `it never came; ${accepted} ${said}`
        : `it took ${quoteQuantities(observed)}; ${accepted} ${said}`;
    case "date":
      return `the date is \`${observed}\`; ${accept} is accepted`;
    case "order":
      return `\`${params.late ?? ""}\` stands behind \`${params.early ?? ""}\`, which it should come before`;
    case "competence":
      return `the check was carried out by \`${observed}\`; it is for ${accept}`;
    case "due":
      return `it was last done on \`${observed}\`; ${accept} is accepted${describeForbidden(params)}`;
    case "rule":
      return `the rule does not hold: ${accept}`;
  }
}

/** What may not be done once an interval has passed; printed, never judged. */
function describeForbidden({ forbids }: Params): string {
  if (forbids === undefined) return "";
  return forbids === "fill"
    ? "; until it is done again it may not be filled"
    : "; until it is done again it may not be used";
}

function describeGap(requirement: RequirementName, { observed, reasonWords = "it is not known" }: Params): string {
  const recorded = observed === undefined ? "" : `, recorded is \`${observed}\``;
  return `${GAP_SUBJECTS[requirement]} cannot be judged: ${reasonWords}${recorded}`;
}

const GAP_SUBJECTS: Readonly<Record<RequirementName, string>> = {
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
