import type { Assessment, Finding, Result } from "../model/index.js";
import type { ReportWords } from "../words/index.js";
import { describeBasis } from "./describe-basis.js";
import { type Paint, type ReportOptions, wordsOf } from "./palette.js";
import { clipText, makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

const CONSEQUENCE_TONES = { note: "dim", advise: "strong", refer: "warn", withdraw: "bad" } as const;
/** Columns between one word and what stands beside it. */
const GAP = 2;
const LONGEST_NAME = 60;
const LONGEST_TEXT = 300;
const LONGEST_MESSAGE = 600;

/** One finding: what follows, where, what became of it and why; but for a note, also the figures and the sources. */
export function renderFinding(
  finding: Finding,
  assessment: Assessment,
  options: ReportOptions,
  paint: Paint,
): readonly string[] {
  const { consequence } = finding;
  const words = wordsOf(options);
  const columns = measureColumn(Object.values(words.consequences));
  const indent = " ".repeat(GAP + columns);
  const label = `  ${paint(CONSEQUENCE_TONES[consequence], words.consequences[consequence].padEnd(columns))}`;
  const about = nameAbout(finding, words);
  const message = capitalise(clipText(finding.message, LONGEST_MESSAGE));
  if (consequence === "note") {
    const [first = "", ...others] = wrapText(about === "" ? message : `${about}: ${message}`, options.width, indent);
    return [`${label}${first.trimStart()}`, ...others];
  }
  const details = listDetails(finding, findResult(finding, assessment), words);
  const labelColumns = measureColumn(Object.values(words.report.details));
  return [
    "",
    `${label}${paint("strong", about === "" ? words.report.theRecord : about)}`,
    ...wrapText(message, options.width, indent),
    ...details.flatMap(([name, text]) =>
      wrapText(text, options.width, indent + " ".repeat(labelColumns), indent + name.padEnd(labelColumns)).map((line) =>
        paint("dim", line),
      ),
    ),
  ];
}

/** As wide as the longest of these words, and the gap behind it. */
function measureColumn(words: readonly string[]): number {
  return Math.max(...words.map((word) => word.length)) + GAP;
}

/** `charge, C-413, level: outside`. */
function nameAbout(finding: Finding, words: ReportWords): string {
  const { part, requirement, outcome, reason } = finding;
  const asked = requirement && words.requirements[requirement];
  const names = [nameAsker(finding, words), part, asked].filter((word) => word !== undefined && word !== "");
  const about = names.map((name) => clipText(String(name), LONGEST_NAME)).join(", ");
  const became = [outcome && words.outcomes[outcome], reason && words.reasonNames[reason]]
    .filter((word) => word !== undefined)
    .join(", ");
  return became === "" ? about : `${about === "" ? words.report.theRecord : about}: ${became}`;
}

function nameAsker({ step, interval, rule }: Finding, { report }: ReportWords): string | undefined {
  if (interval !== undefined) return report.interval(interval);
  return rule === undefined ? step : report.rule(rule);
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

type Detail = readonly [name: string, text: string];

function listDetails(finding: Finding, result: Result | undefined, words: ReportWords): readonly Detail[] {
  const { details: names } = words.report;
  const { where, limitAt, basis, pointer } = finding;
  const details: Detail[] = [];
  if (finding.outcome !== undefined && result !== undefined) details.push(...listFigures(result, words));
  if (where !== undefined) details.push([names.policy, nameSpot(where)]);
  if (limitAt !== undefined) details.push([names.limit, nameSpot(limitAt)]);
  if (basis !== undefined) details.push([names.basis, makePrintable(describeBasis(basis, words.basis))]);
  details.push([names.record, pointer === "" ? words.report.asAWhole : clipText(pointer, LONGEST_TEXT)]);
  return details;
}

function nameSpot({ file, line, column }: NonNullable<Finding["where"]>): string {
  return makePrintable(`${file}:${line}:${column}`);
}

/** What was seen, what is accepted, by how much, and how far the instrument can tell. */
function listFigures(
  { observed, accept, margin, span, confidence }: Result,
  { report }: ReportWords,
): readonly Detail[] {
  const names = report.details;
  const details: Detail[] = [];
  if (observed !== undefined) details.push([names.seen, clipText(observed, LONGEST_TEXT)]);
  if (accept !== undefined) details.push([names.accepted, clipText(accept.replaceAll("`", ""), LONGEST_TEXT)]);
  if (margin !== undefined) details.push([names.margin, describeMargin(margin, report)]);
  if (span !== undefined && confidence !== undefined) {
    details.push([names.trueValue, report.between(span.from, span.to, describeChance(confidence, report))]);
  }
  return details;
}

/** A margin of nothing is on the limit itself, which its bound includes or not. */
function describeMargin(margin: string, report: ReportWords["report"]): string {
  if (/^-?0(\.0+)? /.test(margin) || margin === "0") return report.onTheLimit;
  return margin.startsWith("-") ? report.beyond(margin.slice(1)) : report.inside(margin);
}

/** A sentence that a firefighter understands; cut, never rounded up. */
function describeChance(confidence: number, report: ReportWords["report"]): string {
  const hundred = Math.floor(confidence * 100);
  if (hundred === 0) return report.hardlyAnyChance;
  return report.chance(hundred);
}
