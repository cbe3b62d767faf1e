import type { Assessment, Finding, Result } from "../model/index.js";
import type { Row } from "../steps/index.js";
import { CONSEQUENCES, weighConsequence } from "../terms/index.js";
import { type AssessmentWords, sayRemark } from "../words/index.js";
import { addRowFindings, isFinding, isWholeFinding, nameWeight } from "./describe-findings.js";
import { type DescribedRow, describeRow, makeResult } from "./describe-rows.js";
import { ENGINE_VERSION } from "./engine-version.js";
import { joinAsked, makeFingerprint } from "./fingerprint.js";
import type { Judgement, Remark } from "./judgement.js";
import { addPositions } from "./positions.js";
import type { PreparedPolicy } from "./prepared-policy.js";
import type { Problem } from "./read-envelope.js";

const ADVISE = weighConsequence("advise");
const REFER = weighConsequence("refer");

/** What the caller asked for beside the judgement itself. */
export interface DescribeOptions {
  readonly isPartial: boolean;
  /** Undefined where none was asked for, null where the record has none. */
  readonly recordDigest: string | null | undefined;
  readonly words: AssessmentWords;
}

/** Puts a judgement into words: byte-identical for the same policy, record and options. */
export function describeJudgement(
  judgement: Judgement,
  policy: PreparedPolicy,
  record: unknown,
  { isPartial, recordDigest, words }: DescribeOptions,
): Assessment {
  const { envelope, rows, stepOf, remarks } = judgement;
  if (isPartial) for (const row of rows) awaitEvidence(row);
  const results: Result[] = [];
  const findings: Finding[] = [];
  const doubts: Remark[] = [];
  for (let index = 0; index < rows.length; index += 1) {
    const row = rows[index];
    if (row === undefined) continue;
    const described = describeRow(row, stepOf[index], judgement, words);
    results.push(makeResult(described));
    if (isFinding(row)) addRowFindings(described, judgement, policy, words, findings);
    if (isDoubtful(described)) doubts.push(remarkDoubt(described));
  }
  for (const remark of [...remarks, ...doubts, ...(recordDigest === null ? [NO_DIGEST] : [])]) {
    if (isPartial && remark.reason === "nothing-judged") continue;
    findings.push(describeRemark(remark, judgement, policy, words));
  }
  const assessed = {
    tenbar: 1,
    kind: "assessment",
    recordId: envelope?.id ?? readName(record, "id"),
    check: envelope?.check ?? readName(record, "check"),
    subject: envelope?.subjectId ?? null,
    judged: envelope !== undefined,
    verdict: isPartial ? null : nameVerdict(judgement.weight),
    policy: { id: policy.plan.policy.id, version: policy.plan.policy.version, digest: policy.plan.digest },
    engine: ENGINE_VERSION,
    counts: countOutcomes(rows),
    results,
    findings: sortFindings(findings),
    deference: policy.plan.deference,
  } as const;
  if (envelope !== undefined && recordDigest === undefined) return assessed;
  const { deference, ...rest } = assessed;
  return {
    ...rest,
    ...(envelope === undefined
      ? { problems: judgement.problems.map((problem) => describeProblem(problem, words)) }
      : {}),
    ...(recordDigest === undefined ? {} : { recordDigest }),
    deference,
  };
}

const NO_DIGEST: Remark = { code: "record/no-digest", weight: 0, pointer: "", params: {} };

/** What a half-filled form does not hold yet is not missing. */
function awaitEvidence(row: Row): void {
  if (row.undecidedFor === "missing") row.undecidedFor = "not-yet";
}

/** Within as read, yet more likely outside than not. */
function isDoubtful({ row: { outcome }, words: { confidence } }: DescribedRow): boolean {
  return confidence !== undefined && confidence < 0.5 && (outcome === "within" || outcome === "caution");
}

