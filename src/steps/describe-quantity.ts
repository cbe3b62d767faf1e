import {
  type Bound,
  compareRational,
  formatDifference,
  formatQuantity,
  formatRational,
  marginOfBounds,
  type Quantity,
  type Rational,
  rationalOfQuanta,
  rationalOfQuantity,
  type Span,
  spanOfDifference,
  spanOfReading,
  uniformsOfDifference,
  uniformsOfReading,
} from "../quantities/index.js";
import type { LimitWords } from "../words/index.js";
import { describeConfidence } from "./describe-confidence.js";
import type { JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { bandOf, FINER_THAN_DIVISION } from "./judge-quantity.js";
import type { PreparedInstrument } from "./prepared-instrument.js";
import { type Band, describeMargin } from "./prepared-tolerance.js";
import type { Row } from "./row.js";
import { type RowWords, type SpanWords, sayPlainly } from "./row-words.js";

type AnyUnit = Quantity["unit"];

/** A plain reading in words: as read, what it leaves open, what is accepted, how far from the limit, how sure. */
export function describeReading(
  row: Row,
  instruments: readonly PreparedInstrument[],
  member: JsonObject | undefined,
  context: JudgeContext,
  words: LimitWords,
): RowWords {
  const band = findBand(row, member, context);
  const { quanta, unit } = row;
  if (unit === undefined || Number.isNaN(quanta)) return sayPlainly(undefined, band?.describe(words));
  const quantity = { quanta, unit };
  const make = () => describeValue(row, quantity, band, instruments, words);
  if (band === undefined) return make();
  return band.memory.remember([numberState(row, unit), quanta], instruments, words, make);
}

/** What of a row's outcome and unit its words depend on, as one number. */
function numberState(row: Row, { index }: AnyUnit): number {
  return index * 4 + (row.outcome === "undecided" ? 2 : 0) + (isShown(row) ? 0 : 1);
}

function describeValue(
  row: Row,
  quantity: Quantity,
  band: Band | undefined,
  instruments: readonly PreparedInstrument[],
  words: LimitWords,
): RowWords {
  const value = rationalOfQuantity(quantity);
  const spans = instruments.map(({ exact }) => spanOfReading(value, exact));
  const uniforms = instruments.map(({ exact }) => uniformsOfReading(value, exact));
  return {
    observed: formatQuantity(quantity),
    accept: band?.describe(words),
    margin: describeDistance(row, band, value),
    span: describeSpan(spans, quantity.unit, formatRational),
    confidence: isShown(row) ? describeConfidence(uniforms, band?.accept, false) : undefined,
  };
}

/**
 * A difference of two readings in words, in the unit of the first.
 *
 * @param readings the readings of which the difference is the first less the second; none where it is no such difference
 */
export function describeChange(
  row: Row,
  readings: readonly [Quantity, Quantity] | undefined,
  instruments: readonly PreparedInstrument[],
  member: JsonObject | undefined,
  context: JudgeContext,
  words: LimitWords,
): RowWords {
  const band = findBand(row, member, context);
  const { quanta, unit } = row;
  if (unit === undefined || Number.isNaN(quanta)) return sayPlainly(undefined, band?.describe(words));
  const make = () => describeDifference(row, unit, readings, band, instruments, words);
  if (band === undefined) return make();
  const state = numberState(row, unit);
  // Invariant: both readings are of the family of `unit`.
  const key = readings === undefined ? [state, quanta] : [state, quanta, readings[0].quanta, readings[1].quanta];
  return band.memory.remember(key, instruments, words, make);
}

function describeDifference(
  row: Row,
  unit: AnyUnit,
  readings: readonly [Quantity, Quantity] | undefined,
  band: Band | undefined,
  instruments: readonly PreparedInstrument[],
  words: LimitWords,
): RowWords {
  const value = rationalOfQuanta(row.quanta, unit.family);
  const [first, second] = (readings ?? []).map(rationalOfQuantity);
  const known = first === undefined || second === undefined ? [] : instruments;
  const isSize = row.requirement.name === "change";
  const spans = known.map(({ exact }) =>
    first && second && !isSize ? spanOfDifference(first, second, exact) : undefined,
  );
  const uniforms = known.map(({ exact }) => (first && second ? uniformsOfDifference(first, second, exact) : undefined));
  return {
    observed: formatDifference(value, unit, "down"),
    accept: band?.describe(words),
    margin: describeDistance(row, band, value),
    span: describeSpan(spans, unit, formatDifference),
    confidence: isShown(row) ? describeConfidence(uniforms, band?.accept, isSize) : undefined,
  };
}

function findBand(row: Row, member: JsonObject | undefined, context: JudgeContext): Band | undefined {
  if (row.requirement.tolerance === undefined) return undefined;
  const band = bandOf(row.requirement, member, context);
  return typeof band === "string" ? undefined : band;
}

/** Whether the instrument can show what was recorded; a value between two divisions says nothing about the true one. */
function isShown(row: Row): boolean {
  return row.outcome !== "undecided" && !row.notes.includes(FINER_THAN_DIVISION);
}

type PrintRational = (value: Rational, unit: AnyUnit, cut: "down" | "up") => string;

/**
 * The span that holds every instrument's span, in words; nothing where one of them leaves it open. Ends that do not terminate
 * as decimals are cut outwards, so that the span only widens.
 */
function describeSpan(
  spans: readonly (Span | undefined)[],
  unit: AnyUnit,
  print: PrintRational,
): SpanWords | undefined {
  const known = spans.filter((span) => span !== undefined);
  const [first] = known;
  if (first === undefined || known.length < spans.length) return undefined;
  const hull = known.reduce(joinSpans, first);
  const ends = hull.fromOpen ? (hull.toOpen ? "()" : "(]") : hull.toOpen ? "[)" : "[]";
  return { from: print(hull.from, unit, "down"), to: print(hull.to, unit, "up"), ends };
}

function joinSpans(one: Span, other: Span): Span {
  const low = compareRational(one.from, other.from);
  const high = compareRational(one.to, other.to);
  return {
    from: low === 1 ? other.from : one.from,
    fromOpen: low === 0 ? one.fromOpen && other.fromOpen : low === 1 ? other.fromOpen : one.fromOpen,
    to: high === -1 ? other.to : one.to,
    toOpen: high === 0 ? one.toOpen && other.toOpen : high === -1 ? other.toOpen : one.toOpen,
  };
}

/** Why: a value that could not be decided has no margin; a large one would look better than it is. */
function describeDistance(row: Row, band: Band | undefined, value: Rational): string | undefined {
  if (row.outcome === "undecided" || row.unit === undefined || band === undefined) return undefined;
  const bounds: readonly Bound[] = band.accept;
  const margin = marginOfBounds(bounds, value);
  return margin && describeMargin(margin, row.unit);
}
