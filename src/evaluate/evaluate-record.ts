import type { Assessment } from "../model/index.js";
import { digestValue } from "../plan/index.js";
import { type AssessmentWords, ENGLISH_ASSESSMENTS } from "../words/index.js";
import { describeJudgement } from "./describe-judgement.js";
import { judgeRecord } from "./judge-record.js";
import type { PreparedPolicy } from "./prepared-policy.js";

export interface EvaluateOptions {
  /**
   * The record is a form that is still being filled: what is missing is `undecided: not-yet`, gives no finding, and there is
   * no verdict.
   */
  readonly partial?: boolean;
  /** Adds `recordDigest`, SHA-256 over the RFC 8785 form of the record; null where that form refuses the record. */
  readonly digest?: boolean;
  /** The language of messages and of limits in words; English where none is given. */
  readonly words?: AssessmentWords | undefined;
}

/** Judges one record and puts the judgement into words. Pure and synchronous; never throws on a JSON value. */
export function evaluateRecord(policy: PreparedPolicy, record: unknown, options: EvaluateOptions = {}): Assessment {
  const judgement = judgeRecord(policy, record);
  const isPartial = options.partial === true;
  const recordDigest = options.digest === true ? (digestValue(record) ?? null) : undefined;
  const { words = ENGLISH_ASSESSMENTS } = options;
  return describeJudgement(judgement, policy, record, { isPartial, recordDigest, words });
}
