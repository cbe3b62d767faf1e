import type { Finding } from "../model/index.js";
import { type PreparedRequirement, type Row, type RowWords, weighRow } from "../steps/index.js";
import { CONSEQUENCES, type Consequence } from "../terms/index.js";
import type { AssessmentWords } from "../words/index.js";
import { type DescribedRow, nameAsker } from "./describe-rows.js";
import { joinAsked, makeFingerprint } from "./fingerprint.js";
import type { BrokenPair, Judgement } from "./judgement.js";
import { addPositions } from "./positions.js";
import type { FindingOutcome } from "./prepared-finding.js";
import type { PreparedPolicy } from "./prepared-policy.js";

/** What is within or not applicable is no finding, nor is what a form does not hold yet. */
export function isFinding({ outcome, undecidedFor }: Row): boolean {
  return outcome !== "within" && outcome !== "not-applicable" && undecidedFor !== "not-yet";
}

/** Adds the findings of a row that is one: one, or one for each broken pair of an order. */
export function addRowFindings(
  described: DescribedRow,
  judgement: Judgement,
  policy: PreparedPolicy,
  words: AssessmentWords,
  findings: Finding[],
): void {
  const { row } = described;
  if (row.requirement.name !== "order" || row.outcome !== "outside") {
    findings.push(makeFinding(described, judgement, policy, undefined, words));
    return;
  }
  for (const pair of judgement.brokenPairs) findings.push(makeFinding(described, judgement, policy, pair, words));
}

/** Why: one key after the other, as in a result. */
function makeFinding(
  described: DescribedRow,
  { envelope }: Judgement,
  policy: PreparedPolicy,
  pair: BrokenPair | undefined,
  catalogue: AssessmentWords,
): Finding {
  const { row, words } = described;
  const { requirement, outcome } = row;
  if (outcome === "within" || outcome === "not-applicable") throw new Error("what is within is no finding");
  const { positions, of } = policy.findingOf(requirement);
  const { code, asked } = of[outcome];
  const finding = beginFinding(described, outcome, code, pair, policy);
  addPositions(finding, positions);
  finding.params = collectParams(row, words, pair);
  if (requirement.plan.basis !== undefined) finding.basis = requirement.plan.basis;
  finding.message = describeMessage(row, words, pair, catalogue);
  finding.fingerprint = makeFingerprint({
    policy: policy.encodedId,
    subject: envelope?.subjectId ?? "",
    part: row.part,
    asked: pair === undefined ? asked : joinAsked(pair.late, requirement.name, code),
    defect: pair?.early ?? row.details?.defect,
  });
  if (!isWholeFinding(finding)) throw new Error("a finding lacks what every finding has");
  return finding;
}

/** The part of a finding that comes before where the policy asks for it. */
function beginFinding(
  { row, pointers }: DescribedRow,
  outcome: FindingOutcome,
  code: string,
  pair: BrokenPair | undefined,
  { gapsAsOutside }: PreparedPolicy,
): Partial<Finding> {
  const { requirement, part, undecidedFor } = row;
  const { step, name } = requirement;
  const consequence = nameWeight(weighRow(row, gapsAsOutside));
  const pointer = pair === undefined ? (pointers[0] ?? pointNowhere(requirement)) : `/steps/${pair.lateEntry}`;
  // Why: most findings begin like this, and a literal is made at once, as in a result.
  if (step !== undefined && part === undefined && undecidedFor === undefined) {
    return { code, step, requirement: name, outcome, consequence, pointer };
  }
  const finding: Partial<Finding> = { code };
  Object.assign(finding, pair === undefined ? nameAsker(requirement) : { step: pair.late });
  if (part !== undefined) finding.part = part;
  finding.requirement = name;
  finding.outcome = outcome;
  if (undecidedFor !== undefined) finding.reason = undecidedFor;
  finding.consequence = consequence;
  finding.pointer = pointer;
  return finding;
}

/** Where a finding points for which nothing is recorded. */
function pointNowhere({ kind }: PreparedRequirement): string {
  return kind === "rule" ? "" : "/steps";
}

export function isWholeFinding(finding: Partial<Finding>): finding is Finding {
  const { code, consequence, pointer, params, message, fingerprint } = finding;
  return (
    code !== undefined &&
    consequence !== undefined &&
    pointer !== undefined &&
    params !== undefined &&
    message !== undefined &&
    fingerprint !== undefined
  );
}

function collectParams(
  { details, undecidedFor }: Row,
  { observed, accept }: RowWords,
  pair: BrokenPair | undefined,
): Record<string, string> {
  // Why: most findings have these two alone, and a literal is made at once.
  if (details === undefined && pair === undefined && undecidedFor === undefined) {
    if (observed !== undefined && accept !== undefined) return { observed, accept };
  }
  const params: Record<string, string> = {};
  // Why: keys that are added behind spread ones took a fifth of the time of a record where everything is outside.
  Object.assign(params, details);
  if (observed !== undefined) params.observed = observed;
  if (accept !== undefined) params.accept = accept;
  if (pair !== undefined) {
    params.late = pair.late;
    params.early = pair.early;
  }
  if (undecidedFor !== undefined) params.reason = undecidedFor;
  return params;
}

function describeMessage(
  { requirement, outcome, undecidedFor, details }: Row,
  { observed, accept = "" }: RowWords,
  pair: BrokenPair | undefined,
  { findings, limits }: AssessmentWords,
): string {
  if (outcome !== "outside" && outcome !== "caution") {
    return findings.undecided(requirement.name, undecidedFor, observed);
  }
  return findings.decided[requirement.name]({
    outcome,
    observed,
    accept,
    never: observed === limits.didNotOccur,
    quantity: requirement.tolerance?.dimension,
    defect: details?.defect,
    late: pair?.late,
    early: pair?.early,
    forbids: details?.forbids,
  });
}

/** The consequence at a position in `CONSEQUENCES`. */
export function nameWeight(weight: number): Consequence {
  return CONSEQUENCES[weight] ?? "note";
}
