import {
  JUNIT_FOOT,
  JUNIT_HEAD,
  renderCsvHead,
  renderCsvRows,
  renderSuite,
  renderUnreadRow,
  renderUnreadSuite,
} from "../report/index.js";
import type { AssessmentWriter } from "./assessment-writer.js";
import type { Streams } from "./streams.js";
import { createFramedWriter } from "./write-framed.js";

/** A writer of test reports in XML. */
export function createJunitWriter(out: Streams["out"], deference: string): AssessmentWriter {
  return createFramedWriter(out, JUNIT_HEAD, renderSuite, (text) => renderUnreadSuite(text, deference), JUNIT_FOOT);
}

/** A writer of tables. */
export function createCsvWriter(out: Streams["out"], deference: string): AssessmentWriter {
  return createFramedWriter(out, renderCsvHead(), renderCsvRows, (text) => renderUnreadRow(text, deference), "");
}
