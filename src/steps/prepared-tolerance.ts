import type { BandPlan, BoundPlan, ScopePlan, TolerancePlan } from "../model/index.js";
import {
  type Bound,
  compareRational,
  type Dimension,
  type Family,
  formatDifference,
  formatQuantity,
  formatRational,
  type IntegerRange,
  isBelowNothing,
  type Quantity,
  type Rational,
  rangeOfBounds,
  rationalOfQuantity,
} from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import { type LimitWords, rememberWords } from "../words/index.js";
import { firstReason } from "./first-reason.js";
import type { JsonObject } from "./json-value.js";
import type { JudgeContext } from "./judge-context.js";
import { type ParsedLimit, parseLimit, takeShare } from "./limit.js";
import { createWordMemory, type WordMemory } from "./word-memory.js";

/** Whole quanta of one family that are accepted, and those among them that are close to a limit. */
export interface BandRanges {
  readonly accept: IntegerRange;
  readonly caution: readonly IntegerRange[];
}

/** Limits with every fact filled in. */
export interface Band {
  readonly accept: readonly Bound[];
  /** Such as `at most 10 bar` or `above 270 bar (90 % of rated-pressure)`. */
  describe(words: LimitWords): string;
  rangesOf(family: Family): BandRanges;
  /** The words of values that were compared with these limits. */
  readonly memory: WordMemory;
}

export interface PreparedTolerance {
  readonly dimension: Dimension;
  /** The band that holds for this record and member, or why none can be told. */
  bandFor(member: JsonObject | undefined, context: JudgeContext): Band | UndecidedReason;
}

interface ReadBound {
  readonly kind: BoundPlan["kind"];
  readonly limit: Exclude<ParsedLimit, { form: "fault" }>;
}

interface ReadBand {
  readonly accept: readonly ReadBound[];
  readonly caution: readonly (readonly ReadBound[])[];
  readonly facts: readonly string[];
}

/** Facts of one brigade take a handful of values; a hostile history must not fill the memory. */
const MOST_REMEMBERED_BANDS = 256;

/** Finds the band of one record and member. */
type BandSource = (member: JsonObject | undefined, context: JudgeContext) => Band | UndecidedReason;

/**
 * Turns planned limits into numbers.
 *
 * Invariant: a plan was compiled by this library, so its limits parse; a limit that does not is a bug and throws.
 */
export function prepareTolerance(plan: TolerancePlan): PreparedTolerance {
  const dimension = plan.quantity;
  const bands = plan.bands.map((band) => ({ scope: band.for, upTo: band.upTo, source: prepareBand(band, dimension) }));
  const [only] = bands;
  if (only === undefined) throw new Error("a tolerance of a plan has no band");
  if (plan.by !== undefined && plan.byQuantity !== undefined) {
    return { dimension, bandFor: chooseByQuantity(plan.by, plan.byQuantity, bands) };
  }
  if (bands.length === 1 && only.scope === undefined) return { dimension, bandFor: only.source };
  return { dimension, bandFor: chooseByScope(bands) };
}

interface BandChoice {
  readonly scope: ScopePlan | undefined;
  readonly upTo: string | number | undefined;
  readonly source: BandSource;
}

/** A missing fact leaves it open, and never gives the laxer case. */
function chooseByScope(bands: readonly BandChoice[]): BandSource {
  return (member, context) => {
    let open: UndecidedReason | undefined;
    let chosen: BandSource | undefined;
    for (const { scope, source } of bands) {
      const state = scope === undefined ? true : context.scopeState(scope);
      // Why: no two cases hold at once, but for one of the present kind of a subject and one of the former that it is recorded by.
      if (state === true && chosen !== undefined) return "facts-differ";
      if (state === true) chosen = source;
      else if (state !== false) open = firstReason(open, state);
    }
    return chosen === undefined ? (open ?? "no-case") : chosen(member, context);
  };
}

/** The first row whose `up-to` the fact does not exceed; a fact beyond the last row has no case. */
function chooseByQuantity(name: string, dimension: Dimension, bands: readonly BandChoice[]): BandSource {
  const rows = bands.map(({ upTo, source }) => {
    const limit = parseLimit(upTo ?? "", dimension);
    if (limit.form !== "quantity") throw new Error(`a row of a plan cannot be read: ${upTo}`);
    return { upTo: rationalOfQuantity(limit.quantity), source };
  });
  return (member, context) => {
    const fact = context.quantityFact(name, member);
    if (typeof fact === "string") return fact;
    // Why: the row of the smallest would take whatever lies below it, and a line of -8 m is no short line.
    if (isBelowNothing(fact)) return "unreadable";
    const value = rationalOfQuantity(fact);
    const row = rows.find(({ upTo }) => compareRational(value, upTo) !== 1);
    return row === undefined ? "no-case" : row.source(member, context);
  };
}

