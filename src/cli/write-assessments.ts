import type { Policy } from "../index.js";
import { type ReportOptions, renderAssessment, renderClosing } from "../report/index.js";
import type { AssessmentWriter } from "./assessment-writer.js";
import type { Streams } from "./streams.js";

/** A writer of one of the formats that the command offers; text where the format is none of the others. */
export async function createWriter(
  format: string,
  policy: Policy,
  { out }: Pick<Streams, "out">,
  report: ReportOptions,
): Promise<AssessmentWriter> {
  const { deference } = policy.plan;
  const refuse = () => Promise.resolve(true);
  switch (format) {
    case "junit":
      return (await import("./machine-formats.js")).createJunitWriter(out, deference);
    case "csv":
      return (await import("./machine-formats.js")).createCsvWriter(out, deference);
    case "ndjson":
      return {
        write: (assessment) => out(`${JSON.stringify(assessment)}\n`),
        refuse,
        close: () => Promise.resolve(true),
      };
    case "json":
      return { ...createJsonWriter(out), refuse };
    default:
      return {
        write: (assessment) => out(`${renderAssessment(assessment, report)}\n`),
        refuse,
        close: (counts) => out(renderClosing(counts, policy.plan, report)),
      };
  }
}

/** An object for an input of one object, else an array that is written as it grows. */
function createJsonWriter(out: Streams["out"]): Pick<AssessmentWriter, "write" | "close"> {
  let written = 0;
  let isLone = false;
  return {
    write(assessment, { isSingle }) {
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
