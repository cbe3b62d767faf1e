import type { InstrumentPlan } from "../model/index.js";
import {
  type Dimension,
  type Family,
  type Instrument,
  type IntegerRange,
  isOnDivision,
  parseQuantity,
  type Quantity,
  type Rational,
  rangeOfBounds,
  rationalOfQuantity,
} from "../quantities/index.js";
import { isMissing, type JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { differenceOf } from "./limit.js";

/** An instrument of a plan with its figures turned into numbers. */
export interface PreparedInstrument {
  readonly name: string;
  readonly exact: Instrument;
  /** The whole quanta that it can show at all. */
  rangeOf(family: Family): IntegerRange;
  /** False where the record states a value between two divisions. */
  canShow(quantity: Quantity): boolean;
}

/** Invariant: a plan was compiled by this library, so its figures parse; one that does not is a bug and throws. */
export function prepareInstrument(plan: InstrumentPlan, dimension: Dimension): PreparedInstrument {
  const exact: Instrument = {
    division: readFigure(plan.division, differenceOf(dimension)),
    rounding: plan.rounding,
    maxError: readFigure(plan.maxError, differenceOf(dimension)),
    errors: plan.errors,
    rangeLow: readFigure(plan.range?.[0], dimension),
    rangeHigh: readFigure(plan.range?.[1], dimension),
  };
  const ranges = new Map<Family, IntegerRange>();
  return {
    name: plan.name,
    exact,
    rangeOf(family) {
      const known = ranges.get(family);
      if (known !== undefined) return known;
      const range = rangeOfBounds(
        [
          ...(exact.rangeLow === undefined ? [] : [{ kind: "at-least" as const, limit: exact.rangeLow }]),
          ...(exact.rangeHigh === undefined ? [] : [{ kind: "at-most" as const, limit: exact.rangeHigh }]),
        ],
        family,
      );
      ranges.set(family, range);
      return range;
    },
    canShow: makeDivisionCheck(exact),
  };
}

function makeDivisionCheck(exact: Instrument): (quantity: Quantity) => boolean {
  const { division } = exact;
  if (division === undefined) return () => true;
  const whole = division.denominator === 1n ? Number(division.numerator) : Number.NaN;
  return (quantity) => {
    const { family, offsetQuanta } = quantity.unit;
    // Why: in a family whose quantum is the base quantum the remainder of two whole doubles is exact.
    if (whole > 0 && family.quantumNumerator === family.quantumDenominator) {
      return (quantity.quanta - offsetQuanta) % whole === 0;
    }
    return isOnDivision(rationalOfQuantity(quantity), exact, quantity.unit);
  };
}

function readFigure(text: string | undefined, dimension: Dimension): Rational | undefined {
  if (text === undefined) return undefined;
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`a figure of a plan's instrument cannot be read: ${text}`);
  return rationalOfQuantity(parsed.quantity);
}

/** The instrument of a step: one, or one of several, of which the record says which was read. */
export interface InstrumentChoice {
  /** Those that may have been read; undefined where the record names another than the policy knows here. */
  select(entry: JsonObject, context: JudgeContext): readonly PreparedInstrument[] | undefined;
}

/**
 * The record step's own word goes before the subject's. Where nothing is said, or only the name of the group, each candidate
 * counts, and the worst of them decides.
 */
export function chooseInstrument(name: string, candidates: readonly PreparedInstrument[]): InstrumentChoice {
  const byName = new Map(candidates.map((candidate) => [candidate.name, [candidate]]));
  return {
    select(entry, context) {
      const recorded = isMissing(entry.instrument) ? context.instrumentRecorded(name) : entry.instrument;
      if (isMissing(recorded) || recorded === name) return candidates;
      return typeof recorded === "string" ? byName.get(recorded.trim()) : undefined;
    },
  };
}

/** True where every instrument that may have been read can show the quantity. */
export function canAllShow(instruments: readonly PreparedInstrument[] | undefined, quantity: Quantity): boolean {
  if (instruments !== undefined) for (const one of instruments) if (!one.canShow(quantity)) return false;
  return true;
}

/** One list for all, by which words are remembered. */
export const NO_INSTRUMENTS: readonly PreparedInstrument[] = [];

/** The instruments that a reading may have been read on: none where the step names none, undefined for another than it knows. */
export type Candidates = readonly PreparedInstrument[] | undefined;

/** The instruments that an entry may have been read on, looked up once for all of its readings. */
export function selectCandidates(
  choice: InstrumentChoice | undefined,
  entry: JsonObject,
  context: JudgeContext,
): Candidates {
  return choice === undefined ? NO_INSTRUMENTS : choice.select(entry, context);
}

/** The instruments that a recorded entry may have been read on; none where nothing is known of them. */
export function selectFor(
  choice: InstrumentChoice | undefined,
  entry: JsonObject | undefined,
  context: JudgeContext,
): readonly PreparedInstrument[] {
  return (entry === undefined ? undefined : choice?.select(entry, context)) ?? NO_INSTRUMENTS;
}
