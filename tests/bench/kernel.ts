// The kernel against json-logic-js behind ajv, and against a judge that is written by hand for one policy.
import { judgeRecord } from "../../src/evaluate/judge-record.js";
import { evaluate } from "../../src/index.js";
import type { Outcome } from "../../src/terms/index.js";
import { compareJudges } from "./compare-judges.js";
import { prepareDailyPolicy } from "./daily-policy.js";
import { makeDailyRecords } from "./daily-records.js";
import { judgeByHand } from "./hand-judge.js";
import { hasRecordShape, judgeByJsonLogic } from "./json-logic-judge.js";
import { measureFindings, measureSteps } from "./kernel-growth.js";
import { divideTimings, measureInTurn, printRatios, printTable, type Side } from "./measure.js";
import { addOddKeys, overfillRecord } from "./odd-records.js";
import { createRandom } from "./random.js";

const ROUNDS = 41;
/** Few enough to stay in the cache of the processor, as a record does that was parsed a moment ago. */
const RECORDS = 400;
const COMPARED = 20_000;

const { policy, prepared } = prepareDailyPolicy();

compareAll();
measureSides();
measureSteps();
measureFindings();

/** Before anything is timed: the sides agree on records of which most are spoiled. */
function compareAll(): void {
  const records = makeDailyRecords(COMPARED, createRandom(7), { twins: 0.3, spoiled: 0.85, mostSpoils: 4 });
  const { requirements, tally } = compareJudges(prepared, records);
  console.log(`${COMPARED} records, ${requirements} requirements: kernel, hand and json-logic-js agree`);
  compareOdd(records);
  const rows = [...tally].sort(([, one], [, other]) => other - one).map(([ruling, count]) => [ruling, String(count)]);
  printTable(["outcome and reason", "times"], rows);
}

/** Unknown keys and deep nesting change nothing, or leave the record unjudged, by every side. */
function compareOdd(records: readonly unknown[]): void {
  const odd = [...addOddKeys(records, createRandom(13)), overfillRecord(records[0])];
  const { requirements } = compareJudges(prepared, odd);
  const unjudged = odd.filter((record) =>
    judgeRecord(prepared, record).problems.some(({ code }) => code === "too-deep"),
  );
  if (unjudged.length === 0 || requirements === 0) throw new Error("no record nests too deep, or every one does");
  console.log(`the same records with odd keys, ${unjudged.length} of them too deep to be judged: they agree too`);
}

function measureSides(): void {
  const records = makeDailyRecords(RECORDS, createRandom(11), { twins: 0.1, spoiled: 0.22, mostSpoils: 1 });
  compareJudges(prepared, records);
  const bytes = records.reduce<number>((sum, record) => sum + JSON.stringify(record).length, 0) / RECORDS;
  const requirements = records.reduce<number>((sum, record) => sum + judgeByHand(record).length, 0) / RECORDS;
  const found = records.filter((record) => judgeByHand(record).some(isFinding)).length / RECORDS;
  console.log(
    `\n${RECORDS} records of ${bytes.toFixed(0)} bytes and ${requirements.toFixed(1)} requirements on average; ${(found * 100).toFixed(1)} % have findings`,
  );
  const sides: readonly Side[] = [
    makeSide("kernel", records, (record) => judgeRecord(prepared, record).rows),
    makeSide("evaluate", records, (record) => evaluate(policy, record).results),
    makeSide("json-logic-js and ajv", records, judgeByJsonLogic, (outcome) => outcome),
    makeSide("by hand", records, judgeByHand),
  ];
  const timings = measureInTurn(sides, ROUNDS);
  printTable(
    ["side", "µs a record, median", "least"],
    timings.map(({ name, median, least }) => [name, writeMicroseconds(median), writeMicroseconds(least)]),
  );
  const divide = (name: string, base: string, target: string) =>
    divideTimings("kernel", `time of ${name} / ${base}`, timings, [name, base], target);
  printRatios([
    divide("json-logic-js and ajv", "kernel", ">= 10"),
    divide("kernel", "by hand", "<= 1.5"),
    divide("evaluate", "by hand", "<= 4"),
    divide("json-logic-js and ajv", "evaluate", ">= 2"),
    divide("evaluate", "kernel", "shown"),
  ]);
  measureShape(records);
}

function isFinding({ outcome }: { readonly outcome: Outcome }): boolean {
  return outcome !== "within" && outcome !== "not-applicable";
}

/** A side whose checksum looks at one ruling of every record, another one in each run. */
function makeSide<T extends { readonly outcome: Outcome } | Outcome>(
  name: string,
  records: readonly unknown[],
  judge: (record: unknown) => readonly T[],
  read: (ruling: T) => Outcome = readOutcome,
): Side {
  return {
    name,
    run(turn) {
      let sum = 0;
      for (const [index, record] of records.entries()) {
        const rulings = judge(record);
        const ruling = rulings[(index + turn) % rulings.length];
        sum += rulings.length + (ruling === undefined ? 0 : read(ruling).length * ((index % 97) + 1));
      }
      return sum;
    },
  };
}

function readOutcome(ruling: { readonly outcome: Outcome } | Outcome): Outcome {
  return typeof ruling === "string" ? ruling : ruling.outcome;
}

/** The share of ajv in its side, for whoever wants json-logic-js alone. */
function measureShape(records: readonly unknown[]): void {
  const run = () => records.reduce<number>((sum, record) => sum + (hasRecordShape(record) ? 1 : 0), 0);
  const [shape] = measureInTurn([{ name: "ajv", run }], ROUNDS);
  console.log(`of which ajv ${writeMicroseconds(shape?.median ?? Number.NaN)} µs a record`);
}

/** Microseconds a record, of the milliseconds of one run. */
function writeMicroseconds(milliseconds: number): string {
  return ((milliseconds * 1000) / RECORDS).toFixed(3);
}
