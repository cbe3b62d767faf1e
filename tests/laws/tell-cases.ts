import fc from "fast-check";
import { expect } from "vitest";
import { takeCount } from "./run-count.js";

// Tells of every law of the long run how many cases it was tried on. One that was tried on fewer than were asked for fails;
// elsewhere than here, what is tried seldom is a twin that is wrong on purpose, or takes seconds.

const wanted = Number(process.env["TENBAR_CASES"]);
let since = performance.now();

function tell<Ts>(details: fc.RunDetails<Ts>): void {
  const inner = takeCount();
  if (details.failed) throw new Error(fc.defaultReportMessage(details));
  const cases = inner === 0 ? details.numRuns : inner;
  const seconds = Math.round((performance.now() - since) / 1000);
  since = performance.now();
  const { currentTestName, testPath } = expect.getState();
  const file = testPath?.split(/[\\/]tests[\\/]/).at(-1);
  process.stdout.write(`${cases} cases, seed ${details.seed}, ${seconds} s: ${file} > ${currentTestName}\n`);
  if (cases < wanted && /^(laws|compare|evaluate)\b/.test(file ?? ""))
    throw new Error(`${cases} cases were tried, and ${wanted} are asked for`);
}

fc.configureGlobal({ ...fc.readConfigureGlobal(), reporter: tell });
