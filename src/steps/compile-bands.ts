import type { BandPlan, PolicyBounds, PolicyTolerance, ScopePlan, TolerancePlan } from "../model/index.js";
import { compareRational, type Dimension, rationalOfQuantity } from "../quantities/index.js";
import { compileBounds, isEmptyBand, readLimit } from "./compile-bounds.js";
import type { CompileContext } from "./compile-context.js";
import { findFactDimension, listQuantityFacts } from "./fact-type.js";

type Limits = Pick<TolerancePlan, "bands" | "by" | "byQuantity">;
type LimitPair = Pick<PolicyTolerance, "accept" | "caution">;

interface LimitsAt {
  readonly bounds: PolicyBounds;
  readonly pointer: string;
}

/** Reads what is accepted and the caution band; reports an empty band and a caution band that lies outside. */
export function compileBand(
  accept: LimitsAt,
  caution: LimitsAt | undefined,
  dimension: Dimension,
  context: CompileContext,
): BandPlan | undefined {
  const accepted = compileBounds(accept.bounds, accept.pointer, dimension, context);
  const close = caution === undefined ? [] : compileBounds(caution.bounds, caution.pointer, dimension, context);
  if (accepted === undefined || close === undefined) return undefined;
  const bounds = accepted.flat();
  if (isEmptyBand(bounds, dimension)) {
    context.diagnostics.report("plan/empty-band", context.place(accept.pointer), {});
    return undefined;
  }
  if (caution !== undefined && close.every((region) => isEmptyBand([...bounds, ...region], dimension))) {
    context.diagnostics.report("plan/empty-caution", context.place(caution.pointer), {});
  }
  return { accept: bounds, caution: close.map((region) => [...region]) };
}

/** Compiles `accept` and `caution` that stand beside each other under `pointer`. */
export function compileLimitPair(
  { accept, caution }: LimitPair,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): BandPlan | undefined {
  if (accept === undefined) return undefined;
  return compileBand(
    { bounds: accept, pointer: `${pointer}/accept` },
    caution === undefined ? undefined : { bounds: caution, pointer: `${pointer}/caution` },
    dimension,
    context,
  );
}

/** Cases that no record can satisfy two of; two that overlap are reported with both places. */
export function compileCases(
  cases: NonNullable<PolicyTolerance["cases"]>,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): Limits | undefined {
  const scopes: (ScopePlan | undefined)[] = [];
  const bands = cases.map((one, index): BandPlan | undefined => {
    const at = `${pointer}/${index}`;
    const scope = context.scope(one.for, `${at}/for`);
    // Why: what a case with a misspelt fact is for cannot be told, so nothing can be said of its overlap.
    const isKnown = Object.keys(scope).every((fact) => context.factTypes.has(fact));
    const first = isKnown ? scopes.findIndex((other) => other !== undefined && canOverlap(scope, other)) : -1;
    scopes.push(isKnown ? scope : undefined);
    const band = compileLimitPair(one, at, dimension, context);
    if (first !== -1) {
      const related = [
        { message: context.diagnostics.words.related.otherCase, place: context.place(`${pointer}/${first}/for`) },
      ];
      context.diagnostics.report("plan/cases-overlap", context.place(`${at}/for`), {}, related);
      return undefined;
    }
    return band === undefined ? undefined : { ...band, for: scope };
  });
  const usable = bands.filter((band) => band !== undefined);
  return usable.length < bands.length ? undefined : { bands: usable };
}

/** Whether two scopes can hold for the same record: not where a fact of both has no value in common. */
function canOverlap(one: ScopePlan, other: ScopePlan): boolean {
  return Object.entries(one).every(([fact, values]) => {
    const others = other[fact];
    return others === undefined || values.some((value) => others.includes(value));
  });
}

/** Rows by a quantity fact, each up to and including its `up-to`, which rises from row to row. */
export function compileRows(
  { fact, rows }: NonNullable<PolicyTolerance["accept-by"]>,
  pointer: string,
  dimension: Dimension,
  context: CompileContext,
): Limits | undefined {
  const byQuantity = findFactDimension(fact, context.factTypes);
  if (byQuantity === undefined) {
    const known = listQuantityFacts(context.factTypes);
    context.diagnostics.report("plan/unknown-name", context.place(`${pointer}/fact`), {
      thing: "quantity fact",
      name: fact,
      known,
      nearest: context.nearest(fact, known),
    });
    return undefined;
  }
  let last: ReturnType<typeof rationalOfQuantity> | undefined;
  const bands = rows.map((row, index): BandPlan | undefined => {
    const at = `${pointer}/rows/${index}`;
    const limit = readLimit(row["up-to"], `${at}/up-to`, byQuantity, context);
    const band = compileLimitPair(row, at, dimension, context);
    if (limit === undefined || band === undefined) return undefined;
    if (limit.form === "share") {
      context.diagnostics.report("plan/share-in-row", context.place(`${at}/up-to`), {});
      return undefined;
    }
    const value = rationalOfQuantity(limit.quantity);
    const rises = last === undefined || compareRational(value, last) === 1;
    last = value;
    if (!rises) {
      context.diagnostics.report("plan/rows-not-rising", context.place(`${at}/up-to`), { found: String(row["up-to"]) });
      return undefined;
    }
    return { ...band, upTo: row["up-to"] };
  });
  const usable = bands.filter((band) => band !== undefined);
  return usable.length < bands.length ? undefined : { bands: usable, by: fact, byQuantity };
}