/** Why: the decision stands, and the reader is told. */
function remarkDoubt({ row, words, pointers }: DescribedRow): Remark {
  const { confidence, observed = "", accept = "" } = words;
  return {
    code: "step/more-likely-outside",
    weight: Math.min(ADVISE, weighConsequence(row.consequence)),
    pointer: pointers[0] ?? "/steps",
    step: row.requirement.step,
    part: row.part,
    requirement: row.requirement,
    params: { observed, accept, confidence: String(confidence) },
  };
}

function readName(record: unknown, key: "id" | "check"): string | null {
  if (typeof record !== "object" || record === null) return null;
  const text: unknown = Object.entries(record).find(([name]) => name === key)?.[1];
  return typeof text === "string" ? text : null;
}

function nameVerdict(weight: number): Assessment["verdict"] {
  if (weight < REFER) return "meets";
  return weight === REFER ? "refer" : "withdraw";
}

function countOutcomes(rows: readonly Row[]): Assessment["counts"] {
  const counts = { within: 0, caution: 0, outside: 0, undecided: 0, notApplicable: 0 };
  for (const { outcome } of rows) {
    // Why: by a name that is known beforehand; most are within.
    if (outcome === "within") counts.within += 1;
    else counts[outcome === "not-applicable" ? "notApplicable" : outcome] += 1;
  }
  return counts;
}

function describeProblem({ pointer, code, ...params }: Problem, { problems }: AssessmentWords) {
  return { pointer, message: problems[code](params) };
}

function describeRemark(
  remark: Remark,
  { envelope }: Judgement,
  policy: PreparedPolicy,
  words: AssessmentWords,
): Finding {
  const { code, step, interval, part, requirement, defect } = remark;
  const params = fillOpenEnds(remark.params, words);
  const finding: Partial<Finding> = { code };
  if (step !== undefined) finding.step = step;
  if (interval !== undefined) finding.interval = interval;
  if (part !== undefined) finding.part = part;
  if (requirement !== undefined) finding.requirement = requirement.name;
  if (remark.outcome !== undefined) finding.outcome = remark.outcome;
  if (remark.reason !== undefined) finding.reason = remark.reason;
  finding.consequence = nameWeight(remark.weight);
  finding.pointer = remark.pointer;
  if (requirement !== undefined) addPositions(finding, policy.findingOf(requirement).positions);
  finding.params = params;
  finding.message = sayRemark(words.remarks, code, params);
  finding.fingerprint = makeFingerprint({
    policy: policy.encodedId,
    subject: envelope?.subjectId ?? "",
    part,
    asked: joinAsked(step ?? interval, requirement?.name, code),
    defect: defect ?? nameThing(remark),
  });
  if (!isWholeFinding(finding)) throw new Error("a remark lacks what every finding has");
  return finding;
}

const OPEN_ENDS = ["from", "to", "until"] as const;

/** A date that the policy leaves out, in words. */
function fillOpenEnds(params: Remark["params"], { openEnds }: AssessmentWords): Record<string, string> {
  const filled: Record<string, string> = { ...params };
  for (const end of OPEN_ENDS) if (filled[end] === "") filled[end] = openEnds[end];
  return filled;
}

/** What tells two remarks of one step, or of the record, apart from day to day: a place, a key, or where a key of the record stands. */
function nameThing({ step, pointer, params }: Remark): string | undefined {
  if (params.place !== undefined) return params.place;
  return params.key === undefined || step !== undefined ? params.key : pointer;
}

const WORST_FIRST = [...CONSEQUENCES].reverse();

/** Worst first; findings that weigh the same stay in policy order, remarks behind them. */
function sortFindings(findings: Finding[]): Finding[] {
  if (findings.length < 2) return findings;
  const sorted: Finding[] = [];
  for (const wanted of WORST_FIRST) {
    for (const finding of findings) if (finding.consequence === wanted) sorted.push(finding);
  }
  return sorted;
}
