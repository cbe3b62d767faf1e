import type { Assessment, Plan } from "../model/index.js";
import type { Verdict } from "../terms/index.js";
import { createPaint, type ReportOptions } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { countThings } from "./render-diagnostics.js";
import { wrapText } from "./wrap-text.js";

/** How many records came to each verdict. */
export interface VerdictCounts {
  readonly meets: number;
  readonly refer: number;
  readonly withdraw: number;
  /** Of those: records whose envelope is broken. */
  readonly notJudged: number;
}

export function countVerdict(counts: VerdictCounts, { verdict, judged }: Assessment): VerdictCounts {
  const key: Verdict = verdict ?? "refer";
  return { ...counts, [key]: counts[key] + 1, notJudged: counts.notJudged + (judged ? 0 : 1) };
}

export const NO_VERDICTS: VerdictCounts = { meets: 0, refer: 0, withdraw: 0, notJudged: 0 };

/** Once per run: the verdicts, the policy, what stands above it, and what to know before using it. */
export function renderClosing(counts: VerdictCounts, plan: Plan, options: ReportOptions): string {
  const paint = createPaint(options);
  const { meets, refer, withdraw, notJudged } = counts;
  const { id, version, title } = plan.policy;
  const total = countThings(meets + refer + withdraw, "record");
  const unjudged = notJudged === 0 ? "" : ` (${notJudged} of them could not be judged at all)`;
  return [
    ...wrapText(`${total}: ${meets} meets, ${refer} refer${unjudged}, ${withdraw} withdraw`, options.width, "").map(
      (line) => paint("strong", line),
    ),
    ...wrapText(makePrintable(`policy ${id} ${version}, ${title} (${plan.digest.slice(0, 19)})`), options.width, ""),
    ...wrapText(
      "An assessment speaks of one record; it says nothing about findings of earlier records.",
      options.width,
      "",
    ),
    ...wrapText(makePrintable(plan.deference), options.width, ""),
    ...renderCautions(plan, options),
    "",
  ].join("\n");
}

/** The policy's cautions as a list. */
function renderCautions({ cautions }: Plan, { width }: ReportOptions): readonly string[] {
  return cautions.flatMap((caution) =>
    wrapText(makePrintable(caution), width, "    ").map((line, index) => (index === 0 ? `  - ${line.slice(4)}` : line)),
  );
}
