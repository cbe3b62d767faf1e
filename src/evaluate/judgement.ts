import type { JudgeContext, PreparedRequirement, PreparedStep, Row } from "../steps/index.js";
import type { Outcome, UndecidedReason } from "../terms/index.js";
import type { RemarkCode } from "../words/index.js";
import type { PreparedCheck } from "./prepared-policy.js";
import type { Envelope, Problem } from "./read-envelope.js";

/** A finding without a requirement: something about the record itself, or bad news beside what was asked. */
export interface Remark {
  readonly code: RemarkCode;
  /** Position in `CONSEQUENCES`. */
  readonly weight: number;
  readonly pointer: string;
  readonly step?: string | undefined;
  readonly interval?: string | undefined;
  readonly part?: string | undefined;
  readonly requirement?: PreparedRequirement | undefined;
  readonly reason?: UndecidedReason | undefined;
  readonly outcome?: Extract<Outcome, "undecided"> | undefined;
  readonly params: Readonly<Record<string, string>>;
  /** The name of a defect, for the fingerprint. */
  readonly defect?: string | undefined;
}

/** Two entries of the record that stand the wrong way round. */
export interface BrokenPair {
  /** The step that stands too late. */
  readonly late: string;
  readonly lateEntry: number;
  /** The step that it should have come before. */
  readonly early: string;
}

/** The kernel's output for one record: outcomes as words of closed lists and numbers, no text yet. */
export interface Judgement {
  readonly envelope: Envelope | undefined;
  readonly problems: readonly Problem[];
  readonly check: PreparedCheck | undefined;
  readonly context: JudgeContext | undefined;
  readonly rows: Row[];
  /** The step that each row belongs to; undefined for the check's own. */
  readonly stepOf: (PreparedStep | undefined)[];
  readonly remarks: Remark[];
  readonly brokenPairs: BrokenPair[];
  /** The heaviest finding as a position in `CONSEQUENCES`, -1 for none. */
  weight: number;
}
