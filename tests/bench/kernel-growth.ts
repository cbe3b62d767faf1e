import { judgeRecord } from "../../src/evaluate/judge-record.js";
import { evaluate } from "../../src/index.js";
import { prepareText } from "./daily-policy.js";
import { divideTimings, findTiming, measureInTurn, printRatios, printTable, type Side } from "./measure.js";
import { createRandom } from "./random.js";
import { makeSizedRecords, writeSizedPolicy } from "./sized-policy.js";

const ROUNDS = 15;
const RECORDS = 200;
const STEPS = 24;

type Judge = "kernel" | "evaluate";

/** How the time of one record grows with the steps of the check. */
export function measureSteps(): void {
  const counts = [10, 20, 40, 80];
  const sides = counts.flatMap((count) => makeSides(String(count), count, 0.05));
  const timings = measureApart(sides);
  const rows = counts.map((count) => {
    const kernel = perRecord(findTiming(timings, `kernel ${count}`).least);
    const whole = perRecord(findTiming(timings, `evaluate ${count}`).least);
    return [count, kernel, kernel / count, whole, whole / count].map((value, place) =>
      value.toFixed(place === 0 ? 0 : 3),
    );
  });
  console.log("\ngrowth with the steps of a check, µs a record by the least of the rounds");
  printTable(["steps", "kernel", "a step", "evaluate", "a step"], rows);
  const eightfold = (judge: Judge) =>
    divideTimings(
      "kernel",
      `${judge}: 80 steps / 10 steps`,
      timings,
      [`${judge} 80`, `${judge} 10`],
      "shown, 8 is linear",
    );
  printRatios([eightfold("kernel"), eightfold("evaluate")]);
}

/** How it grows with the share of steps that are outside. */
export function measureFindings(): void {
  const shares = [0, 20, 50, 100];
  const timings = measureApart(shares.flatMap((share) => makeSides(`${share} %`, STEPS, share / 100)));
  const rows = shares.map((share) =>
    [`kernel ${share} %`, `evaluate ${share} %`].map((name) => perRecord(findTiming(timings, name).least).toFixed(3)),
  );
  console.log(`\ngrowth with the share of ${STEPS} steps that are outside, µs a record by the least of the rounds`);
  printTable(
    ["share", "kernel", "evaluate"],
    rows.map((row, index) => [`${shares[index]} %`, ...row]),
  );
  const compare = (judge: Judge, target: string) =>
    divideTimings("kernel", `${judge}: all outside / all within`, timings, [`${judge} 100 %`, `${judge} 0 %`], target);
  printRatios([compare("kernel", "<= 2"), compare("evaluate", "<= 2")]);
}

function perRecord(milliseconds: number): number {
  return (milliseconds * 1000) / RECORDS;
}

/** The kernel and `evaluate` for the same records; both count what is neither within nor left out. */
function makeSides(name: string, steps: number, bad: number): readonly Side[] {
  const { policy, prepared } = prepareText(writeSizedPolicy(steps));
  const records = makeSizedRecords(steps, RECORDS, bad, createRandom(steps));
  const count = (outcomes: readonly { readonly outcome: string }[]) =>
    outcomes.reduce((sum, { outcome }) => sum + (outcome === "within" ? 1 : outcome.length), 0);
  const makeSide = (judge: Judge, run: (record: unknown) => number): Side => ({
    name: `${judge} ${name}`,
    run: () => records.reduce<number>((sum, record) => sum + run(record), 0),
  });
  return [
    makeSide("kernel", (record) => count(judgeRecord(prepared, record).rows)),
    makeSide("evaluate", (record) => count(evaluate(policy, record).results)),
  ];
}

/** Sizes in turn; only the two judges of one size must give the same outcomes. */
function measureApart(sides: readonly Side[]) {
  const sums = sides.map((side) => side.run(0));
  sums.forEach((sum, index) => {
    if (index % 2 === 1 && sum !== sums[index - 1]) throw new Error(`${sides[index]?.name} and the kernel differ`);
  });
  const checked = sides.map((side, index) => ({ ...side, run: () => Number(side.run(0) === sums[index]) }));
  return measureInTurn(checked, ROUNDS);
}
