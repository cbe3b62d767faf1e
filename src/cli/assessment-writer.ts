import type { Assessment } from "../index.js";
import type { VerdictCounts } from "../report/index.js";

/** What a writer may know of a record beside its assessment. */
export interface RecordFacts {
  /** Whether it is all that the run is given, as one object. */
  readonly isSingle: boolean;
  /** The time that it states, as it states it. */
  readonly at: string | undefined;
}

/** Takes assessments as they come; each method gives false where nobody reads any more. */
export interface AssessmentWriter {
  write(assessment: Assessment, facts: RecordFacts): Promise<boolean>;
  /** Takes what could not be read, in words; the error stream tells it in any case. */
  refuse(problem: string): Promise<boolean>;
  close(counts: VerdictCounts): Promise<boolean>;
}
