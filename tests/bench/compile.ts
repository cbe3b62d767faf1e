// Compiling a policy against parsing the same text with the YAML library alone.
import { parse, parseDocument } from "yaml";
import { compilePolicy } from "../../src/index.js";
import { divideTimings, findTiming, measureInTurn, printRatios, printTable, type Ratio, type Side } from "./measure.js";
import { writeSizedPolicy } from "./sized-policy.js";

const ROUNDS = 15;
const COUNTS = [250, 500, 1000, 2000];

const texts = COUNTS.map((count) => ({ count, text: writeSizedPolicy(count) }));
const timings = measureInTurn(texts.flatMap(makeSides).map(withoutSize), ROUNDS);
const rows = texts.map(({ count, text }) => {
  const figures = ["parse", "parseDocument", "compile"].map((name) => findTiming(timings, `${name} ${count}`).least);
  const last = figures.at(-1) ?? Number.NaN;
  return [
    String(count),
    (text.length / 1024).toFixed(0),
    ...figures.map((one) => one.toFixed(1)),
    ((last * 1000) / count).toFixed(1),
  ];
});
console.log("milliseconds by the least of the rounds");
printTable(["steps", "KiB", "yaml parse", "yaml parseDocument", "compilePolicy", "µs a step"], rows);
printRatios([
  ...COUNTS.flatMap((count) => [
    compare(
      `compilePolicy / yaml parse, ${count} steps`,
      `compile ${count}`,
      `parse ${count}`,
      count === 1000 ? "<= 3" : "shown",
    ),
    compare(
      `compilePolicy / yaml parseDocument, ${count} steps`,
      `compile ${count}`,
      `parseDocument ${count}`,
      "shown",
    ),
  ]),
  compare("compilePolicy: 2000 steps / 250 steps", "compile 2000", "compile 250", "shown, 8 is linear"),
  compare("yaml parse: 2000 steps / 250 steps", "parse 2000", "parse 250", "shown, 8 is linear"),
]);

function compare(ratio: string, name: string, base: string, target: string): Ratio {
  return divideTimings("compile", ratio, timings, [name, base], target);
}

/** Each side gives the number of steps that it found. */
function makeSides({ count, text }: { count: number; text: string }): readonly (Side & { count: number })[] {
  return [
    { count, name: `parse ${count}`, run: () => countSteps(parse(text)) },
    { count, name: `parseDocument ${count}`, run: () => countSteps(parseDocument(text).toJS()) },
    { count, name: `compile ${count}`, run: () => compilePolicy(text).policy?.plan.checks[0]?.steps.length ?? 0 },
  ];
}

function countSteps(value: unknown): number {
  const { checks }: { checks: { daily: { steps: readonly unknown[] } } } = Object(value);
  return checks.daily.steps.length;
}

/** Sizes in turn: a side's checksum is how far it is from the number of steps that there are. */
function withoutSize({ count, name, run }: Side & { count: number }): Side {
  return { name, run: (turn) => run(turn) - count };
}
