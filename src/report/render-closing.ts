import type { Assessment, Plan } from "../model/index.js";
import { VERDICTS, type Verdict } from "../terms/index.js";
import { createPaint, type ReportOptions, wordsOf } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

/** How many records came to each verdict. */
export interface VerdictCounts extends Readonly<Record<Verdict, number>> {
  /** Of those: records whose envelope is broken. */
  readonly notJudged: number;
  /** Inputs, lines or members that could not be read and are in no other count. */
  readonly notRead: number;
}

export const NO_VERDICTS: VerdictCounts = { meets: 0, refer: 0, withdraw: 0, notJudged: 0, notRead: 0 };

export function countVerdict(counts: VerdictCounts, { verdict, judged }: Assessment): VerdictCounts {
  const key: Verdict = verdict ?? "refer";
  return { ...counts, [key]: counts[key] + 1, notJudged: counts.notJudged + (judged ? 0 : 1) };
}

const DIGEST_CHARACTERS = "sha256:".length + 12;
const WIDEST_TABLE = 50;
const NUMBER_COLUMNS = 10;

/** Once per run: the verdicts where there are several, the policy, what stands above it, and what to know before using it. */
export function renderClosing(counts: VerdictCounts, plan: Plan, options: ReportOptions): string {
  const lines = [
    ...renderCounts(counts, options),
    ...wrapText(wordsOf(options).report.reach, options.width, ""),
    ...renderPolicyHead(plan, options),
  ];
  return `${lines.join("\n")}\n`;
}

function renderCounts(counts: VerdictCounts, options: ReportOptions): readonly string[] {
  const { notJudged, notRead } = counts;
  const { report, verdicts } = wordsOf(options);
  const total = VERDICTS.reduce((sum, verdict) => sum + counts[verdict], 0);
  if (total + notRead < 2) return [];
  const labelColumns = Math.min(options.width, WIDEST_TABLE) - NUMBER_COLUMNS;
  const row = (label: string, entry: number | string) =>
    label.padEnd(labelColumns) + String(entry).padStart(NUMBER_COLUMNS);
  return [
    createPaint(options)("strong", row(report.verdictColumn, report.recordColumn)),
    ...VERDICTS.flatMap((verdict) => [
      row(verdicts[verdict], counts[verdict]),
      ...(verdict === "refer" && notJudged > 0 ? [row(`  ${report.ofTheseNotJudged}`, notJudged)] : []),
    ]),
    row(report.inAll, total),
    ...(notRead === 0 ? [] : [row(report.besideTheseNotRead, notRead)]),
    "",
  ];
}

/** Which policy it was, what stands above it, and its cautions. */
export function renderPolicyHead(plan: Plan, options: ReportOptions): readonly string[] {
  const { id, version, title } = plan.policy;
  const { width } = options;
  const name = wordsOf(options).report.policy(id, version, title, plan.digest.slice(0, DIGEST_CHARACTERS));
  return [
    ...wrapText(makePrintable(name), width, ""),
    ...wrapText(makePrintable(plan.deference), width, ""),
    ...plan.cautions.flatMap((caution) => wrapText(makePrintable(caution), width, "    ", "  - ")),
  ];
}
