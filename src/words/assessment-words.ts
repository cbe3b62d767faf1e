import type { RequirementName, UndecidedReason } from "../terms/index.js";
import type { QuantityName } from "./quantity-name.js";
import type { RemarkTexts } from "./remark-shapes.js";

/** Everything that is said in an assessment and in a form. */
export interface AssessmentWords {
  /** Why a requirement is undecided, as the second half of a sentence. */
  readonly reasons: Readonly<Record<UndecidedReason, string>>;
  readonly limits: LimitWords;
  readonly rules: RuleWords;
  readonly findings: FindingWords;
  readonly remarks: RemarkTexts;
  /** What stands in a remark where a date is left out. */
  readonly openEnds: Readonly<Record<"from" | "to" | "until", string>>;
  readonly problems: Readonly<Record<ProblemCode, (params: ProblemParams) => string>>;
}

/** What is accepted and what was seen, in words. */
export interface LimitWords {
  readonly bounds: Readonly<Record<"at-least" | "at-most" | "above" | "below", (limit: string) => string>>;
  /** The ends of a band, or the readings between which a value lies. */
  range(ends: readonly string[]): string;
  /** Bounds that all hold. */
  all(bounds: readonly string[]): string;
  /** A share of a fact, with the value that it comes to first. */
  share(value: string, share: string, fact: string): string;
  readonly satisfactory: string;
  readonly sameInEveryPlace: string;
  equalTo(text: string): string;
  otherThan(text: string): string;
  readonly notPast: string;
  /** `span` as written, `P30D`. */
  notOlder(span: string): string;
  /** `span` as written, `P30D`: how often something falls due. */
  every(span: string): string;
  /** Stands behind {@link notOlder}: the last day. */
  goodTo(date: string): string;
  /** A signal or an event that never came. */
  readonly didNotOccur: string;
  /** Names in backticks, any of which will do. */
  anyOf(names: readonly string[]): string;
  readonly orders: Readonly<Record<"any" | "position" | "at", string>>;
}

/** The parts from which a rule is put into words; which of them needs brackets is not theirs to know. */
export interface RuleWords {
  /** Of numbers first, of dates second. */
  readonly signs: Readonly<Record<"<" | "<=" | ">" | ">=", readonly [string, string]>>;
  compare(left: string, sign: string, right: string): string;
  readonly and: string;
  readonly or: string;
  not(term: string): string;
  choose(value: string, condition: string, otherwise: string): string;
  equal(left: string, right: string): string;
  unequal(left: string, right: string): string;
  least(terms: string): string;
  greatest(terms: string): string;
  size(term: string): string;
  oneOf(item: string, list: string): string;
  readonly lists: Readonly<Record<"all" | "some" | "none" | "count", (list: string, holds: string) => string>>;
}

/** What a finding speaks of; each text is one of the record or the policy, or was put into words before. */
export interface FindingParams {
  readonly outcome: "caution" | "outside";
  readonly observed: string | undefined;
  readonly accept: string;
  /** What was to come never did. */
  readonly never: boolean;
  readonly quantity: QuantityName | undefined;
  readonly defect: string | undefined;
  readonly late: string | undefined;
  readonly early: string | undefined;
  /** What may not be done once an interval has passed: `fill` or `use`; printed, never judged. */
  readonly forbids: string | undefined;
}

/** The sentence of one finding. */
export interface FindingWords {
  /** Of a requirement that is outside, or close to its limit. */
  readonly decided: Readonly<Record<RequirementName, (params: FindingParams) => string>>;
  /** Of a requirement that could not be decided. */
  undecided(requirement: RequirementName, reason: UndecidedReason | undefined, observed: string | undefined): string;
}

/** Why a record cannot be judged at all. */
export type ProblemCode =
  | "no-object"
  | "too-deep"
  | "not-this-format"
  | "blank-text"
  | "no-time"
  | "no-subject"
  | "no-steps"
  | "too-many-steps"
  | "no-step";

export interface ProblemParams {
  readonly key: string;
  readonly count: number;
  readonly most: number;
}
