/** How often a law is tried: `usual` times, more or fewer as `TENBAR_RUNS` stands to 1000; 400 where it is not set. */
export function countRuns(usual: number): number {
  return Math.ceil((usual * Number(process.env["TENBAR_RUNS"] ?? 400)) / 1000);
}

/** Whether a law is tried so seldom, as mutation testing does, that nothing can be said of what its cases hold. */
export const areRunsFew = countRuns(1000) < 100;
