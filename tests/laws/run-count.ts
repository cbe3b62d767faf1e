import fc from "fast-check";

/** How many cases each law is tried on in the long run; undefined in any other. */
const CASES = process.env["TENBAR_CASES"] === undefined ? undefined : Number(process.env["TENBAR_CASES"]);

/** How many records are tried under each policy: compiling takes most of the time of a long run. */
export const RECORDS_EACH = CASES === undefined ? 1 : 8;

/**
 * How often a law is tried: as often as its cases ask for in the long run, where one try holds `casesEach` of them; in any other
 * `usual` times, more or fewer as `TENBAR_RUNS` stands to 1000, 400 where it is not set.
 */
export function countRuns(usual: number, casesEach = 1): number {
  if (CASES !== undefined) return Math.ceil(CASES / casesEach);
  return Math.ceil((usual * Number(process.env["TENBAR_RUNS"] ?? 400)) / 1000);
}

/** `usual`, or the cases of the long run: for laws that are quick. */
export const countQuickRuns = (usual: number): number => CASES ?? usual;

/** Whether a law is tried so seldom, as mutation testing does, that nothing can be said of what its cases hold. */
export const areRunsFew = countRuns(1000) < 100;

/** What is drawn anew for each record of one policy. */
export const several = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<readonly T[]> =>
  fc.array(arbitrary, { minLength: RECORDS_EACH, maxLength: RECORDS_EACH });

let counted = 0;

/** Counts a case that was tried, in laws of which one try holds several. */
export function countCase(): void {
  counted += 1;
}

/** How many cases were counted since this was asked last. */
export function takeCount(): number {
  const count = counted;
  counted = 0;
  return count;
}
