/** One of the things that are compared. */
export interface Side {
  readonly name: string;
  /** Does the whole work once and gives a checksum of its outcomes; `turn` may choose which of them it looks at. */
  run(turn: number): number;
}

export interface Timing {
  readonly name: string;
  /** Milliseconds of one run: of the processor within a process, of the clock for whole processes. */
  readonly least: number;
  readonly median: number;
}

export interface Ratio {
  readonly bench: string;
  readonly ratio: string;
  readonly byMedian: number;
  readonly byLeast: number;
  readonly target: string;
}

const WARM_UP_ROUNDS = 20;
const SHORTEST_MILLISECONDS = 15;

/**
 * Runs the sides in turn, A B C A B C …, so that a slow minute of the machine falls on all of them. Every side of a round must
 * give the same checksum: else one of them did not do the work, and that throws. The time is that of the processor, so that other
 * work on the machine counts as little as can be; a quick side is run several times in its turn.
 */
export function measureInTurn(sides: readonly Side[], rounds: number): readonly Timing[] {
  // Why: not between the rounds, since a full collection throws away optimized code along with the shapes of objects that are gone.
  globalThis.gc?.();
  for (let round = 0; round < WARM_UP_ROUNDS; round += 1) {
    compareChecksums(
      sides,
      sides.map((side) => side.run(round)),
    );
  }
  const turns = sides.map((side) => ({
    side,
    passes: Math.max(1, Math.ceil(SHORTEST_MILLISECONDS / timeRuns(side, 0, 1).took)),
    times: [] as number[],
  }));
  for (let round = 0; round < rounds; round += 1) {
    const sums = turns.map(({ side, passes, times }) => {
      const { sum, took } = timeRuns(side, round, passes);
      times.push(took);
      return sum;
    });
    compareChecksums(sides, sums);
  }
  return turns.map(({ side, times }) => summarize(side.name, times));
}

/** The checksum of the first of several runs, and the milliseconds of the processor that one takes. */
function timeRuns(side: Side, turn: number, passes: number): { sum: number; took: number } {
  // Why: what the side before left behind is not charged to this one.
  globalThis.gc?.({ type: "minor" });
  const from = process.cpuUsage();
  const sum = side.run(turn);
  for (let pass = 1; pass < passes; pass += 1) side.run(turn + pass);
  const { user, system } = process.cpuUsage(from);
  return { sum, took: (user + system) / 1000 / passes };
}

export function compareChecksums(sides: readonly Pick<Side, "name">[], sums: readonly number[]): void {
  sums.forEach((sum, index) => {
    if (sum === sums[0]) return;
    throw new Error(`the outcomes differ: ${sides[0]?.name} gives ${sums[0]}, ${sides[index]?.name} gives ${sum}`);
  });
}

export function summarize(name: string, times: readonly number[]): Timing {
  const sorted = [...times].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  const median = sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? Number.NaN)) / 2;
  return { name, least: sorted[0] ?? Number.NaN, median };
}

/** How many times as long as `base` a side took. */
export function divideTimings(
  bench: string,
  ratio: string,
  timings: readonly Timing[],
  [name, base]: readonly [string, string],
  target: string,
): Ratio {
  const over = findTiming(timings, name);
  const under = findTiming(timings, base);
  return { bench, ratio, byMedian: over.median / under.median, byLeast: over.least / under.least, target };
}

export function findTiming(timings: readonly Timing[], name: string): Timing {
  const found = timings.find((timing) => timing.name === name);
  if (found === undefined) throw new Error(`nothing was measured under the name ${name}`);
  return found;
}

/** Prints rows in columns, the first to the left and the others to the right. */
export function printTable(head: readonly string[], rows: readonly (readonly string[])[]): void {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
  for (const row of all) {
    const cells = row.map((cell, column) =>
      column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
    );
    console.log(cells.join("  ").trimEnd());
  }
}

/** Prints the ratios as a table and then each as a line of JSON. */
export function printRatios(ratios: readonly Ratio[]): void {
  printTable(
    ["ratio", "by median", "by least", "target"],
    ratios.map(({ ratio, byMedian, byLeast, target }) => [ratio, byMedian.toFixed(2), byLeast.toFixed(2), target]),
  );
  for (const ratio of ratios) console.log(JSON.stringify(ratio));
}
