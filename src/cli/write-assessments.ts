import type { Assessment, Policy } from "../index.js";
import {
  JUNIT_FOOT,
  JUNIT_HEAD,
  type ReportOptions,
  renderAssessment,
  renderClosing,
  renderCsvHead,
  renderCsvRows,
  renderSuite,
  renderUnreadRow,
  renderUnreadSuite,
  type VerdictCounts,
} from "../report/index.js";
import type { Streams } from "./streams.js";

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

export const FORMATS = ["text", "json", "ndjson", "junit", "csv"] as const;

/** A writer of one of {@link FORMATS}. */
export function createWriter(
  format: string,
  policy: Policy,
  { out }: Pick<Streams, "out">,
  report: ReportOptions,
): AssessmentWriter {
  const { deference } = policy.plan;
  const refuse = () => Promise.resolve(true);
  switch (format) {
    case "junit":
      return createFramedWriter(out, JUNIT_HEAD, renderSuite, (text) => renderUnreadSuite(text, deference), JUNIT_FOOT);
    case "csv":
      return createFramedWriter(out, renderCsvHead(), renderCsvRows, (text) => renderUnreadRow(text, deference), "");
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

/** One piece a record between a head and a foot, which stand also round nothing. */
function createFramedWriter(
  out: Streams["out"],
  head: string,
  render: (assessment: Assessment, at: string | undefined) => string,
  renderUnread: (problem: string) => string,
  foot: string,
): AssessmentWriter {
  let isOpen = false;
  const add = (piece: string): Promise<boolean> => {
    const text = isOpen ? piece : head + piece;
    isOpen = true;
    return text === "" ? Promise.resolve(true) : out(text);
  };
  return {
    write: (assessment, { at }) => add(render(assessment, at)),
    refuse: (problem) => add(renderUnread(problem)),
    close: () => add(foot),
  };
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
