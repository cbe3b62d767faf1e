import { judgeRecord } from "../../src/evaluate/judge-record.js";
import type { PreparedPolicy } from "../../src/evaluate/prepared-policy.js";
import { judgeByHand } from "./hand-judge.js";
import { judgeByJsonLogic } from "./json-logic-judge.js";

/** What the comparison saw, so that a set of records in which nothing is wrong is noticed. */
export interface Agreement {
  readonly records: number;
  readonly requirements: number;
  /** How often each outcome, with its reason, came about. */
  readonly tally: ReadonlyMap<string, number>;
}

/**
 * Judges every record by the kernel, by hand and by json-logic-js. The first two must agree on outcome and reason of every
 * requirement, the third on the outcome; the first difference throws.
 */
export function compareJudges(prepared: PreparedPolicy, records: readonly unknown[]): Agreement {
  const tally = new Map<string, number>();
  let requirements = 0;
  for (const record of records) {
    const rows = judgeRecord(prepared, record).rows;
    const kernel = rows.map((row) => writeRuling(row.outcome, row.undecidedFor ?? row.notApplicableFor));
    const hand = judgeByHand(record).map(({ outcome, reason }) => writeRuling(outcome, reason));
    const names = rows.map(({ requirement, part }) => `${requirement.key} ${part ?? ""}`);
    findDifference("the hand-written judge", names, kernel, hand, record);
    const outcomes = rows.map(({ outcome }) => outcome);
    findDifference("json-logic-js", names, outcomes, judgeByJsonLogic(record), record);
    requirements += rows.length;
    for (const ruling of kernel) tally.set(ruling, (tally.get(ruling) ?? 0) + 1);
  }
  return { records: records.length, requirements, tally };
}

function writeRuling(outcome: string, reason: string | undefined): string {
  return reason === undefined ? outcome : `${outcome}: ${reason}`;
}

function findDifference(
  judge: string,
  names: readonly string[],
  kernel: readonly string[],
  other: readonly string[],
  record: unknown,
): void {
  for (let index = 0; index < Math.max(kernel.length, other.length); index += 1) {
    if (kernel[index] === other[index]) continue;
    const text = JSON.stringify(record);
    throw new Error(`${names[index]}: the kernel says ${kernel[index]}, ${judge} ${other[index]}\n${text}`);
  }
}
