import { stringify } from "csv-stringify/sync";
import type { Assessment, Finding, Result } from "../model/index.js";
import { DIMENSIONS, parseQuantity } from "../quantities/index.js";
import type { Verdict } from "../terms/index.js";
import { assignFindings } from "./assign-findings.js";
import { replaceForbidden } from "./plain-characters.js";

const COLUMNS = [
  "recordId",
  "at",
  "check",
  "subject",
  "verdict",
  "step",
  "interval",
  "rule",
  "part",
  "requirement",
  "outcome",
  "reason",
  "consequence",
  "weighs",
  "observed",
  "accept",
  "margin",
  "confidence",
  "code",
  "message",
  "pointer",
  "policy",
  "deference",
] as const;

type Row = { readonly [name in (typeof COLUMNS)[number]]?: string | number | null | undefined };

/** What a record weighs that nobody judged: the verdict of such a record, and of one that was not even read. */
const UNJUDGED: Verdict = "refer";

/** What a spreadsheet may take for a formula; those behind an apostrophe too, so that taking one away gives the text back. */
const FORMULA = /^'*[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;
const NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;

/** The header of the table (RFC 4180). */
export function renderCsvHead(): string {
  return writeRows([Object.fromEntries(COLUMNS.map((name) => [name, name]))]);
}

/**
 * The rows of one assessment: one for each result, one for each remark, one for each problem of a record that was not judged.
 *
 * @param at the time that the record states, as it states it
 */
export function renderCsvRows(assessment: Assessment, at: string | undefined): string {
  const { recordId, check, subject, verdict, policy, deference, results, problems = [] } = assessment;
  const shared: Row = { recordId, at, check, subject, verdict, policy: `${policy.id} ${policy.version}`, deference };
  const { ofResult, remarks } = assignFindings(assessment);
  const rows: readonly Row[] = [
    ...problems.map(({ pointer, message }) => ({
      weighs: UNJUDGED,
      code: "not-judged",
      message: `cannot be judged: ${message}`,
      pointer,
    })),
    ...results.map((result) => makeResultRow(result, ofResult.get(result) ?? [])),
    ...remarks.map(makeRemarkRow),
  ];
  return writeRows(rows, shared);
}

/** The row of something that could not be read as a record. */
export function renderUnreadRow(problem: string, deference: string): string {
  return writeRows([{ weighs: UNJUDGED, code: "not-read", message: problem, deference }]);
}

function makeResultRow(result: Result, findings: readonly Finding[]): Row {
  const { pointers, span, without, adopted, evidence, ...row } = result;
  return {
    ...row,
    weighs: findings[0]?.consequence,
    code: findings[0]?.code,
    message: findings.map(({ message }) => message).join("; "),
    pointer: findings.length === 0 ? pointers.join(" ") : findings.map(({ pointer }) => pointer).join(" "),
  };
}

function makeRemarkRow({ consequence, fingerprint, params, basis, where, limitAt, ...row }: Finding): Row {
  return { ...row, weighs: consequence };
}

/** Writes rows; where one says nothing of a column, what all of them share stands in it. */
function writeRows(rows: readonly Row[], shared: Row = {}): string {
  const defaults = COLUMNS.map((name) => guardCell(String(shared[name] ?? "")));
  const cells = rows.map((row) =>
    COLUMNS.map((name, index) => (row[name] === undefined ? defaults[index] : guardCell(String(row[name])))),
  );
  return stringify(cells, { record_delimiter: "\r\n" });
}

function guardCell(text: string): string {
  const cell = replaceForbidden(text);
  if (!FORMULA.test(cell) || NUMBER.test(cell)) return cell;
  return DIMENSIONS.some((dimension) => parseQuantity(cell, dimension).ok) ? cell : `'${cell}`;
}
