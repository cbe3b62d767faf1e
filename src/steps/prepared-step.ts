import type { StepPlan } from "../model/index.js";
import type { LimitWords } from "../words/index.js";
import type { JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import type { PreparedRequirement } from "./prepared-requirement.js";
import type { Row } from "./row.js";
import type { RowWords } from "./row-words.js";

/** A step ready to judge: no policy text, no allocation but rows. */
export interface PreparedStep {
  readonly plan: StepPlan;
  readonly requirements: readonly PreparedRequirement[];
  /** The record keys that are evidence for this kind, beside those that every step may carry. */
  readonly evidenceKeys: ReadonlySet<string>;
  /** Adds one row for each requirement but those across members, in order; `entry` is undefined where nothing was recorded. */
  judge(entry: JsonObject | undefined, member: JsonObject | undefined, context: JudgeContext, rows: Row[]): void;
  /** Adds the rows of requirements across members, given the rows that `judge` added for this step. */
  judgeAcross?(stepRows: readonly Row[], context: JudgeContext, rows: Row[]): void;
  describe(
    row: Row,
    entry: JsonObject | undefined,
    member: JsonObject | undefined,
    context: JudgeContext,
    words: LimitWords,
  ): RowWords;
}
