import type { Assessment, Finding, Result } from "../model/index.js";
import { createPaint, type Paint, type ReportOptions } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { measureText, wrapText } from "./wrap-text.js";

const VERDICT_WORDS = {
  meets: "meets the policy",
  refer: "refer to a competent person",
  withdraw: "withdraw from use",
} as const;
const VERDICT_TONES = { meets: "good", refer: "warn", withdraw: "bad" } as const;
const CONSEQUENCE_TONES = { note: "dim", advise: "strong", refer: "warn", withdraw: "bad" } as const;
const INDENT = " ".repeat(12);

/** One assessment as text: its verdict, then each finding with all that a reader needs to act on it, then the counts. */
export function renderAssessment(assessment: Assessment, options: ReportOptions): string {
  const paint = createPaint(options);
  const { findings, problems = [] } = assessment;
  return [
    renderHead(assessment, options, paint),
    ...problems.flatMap(({ pointer, message }) =>
      wrapText(
        `cannot be judged: ${makePrintable(message)}${pointer === "" ? "" : ` (at ${makePrintable(pointer)})`}`,
        options.width,
        "  ",
      ),
    ),
    ...findings.flatMap((finding) => renderFinding(finding, assessment, options, paint)),
    ...(assessment.judged ? [paint("dim", `  ${describeCounts(assessment)}`)] : []),
    "",
  ].join("\n");
}

function renderHead({ recordId, check, subject, verdict }: Assessment, { width }: ReportOptions, paint: Paint): string {
  const names = [recordId ?? "a record without an id", subject, check].filter((name) => name !== null);
  const left = names.map(makePrintable).join(", ");
  if (verdict === null) return paint("strong", left);
  const right = VERDICT_WORDS[verdict];
  const gap = width - measureText(left) - right.length;
  const verdictText = paint(VERDICT_TONES[verdict], right);
  return gap >= 2
    ? `${paint("strong", left)}${" ".repeat(gap)}${verdictText}`
    : `${paint("strong", left)}\n  ${verdictText}`;
}

function renderFinding(
  finding: Finding,
  assessment: Assessment,
  { width }: ReportOptions,
  paint: Paint,
): readonly string[] {
  const { consequence, requirement, message } = finding;
  const about = [nameAsker(finding), finding.part, requirement].filter((word) => word !== undefined && word !== "");
  const label = paint(CONSEQUENCE_TONES[consequence], consequence.padEnd(8));
  const lines = [
    `  ${label}  ${makePrintable(about.join(", ")) || "the record"}`,
    ...wrapText(capitalise(makePrintable(message)), width, INDENT),
  ];
  if (consequence === "note") return lines;
  const result = findResult(finding, assessment);
  const details = [
    describeFigures(finding, result),
    describeConfidence(result),
    describeSource(finding),
    `record ${makePrintable(finding.pointer === "" ? "as a whole" : finding.pointer)}`,
  ];
  return [...lines, ...details.flatMap((detail) => wrapText(detail, width, INDENT).map((line) => paint("dim", line)))];
}

function nameAsker({ step, interval, rule }: Finding): string | undefined {
  if (interval !== undefined) return `interval ${interval}`;
  return rule === undefined ? step : `rule ${rule}`;
}

function capitalise(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function findResult(finding: Finding, { results }: Assessment): Result | undefined {
  return results.find(
    ({ step, part, interval, rule, requirement }) =>
      requirement === finding.requirement &&
      (requirement === "order" || step === finding.step) &&
      part === finding.part &&
      interval === finding.interval &&
      rule === finding.rule,
  );
}

/** What was seen, what is accepted, and by how much. */
function describeFigures({ outcome }: Finding, result: Result | undefined): string {
  if (outcome === undefined || result === undefined) return "";
  const { observed, accept, margin } = result;
  const parts = [
    ...(observed === undefined ? [] : [`seen: ${observed}`]),
    ...(accept === undefined ? [] : [`accepted: ${accept.replaceAll("`", "")}`]),
    ...(margin === undefined ? [] : [describeMargin(margin)]),
  ];
  return makePrintable(parts.join("; "));
}

function describeMargin(margin: string): string {
  return margin.startsWith("-") ? `beyond the limit by ${margin.slice(1)}` : `inside the limit by ${margin}`;
}

/** A sentence that a firefighter understands. */
function describeConfidence(result: Result | undefined): string {
  if (result?.confidence === undefined || result.span === undefined) return "";
  const { span, confidence } = result;
  const hundred = Math.floor(confidence * 100);
  const chance = hundred === 0 ? "hardly any chance" : `about ${hundred} chances in 100`;
  return `the gauge leaves the true value between ${span.from} and ${span.to}: ${chance} that it is inside the limit`;
}

/** Where the policy asks and limits, and what the figure rests on. */
function describeSource({ where, limitAt, basis }: Finding): string {
  if (where === undefined) return "";
  const asked = `policy ${where.file}:${where.line}:${where.column}`;
  const file = limitAt?.file === where.file ? "" : `${limitAt?.file ?? ""}:`;
  const limit = limitAt === undefined ? "" : `, limit at ${file}${limitAt.line}:${limitAt.column}`;
  return makePrintable(`${asked}${limit}${basis === undefined ? "" : `; basis: ${describeBasis(basis)}`}`);
}

function describeBasis(basis: NonNullable<Finding["basis"]>): string {
  switch (basis.kind) {
    case "common-practice":
      return "common practice, no source";
    case "published": {
      const seen = basis.seen === undefined ? "" : basis.seen === "quoted" ? ", as quoted" : ", from memory";
      return [basis.source, basis.edition, basis.clause].filter((part) => part !== undefined).join(", ") + seen;
    }
    case "manufacturer":
      return `the manufacturer${basis.document === undefined ? "" : `, ${basis.document}`}`;
    case "local":
      return `local order ${basis.order}`;
  }
}

function describeCounts({ counts }: Assessment): string {
  const { within, caution, outside, undecided, notApplicable } = counts;
  return `${within} within, ${caution} caution, ${outside} outside, ${undecided} undecided, ${notApplicable} not applicable`;
}
