import type { Assessment, Finding, Result } from "../model/index.js";

/** The findings of an assessment, sorted to what they are about. */
export interface AssignedFindings {
  readonly ofResult: ReadonlyMap<Result, readonly Finding[]>;
  /** What is about no result: remarks on the record or beside what was asked. */
  readonly remarks: readonly Finding[];
}

/** Finds the result that each finding is about. No finding is lost, and none stands twice. */
export function assignFindings({ results, findings }: Assessment): AssignedFindings {
  const byName = new Map<string, Result[]>();
  for (const result of results) {
    const name = nameResult(result);
    const others = byName.get(name);
    if (others === undefined) byName.set(name, [result]);
    else others.push(result);
  }
  const ofResult = new Map<Result, Finding[]>();
  const remarks: Finding[] = [];
  for (const finding of findings) {
    const result = pickResult(finding, byName.get(nameResult(finding)) ?? [], ofResult);
    if (result === undefined) remarks.push(finding);
    else ofResult.set(result, [...(ofResult.get(result) ?? []), finding]);
  }
  return { ofResult, remarks };
}

/** Where several results have one name, as with two members of one id: the one whose evidence it is, else the first without any. */
function pickResult(
  { pointer }: Finding,
  candidates: readonly Result[],
  taken: ReadonlyMap<Result, unknown>,
): Result | undefined {
  const free = candidates.filter((result) => !taken.has(result));
  return free.find(({ pointers }) => pointers[0] === pointer) ?? free[0] ?? candidates[0];
}

/** Why: a broken order names the step that stands too late, its one result none. */
function nameResult({ requirement, step, part, interval, rule, outcome, reason }: Finding | Result): string {
  return JSON.stringify([
    requirement ?? null,
    requirement === "order" ? null : (step ?? null),
    part ?? null,
    interval ?? null,
    rule ?? null,
    outcome ?? null,
    reason ?? null,
  ]);
}
