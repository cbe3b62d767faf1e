import type { BandPlan, BoundPlan, TolerancePlan } from "../model/index.js";
import { compareRational, type Dimension, type Rational, rationalOfQuantity } from "../quantities/index.js";
import { parseLimit } from "../steps/index.js";
import { joinRelations, type Relation, relateFixed } from "./relation.js";

/** How limits stand to the parent's. The caution band is left out: it never weighs more than advice. */
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

function relateBands(parent: BandPlan, child: BandPlan, dimension: Dimension): Relation {
  return joinRelations(
    (["low", "high"] as const).map((side) =>
      relateSides(readSide(parent.accept, side, dimension), readSide(child.accept, side, dimension), side),
    ),
  );
}

/** The tightest limit of one side. A share of a fact is measured in that fact, which is above 0. */
interface Side {
  readonly of: string;
  readonly value: Rational;
  readonly isOpen: boolean;
}

type ReadSide = Side | "none" | "mixed";

function readSide(bounds: readonly BoundPlan[], side: "low" | "high", dimension: Dimension): ReadSide {
  const kinds = side === "low" ? ["at-least", "above"] : ["at-most", "below"];
  let tightest: ReadSide = "none";
  for (const { kind, limit } of bounds) {
    if (!kinds.includes(kind)) continue;
    const read = parseLimit(limit, dimension);
    if (read.form === "fault") return "mixed";
    const isOpen = kind === "above" || kind === "below";
    const one: Side =
      read.form === "share"
        ? { of: read.fact, value: rationalOfQuantity(read.share), isOpen }
        : { of: "", value: rationalOfQuantity(read.quantity), isOpen };
    if (tightest === "none") tightest = one;
    else if (tightest.of !== one.of) return "mixed";
    else if (relateSides(tightest, one, side) === "tighter") tightest = one;
  }
  return tightest;
}

function relateSides(parent: ReadSide, child: ReadSide, side: "low" | "high"): Relation {
  if (parent === "mixed" || child === "mixed") return "cannot-compare";
  if (parent === "none") return child === "none" ? "same" : "tighter";
  if (child === "none") return "looser";
  if (parent.of !== child.of) return "cannot-compare";
  const order = compareRational(child.value, parent.value);
  if (order === 0) {
    if (parent.isOpen === child.isOpen) return "same";
    return child.isOpen ? "tighter" : "looser";
  }
  return (order === 1) === (side === "low") ? "tighter" : "looser";
}
