import type { BandPlan, BoundPlan, TolerancePlan } from "../model/index.js";
import { compareRational, type Dimension, type Rational, rationalOfQuantity } from "../quantities/index.js";
import { parseLimit } from "../steps/index.js";
import { joinRelations, type Relation, relateFixed } from "./relation.js";

/** How limits stand to the parent's. Of a caution band only the facts count: it never weighs more than advice. */
export function relateTolerances(parent: TolerancePlan | undefined, child: TolerancePlan | undefined): Relation {
  if (parent === undefined || child === undefined) return relateFixed(parent, child);
  if (parent.quantity !== child.quantity || parent.by !== child.by) return "cannot-compare";
  const fixed = relateFixed(
    [parent.comparison, parent.confidence, parent.trust],
    [child.comparison, child.confidence, child.trust],
  );
  const keyOf = (band: BandPlan) => JSON.stringify([sortScope(band), band.upTo]);
  const pairs = parent.bands.map((band) => [band, child.bands.find((other) => keyOf(other) === keyOf(band))] as const);
  if (parent.bands.length !== child.bands.length || pairs.some(([, other]) => other === undefined)) {
    return "cannot-compare";
  }
  const bands = pairs.map(([band, other]) =>
    other === undefined ? "cannot-compare" : relateBands(band, other, parent.quantity),
  );
  return joinRelations([fixed, ...bands]);
}

function sortScope({ for: scope = {} }: BandPlan) {
  return Object.entries(scope)
    .map(([fact, values]) => [fact, [...values].sort()] as const)
    .sort(([one], [other]) => (one < other ? -1 : 1));
}

/**
 * Why: where a fact of a limit or of a caution band is not stated nothing is decided, not even what another limit would reject.
 * So a fact more or less can work either way.
 */
function relateBands(parent: BandPlan, child: BandPlan, dimension: Dimension): Relation {
  return joinRelations([
    relateFixed(listFacts(parent, dimension), listFacts(child, dimension)),
    ...(["low", "high"] as const).map((side) =>
      relateSides(readSide(parent.accept, side, dimension), readSide(child.accept, side, dimension), side),
    ),
  ]);
}

function listFacts({ accept, caution }: BandPlan, dimension: Dimension): readonly string[] {
  const limits = [...accept, ...caution.flat()].map(({ limit }) => parseLimit(limit, dimension));
  return [...new Set(limits.flatMap((read) => (read.form === "share" ? [read.fact] : [])))].sort();
}

interface Limit {
  readonly value: Rational;
  readonly isOpen: boolean;
}

/** The tightest limits of one side: by the fact of which they are a share, which is above 0, or by `""` where they are none. */
type Side = ReadonlyMap<string, Limit>;

function readSide(bounds: readonly BoundPlan[], side: "low" | "high", dimension: Dimension): Side {
  const kinds = side === "low" ? ["at-least", "above"] : ["at-most", "below"];
  const tightest = new Map<string, Limit>();
  for (const { kind, limit } of bounds) {
    if (!kinds.includes(kind)) continue;
    const read = parseLimit(limit, dimension);
    if (read.form === "fault") throw new Error(`a limit of a plan cannot be read: ${limit}`);
    const of = read.form === "share" ? read.fact : "";
    const value = rationalOfQuantity(read.form === "share" ? read.share : read.quantity);
    const one: Limit = { value, isOpen: kind === "above" || kind === "below" };
    const known = tightest.get(of);
    if (known === undefined || relateLimits(known, one, side) === "tighter") tightest.set(of, one);
  }
  return tightest;
}

function relateSides(parent: Side, child: Side, side: "low" | "high"): Relation {
  const names = new Set([...parent.keys(), ...child.keys()]);
  return joinRelations([...names].map((name) => relateLimits(parent.get(name), child.get(name), side)));
}

function relateLimits(parent: Limit | undefined, child: Limit | undefined, side: "low" | "high"): Relation {
  if (parent === undefined) return child === undefined ? "same" : "tighter";
  if (child === undefined) return "looser";
  const order = compareRational(child.value, parent.value);
  if (order === 0) {
    if (parent.isOpen === child.isOpen) return "same";
    return child.isOpen ? "tighter" : "looser";
  }
  return (order === 1) === (side === "low") ? "tighter" : "looser";
}
