import type { Consequence, Outcome, Reason, RequirementName, Verdict } from "../terms/index.js";

/** Everything that a printed report says beside the sentences of findings and diagnostics. */
export interface ReportWords {
  readonly outcomes: Readonly<Record<Outcome, string>>;
  /** A reason as one word or two, beside an outcome. */
  readonly reasonNames: Readonly<Record<Reason, string>>;
  readonly requirements: Readonly<Record<RequirementName, string>>;
  /** Each verdict as a person says it. */
  readonly verdicts: Readonly<Record<Verdict, string>>;
  /** One word each, at most ten columns wide. */
  readonly consequences: Readonly<Record<Consequence, string>>;
  readonly severities: Readonly<Record<"error" | "warning", string>>;
  readonly report: AssessmentReportWords;
  readonly basis: BasisWords;
  readonly listing: DiagnosticReportWords;
  readonly resolved: ResolvedWords;
}

/** Names of the details below a finding. */
export interface DetailWords {
  readonly seen: string;
  readonly accepted: string;
  readonly margin: string;
  readonly trueValue: string;
  readonly policy: string;
  readonly limit: string;
  readonly basis: string;
  readonly record: string;
}

/** How many requirements came to each outcome. */
export interface OutcomeCounts {
  readonly within: number;
  readonly caution: number;
  readonly outside: number;
  readonly undecided: number;
  readonly notApplicable: number;
}

export interface AssessmentReportWords {
  readonly noId: string;
  cannotBeJudged(message: string, pointer: string): string;
  counts(counts: OutcomeCounts): string;
  readonly theRecord: string;
  readonly asAWhole: string;
  interval(name: string): string;
  rule(name: string): string;
  readonly details: DetailWords;
  readonly onTheLimit: string;
  beyond(margin: string): string;
  inside(margin: string): string;
  /** Where the true value lies, and `chance`, how likely it conforms. */
  between(from: string, to: string, chance: string): string;
  readonly hardlyAnyChance: string;
  /** `hundred` from 1 to 100. */
  chance(hundred: number): string;
  /** What an assessment does not say. */
  readonly reach: string;
  readonly verdictColumn: string;
  readonly recordColumn: string;
  readonly ofTheseNotJudged: string;
  readonly inAll: string;
  readonly besideTheseNotRead: string;
  policy(id: string, version: string, title: string, digest: string): string;
}

/** What a figure rests on. */
export interface BasisWords {
  readonly commonPractice: string;
  published(parts: readonly string[]): string;
  readonly fromMemory: string;
  readonly asQuoted: string;
  readonly manufacturer: string;
  localOrder(order: string): string;
}

export interface DiagnosticReportWords {
  wanted(text: string): string;
  mend(text: string): string;
  seeAlso(spot: string, why: string): string;
  counts(errors: number, warnings: number): string;
}

/** A policy as it stands after `extends`. */
export interface ResolvedWords {
  readonly bounds: Readonly<Record<"at-least" | "at-most" | "above" | "below", string>>;
  readonly and: string;
  readonly or: string;
  upTo(fact: string, limit: string): string;
  interval(name: string, span: string): string;
  rule(name: string): string;
  /** Of every member of a list of the record. */
  each(members: string): string;
  whereFitted(fitting: string): string;
  readWith(instrument: string): string;
  after(steps: string): string;
  /** Of a step that is asked of everyone, once, where something else asks it otherwise. */
  readonly always: string;
  /** That somebody may vouch for a step instead of recording it. */
  readonly attestable: string;
  ofSubject(kind: string): string;
  onlyFor(scope: string): string;
  /** By whom a check is made. */
  by(competences: string): string;
  /** What tells the order of the steps, where it is judged. */
  readonly order: Readonly<Record<"position" | "at", string>>;
  readonly gapsAsOutside: string;
  /** Stands behind an interval: what a thing past its date may not be put to. */
  readonly forbids: Readonly<Record<"fill" | "use", string>>;
  /** Stands behind what a rule requires: where it is asked at all. */
  readonly when: (condition: string) => string;
  /** What is not told apart where texts are compared. */
  readonly ignoring: (names: string) => string;
  /** What one defect weighs. */
  defect(name: string, consequence: string): string;
  /** `what`: a step, or an interval in words. */
  adopted(id: string, what: string, from: string, until: string | undefined, order: string): string;
  /** Stands behind {@link adopted} where the parent says what holds otherwise. */
  readonly elseAsParent: string;
  /** What stands while an adoption applies. */
  readonly accepts: (limits: string) => string;
  readonly omits: string;
  readonly instead: (step: string) => string;
}
