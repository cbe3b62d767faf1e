import type { Assessment, Finding, Result } from "../model/index.js";
import { describeBasis } from "./describe-basis.js";
import type { Paint, ReportOptions } from "./palette.js";
import { clipText, makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

const CONSEQUENCE_TONES = { note: "dim", advise: "strong", refer: "warn", withdraw: "bad" } as const;
const CONSEQUENCE_COLUMNS = 10;
const LABEL_COLUMNS = 12;
const INDENT = " ".repeat(2 + CONSEQUENCE_COLUMNS);
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
  const label = `  ${paint(CONSEQUENCE_TONES[consequence], consequence.padEnd(CONSEQUENCE_COLUMNS))}`;
  const about = nameAbout(finding);
  const message = capitalise(clipText(finding.message, LONGEST_MESSAGE));
  if (consequence === "note") {
    const [first = "", ...others] = wrapText(about === "" ? message : `${about}: ${message}`, options.width, INDENT);
    return [`${label}${first.trimStart()}`, ...others];
  }
  const details = listDetails(finding, findResult(finding, assessment));
  return [
    "",
    `${label}${paint("strong", about === "" ? "the record" : about)}`,
    ...wrapText(message, options.width, INDENT),
    ...details.flatMap(([name, text]) =>
      wrapText(text, options.width, INDENT + " ".repeat(LABEL_COLUMNS), INDENT + name.padEnd(LABEL_COLUMNS)).map(
        (line) => paint("dim", line),
      ),
    ),
  ];
}

/** `charge, C-413, level: outside`. */
function nameAbout(finding: Finding): string {
  const { part, requirement, outcome, reason } = finding;
  const names = [nameAsker(finding), part, requirement].filter((word) => word !== undefined && word !== "");
  const about = names.map((name) => clipText(String(name), LONGEST_NAME)).join(", ");
  const became = [outcome, reason].filter((word) => word !== undefined).join(", ");
  return became === "" ? about : `${about === "" ? "the record" : about}: ${became}`;
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

type Detail = readonly [name: string, text: string];

function listDetails(finding: Finding, result: Result | undefined): readonly Detail[] {
  const { where, limitAt, basis, pointer } = finding;
  const details: Detail[] = [];
  if (finding.outcome !== undefined && result !== undefined) details.push(...listFigures(result));
  if (where !== undefined) details.push(["policy", nameSpot(where)]);
  if (limitAt !== undefined) details.push(["limit", nameSpot(limitAt)]);
  if (basis !== undefined) details.push(["basis", makePrintable(describeBasis(basis))]);
  details.push(["record", pointer === "" ? "as a whole" : clipText(pointer, LONGEST_TEXT)]);
  return details;
}

function nameSpot({ file, line, column }: NonNullable<Finding["where"]>): string {
  return makePrintable(`${file}:${line}:${column}`);
}

/** What was seen, what is accepted, by how much, and how far the instrument can tell. */
function listFigures({ observed, accept, margin, span, confidence }: Result): readonly Detail[] {
  const details: Detail[] = [];
  if (observed !== undefined) details.push(["seen", clipText(observed, LONGEST_TEXT)]);
  if (accept !== undefined) details.push(["accepted", clipText(accept.replaceAll("`", ""), LONGEST_TEXT)]);
  if (margin !== undefined) details.push(["margin", describeMargin(margin)]);
  if (span !== undefined && confidence !== undefined) {
    details.push(["true value", `between ${span.from} and ${span.to}; ${describeChance(confidence)}`]);
  }
  return details;
}

/** A margin of nothing is on the limit itself, which its bound includes or not. */
function describeMargin(margin: string): string {
  if (/^-?0(\.0+)? /.test(margin) || margin === "0") return "none: exactly on the limit";
  return margin.startsWith("-") ? `${margin.slice(1)} beyond the limit` : `${margin} inside the limit`;
}

/** A sentence that a firefighter understands; cut, never rounded up. */
function describeChance(confidence: number): string {
  const hundred = Math.floor(confidence * 100);
  if (hundred === 0) return "hardly any chance that it is inside the limit";
  return `about ${hundred} in 100 that it is inside the limit`;
}
