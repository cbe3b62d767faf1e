import type { Assessment, Policy } from "../index.js";
import { type ReportOptions, renderAssessment, renderClosing, type VerdictCounts } from "../report/index.js";
import type { Streams } from "./streams.js";

/** Takes assessments as they come; each method gives false where nobody reads any more. */
export interface AssessmentWriter {
  write(assessment: Assessment, isSingle: boolean): Promise<boolean>;
  close(counts: VerdictCounts): Promise<boolean>;
}

export const FORMATS = ["text", "json", "ndjson"] as const;

/** A writer of one of {@link FORMATS}. */
export function createWriter(
  format: string,
  policy: Policy,
  { out }: Pick<Streams, "out">,
  report: ReportOptions,
): AssessmentWriter {
  if (format === "ndjson") {
    return { write: (assessment) => out(`${JSON.stringify(assessment)}\n`), close: () => Promise.resolve(true) };
  }
  if (format === "json") return createJsonWriter(out);
  return {
    write: (assessment) => out(`${renderAssessment(assessment, report)}\n`),
    close: (counts) => out(renderClosing(counts, policy.plan, report)),
  };
}

/** An object for an input of one object, else an array that is written as it grows. */
function createJsonWriter(out: Streams["out"]): AssessmentWriter {
  let written = 0;
  let isLone = false;
  return {
    write(assessment, isSingle) {
      const text = JSON.stringify(assessment, undefined, 2);
      isLone = isSingle;
      written += 1;
      return out(isSingle ? `${text}\n` : `${written === 1 ? "[\n" : ",\n"}${text}`);
    },
    close() {
      if (isLone) return Promise.resolve(true);
      return out(written === 0 ? "[]\n" : "\n]\n");
    },
  };
}