function prepareBand(plan: BandPlan, dimension: Dimension): BandSource {
  const read = readBand(plan, dimension);
  if (read.facts.length === 0) {
    const band = makeBand(read, new Map());
    return () => band;
  }
  const findBand = rememberBands(read);
  const [only] = read.facts;
  if (only === undefined || read.facts.length > 1)
    return (member, context) => fillFacts(read, member, context, findBand);
  // Why: nearly every share is of one fact, and a reader gives the same quantity whenever it meets the same text.
  const known = new WeakMap<Quantity, Band>();
  return (member, context) => {
    const fact = context.quantityFact(only, member);
    if (typeof fact === "string") return fact;
    const before = known.get(fact);
    if (before !== undefined) return before;
    const band = fillFacts(read, member, context, findBand);
    if (typeof band === "object") known.set(fact, band);
    return band;
  };
}

type Facts = ReadonlyMap<string, Quantity>;

/** Reads every fact that a share is of, or says why one cannot be used. */
function fillFacts(
  read: ReadBand,
  member: JsonObject | undefined,
  context: JudgeContext,
  findBand: (facts: Facts) => Band,
): Band | UndecidedReason {
  const facts = new Map<string, Quantity>();
  for (const name of read.facts) {
    const fact = context.quantityFact(name, member);
    if (typeof fact === "string") return fact;
    // Why: every reading would satisfy a share of nothing, or of less.
    if (fact.quanta <= 0) return "unreadable";
    facts.set(name, fact);
  }
  return findBand(facts);
}

/** Makes the band of some facts, or gives the one that was made of the same facts before. */
function rememberBands(read: ReadBand): (facts: Facts) => Band {
  const remembered = new Map<string, Band>();
  return (facts) => {
    let key = "";
    for (const { quanta, unit } of facts.values()) key += `${quanta} ${unit.index};`;
    const known = remembered.get(key);
    if (known !== undefined) return known;
    if (remembered.size >= MOST_REMEMBERED_BANDS) remembered.clear();
    const band = makeBand(read, facts);
    remembered.set(key, band);
    return band;
  };
}

function readBand(plan: BandPlan, dimension: Dimension): ReadBand {
  const facts = new Set<string>();
  const readBounds = (bounds: readonly BoundPlan[]): readonly ReadBound[] =>
    bounds.map(({ kind, limit: text }) => {
      const limit = parseLimit(text, dimension);
      if (limit.form === "fault") throw new Error(`a limit of a plan cannot be read: ${text}`);
      if (limit.form === "share") facts.add(limit.fact);
      return { kind, limit };
    });
  const accept = readBounds(plan.accept);
  const caution = plan.caution.map(readBounds);
  return { accept, caution, facts: [...facts] };
}

function makeBand(read: ReadBand, facts: ReadonlyMap<string, Quantity>): Band {
  const fill = ({ kind, limit }: ReadBound): Bound => ({ kind, limit: fillLimit(limit, facts) });
  const accept = read.accept.map(fill);
  const caution = read.caution.map((region) => [...accept, ...region.map(fill)]);
  const byFamily = new Map<Family, BandRanges>();
  return {
    accept,
    memory: createWordMemory(),
    describe: rememberWords((words) => describeBounds(read.accept, facts, words)),
    rangesOf(family) {
      const known = byFamily.get(family);
      if (known !== undefined) return known;
      const ranges = {
        accept: rangeOfBounds(accept, family),
        caution: caution.map((region) => rangeOfBounds(region, family)).filter(({ low, high }) => low <= high),
      };
      byFamily.set(family, ranges);
      return ranges;
    },
  };
}

function fillLimit(limit: ReadBound["limit"], facts: ReadonlyMap<string, Quantity>): Rational {
  if (limit.form === "quantity") return rationalOfQuantity(limit.quantity);
  const fact = facts.get(limit.fact);
  if (fact === undefined) throw new Error(`the fact ${limit.fact} was not filled in`);
  return takeShare(limit.share, fact);
}

function describeBounds(bounds: readonly ReadBound[], facts: ReadonlyMap<string, Quantity>, words: LimitWords): string {
  const [low, high] = bounds;
  if (bounds.length === 2 && low?.kind === "at-least" && high?.kind === "at-most") {
    return words.range([low, high].map(({ limit }) => describeLimit(limit, facts, words)));
  }
  return words.all(bounds.map(({ kind, limit }) => words.bounds[kind](describeLimit(limit, facts, words))));
}

function describeLimit(limit: ReadBound["limit"], facts: ReadonlyMap<string, Quantity>, words: LimitWords): string {
  if (limit.form === "quantity") return formatQuantity(limit.quantity);
  const fact = facts.get(limit.fact);
  if (fact === undefined) throw new Error(`the fact ${limit.fact} was not filled in`);
  const value = formatRational(takeShare(limit.share, fact), fact.unit, "down");
  return words.share(value, formatQuantity(limit.share), limit.fact);
}

/** Where whole quanta lie: one comparison each, exact. */
export function placeQuanta(ranges: BandRanges, quanta: number): "within" | "caution" | "outside" {
  const { low, high } = ranges.accept;
  if (!(quanta >= low && quanta <= high)) return "outside";
  for (const region of ranges.caution) if (quanta >= region.low && quanta <= region.high) return "caution";
  return "within";
}

/** The signed distance to the nearest limit in words, cut so that it never looks better than it is. */
export function describeMargin(margin: Rational, unit: Quantity["unit"]): string {
  return formatDifference(margin, unit, "down");
}
