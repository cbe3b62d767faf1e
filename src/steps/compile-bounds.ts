import type { BoundPlan, PolicyBounds } from "../model/index.js";
import {
  type Bound,
  compareRational,
  type Dimension,
  formatQuantity,
  rationalOfQuantity,
  unitSymbolsOf,
} from "../quantities/index.js";
import type { CompileContext } from "./compile-context.js";
import { findFactDimension, listQuantityFacts } from "./fact-type.js";
import { differenceOf, mendLimit, type ParsedLimit, parseLimit } from "./limit.js";

type ReadLimit = Exclude<ParsedLimit, { form: "fault" }>;

/** The bounds of one YAML map, each a region of its own: under `accept` all hold, under `caution` any. */
export type CompiledBounds = readonly (readonly BoundPlan[])[];

const ONE_SIDED = ["at-least", "at-most", "above", "below"] as const;

/** Reads `accept`, `caution` or a step's own limit; undefined where a limit cannot be used, which is then reported. */
export function compileBounds(
  bounds: PolicyBounds,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): CompiledBounds | undefined {
  const regions: (readonly BoundPlan[])[] = [];
  let usable = true;
  for (const kind of ONE_SIDED) {
    const limit = bounds[kind];
    if (limit === undefined) continue;
    if (readLimit(limit, `${pointer}/${kind}`, dimension, context) === undefined) usable = false;
    regions.push([{ kind, limit }]);
  }
  for (const region of [compileBetween, compileNominal]) {
    const compiled = region(bounds, pointer, dimension, context);
    if (compiled === "unusable") usable = false;
    else if (compiled !== undefined) regions.push(compiled);
  }
  if (usable && regions.length === 0) {
    context.diagnostics.report("plan/no-limit", context.place(pointer), {});
    return undefined;
  }
  return usable ? regions : undefined;
}

type CompiledRegion = readonly BoundPlan[] | "unusable" | undefined;

function compileBetween(
  bounds: PolicyBounds,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): CompiledRegion {
  const [low, high] = bounds.between ?? [];
  if (low === undefined || high === undefined) return undefined;
  const first = readLimit(low, `${pointer}/between/0`, dimension, context);
  const second = readLimit(high, `${pointer}/between/1`, dimension, context);
  if (first === undefined || second === undefined) return "unusable";
  if (compareLimits(first, second) === 1) {
    context.diagnostics.report("plan/swapped-bounds", context.place(`${pointer}/between`), {
      low: String(low),
      high: String(high),
    });
    return "unusable";
  }
  return [
    { kind: "at-least", limit: low },
    { kind: "at-most", limit: high },
  ];
}

function compileNominal(
  bounds: PolicyBounds,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): CompiledRegion {
  const { nominal, "plus-minus": plusMinus } = bounds;
  if (nominal === undefined && plusMinus === undefined) return undefined;
  if (nominal === undefined || plusMinus === undefined) {
    const present = nominal === undefined ? "plus-minus" : "nominal";
    const absent = nominal === undefined ? "nominal" : "plus-minus";
    context.diagnostics.report("plan/half-stated", context.place(`${pointer}/${present}`, "key"), { present, absent });
    return "unusable";
  }
  const middle = readLimit(nominal, `${pointer}/nominal`, dimension, context);
  const half = readLimit(plusMinus, `${pointer}/plus-minus`, differenceOf(dimension), context);
  if (middle === undefined || half === undefined) return "unusable";
  if (middle.form === "share" || half.form === "share") {
    context.diagnostics.report("plan/share-in-nominal", context.place(pointer), {});
    return "unusable";
  }
  const { unit, quanta } = middle.quantity;
  if (half.quantity.unit.family !== unit.family && differenceOf(dimension) === dimension) {
    context.diagnostics.report("plan/mixed-units", context.place(`${pointer}/plus-minus`), {
      nominal: String(nominal),
      plusMinus: String(plusMinus),
    });
    return "unusable";
  }
  const writeLimit = (limit: number) => (dimension === "count" ? limit : formatQuantity({ quanta: limit, unit }));
  return [
    { kind: "at-least", limit: writeLimit(quanta - half.quantity.quanta) },
    { kind: "at-most", limit: writeLimit(quanta + half.quantity.quanta) },
  ];
}

/** Reads one limit and reports what is wrong with it. */
export function readLimit(
  limit: string | number,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): ReadLimit | undefined {
  const read = parseLimit(limit, dimension);
  const place = context.place(pointer);
  if (read.form === "fault") {
    context.diagnostics.report("plan/bad-quantity", place, {
      found: String(limit),
      fault: read.fault,
      dimension,
      units: unitSymbolsOf(dimension),
      mend: mendLimit(limit, dimension),
    });
    return undefined;
  }
  if (read.form === "share") {
    const factDimension = findFactDimension(read.fact, context.factTypes);
    if (factDimension === undefined) {
      const known = listQuantityFacts(context.factTypes);
      context.diagnostics.report("plan/unknown-name", place, {
        thing: "quantity fact",
        name: read.fact,
        known,
        nearest: context.nearest(read.fact, known),
      });
      return undefined;
    }
    if (factDimension !== dimension) {
      context.diagnostics.report("plan/wrong-dimension", place, { found: factDimension, dimension });
      return undefined;
    }
  }
  return read;
}

function compareLimits(one: ReadLimit, other: ReadLimit): -1 | 0 | 1 | undefined {
  if (one.form === "quantity" && other.form === "quantity") {
    return compareRational(rationalOfQuantity(one.quantity), rationalOfQuantity(other.quantity));
  }
  if (one.form === "share" && other.form === "share" && one.fact === other.fact) {
    return compareRational(rationalOfQuantity(one.share), rationalOfQuantity(other.share));
  }
  return undefined;
}

/** True where no value can satisfy all bounds; false also where shares leave it open. */
export function isEmptyBand(bounds: readonly BoundPlan[], dimension: Dimension): boolean {
  const exact: Bound[] = [];
  for (const { kind, limit } of bounds) {
    const read = parseLimit(limit, dimension);
    if (read.form === "quantity") exact.push({ kind, limit: rationalOfQuantity(read.quantity) });
  }
  const lows = exact.filter(({ kind }) => kind === "at-least" || kind === "above");
  const highs = exact.filter(({ kind }) => kind === "at-most" || kind === "below");
  return lows.some((low) =>
    highs.some((high) => {
      const order = compareRational(low.limit, high.limit);
      return order === 1 || (order === 0 && (low.kind === "above" || high.kind === "below"));
    }),
  );
}
