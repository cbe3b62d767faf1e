import type { Assessment } from "../model/index.js";
import { createPaint, type Paint, type ReportOptions, wordsOf } from "./palette.js";
import { clipText } from "./printable-text.js";
import { renderFinding } from "./render-finding.js";
import { measureText, wrapText } from "./wrap-text.js";

const VERDICT_TONES = { meets: "good", refer: "warn", withdraw: "bad" } as const;
const LONGEST_NAME = 60;
const LONGEST_PROBLEM = 300;

/** One assessment as text: its verdict, then each finding with all that a reader needs to act on it, then the counts. */
export function renderAssessment(assessment: Assessment, options: ReportOptions): string {
  const paint = createPaint(options);
  const { findings, problems = [], judged } = assessment;
  const { report } = wordsOf(options);
  const blocks = findings.map((finding) => renderFinding(finding, assessment, options, paint));
  const firstNote = findings.findIndex(({ consequence }) => consequence === "note");
  return [
    ...renderHead(assessment, options, paint),
    ...problems.flatMap(({ pointer, message }) => {
      const problem = report.cannotBeJudged(clipText(message, LONGEST_PROBLEM), clipText(pointer, LONGEST_NAME));
      return wrapText(problem, options.width, "  ");
    }),
    ...blocks.flatMap((lines, index) => (index === firstNote && index > 0 ? ["", ...lines] : lines)),
    ...(findings.length > 0 && judged ? [""] : []),
    ...(judged
      ? wrapText(report.counts(assessment.counts), options.width, "  ").map((line) => paint("dim", line))
      : []),
    "",
  ].join("\n");
}

function renderHead(assessment: Assessment, options: ReportOptions, paint: Paint): readonly string[] {
  const { width } = options;
  const { report, verdicts } = wordsOf(options);
  const { recordId, check, subject, verdict } = assessment;
  const names = [recordId ?? report.noId, subject, check].filter((name) => name !== null);
  const left = names.map((name) => clipText(name, LONGEST_NAME)).join(", ");
  if (verdict === null) return [paint("strong", left)];
  const right = verdicts[verdict];
  const gap = width - measureText(left) - right.length;
  const verdictText = paint(VERDICT_TONES[verdict], right);
  if (gap >= 2) return [`${paint("strong", left)}${" ".repeat(gap)}${verdictText}`];
  return [...wrapText(left, width, "").map((line) => paint("strong", line)), `  ${verdictText}`];
}
