import type { CheckPlan, IntervalPlan, Plan } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";
import { parseLimit } from "../steps/index.js";
import { type PreparedFact, prepareFacts } from "./prepared-fact.js";

type JsonSchema = { readonly [key: string]: unknown };

/** How the values of a record are described; each may also be left out. */
export interface ValueSchemas {
  readonly text: JsonSchema;
  readonly date: JsonSchema;
  readonly flag: JsonSchema;
  readonly list: JsonSchema;
  /** `least`: of which the policy takes a share, so that 0 is none either; or which it compares, so that only less is none. */
  quantity(dimension: Dimension, least?: "above-nothing" | "nothing"): JsonSchema;
}

/** As long a list as a pointer with an index is followed into; each place before it is written out. */
const LONGEST_LIST = 1000;

/**
 * What a policy reads of a record beside its steps: declared facts, dates from which something falls due, texts and lists of the
 * subject. One schema each, to hold all together.
 */
export function describeFacts(plan: Plan, check: CheckPlan, values: ValueSchemas): readonly JsonSchema[] {
  const prepared = prepareFacts(plan.facts);
  const limits = readLimits(check);
  const facts = plan.facts.flatMap(({ name }) => {
    const fact = prepared.get(name);
    if (fact === undefined) return [];
    const least = limits.shares.has(name) ? "above-nothing" : limits.sizes.has(name) ? "nothing" : undefined;
    const value = nest(fact.at, describeValue(fact, values, least));
    return fact.each === undefined ? [value] : [nest(fact.each, { items: value })];
  });
  const dates = check.intervals
    .flatMap((interval) => [interval, ...interval.adoptions.flatMap(({ otherwise }) => otherwise ?? [])])
    .flatMap((interval) => describeDates(interval, check, values.date));
  const named = check.steps.flatMap((step) => [
    ...nestNamed(step.each, values.list),
    ...(step.kind === "match" ? [step.equals, step.differsFrom].flatMap((name) => nestNamed(name, values.text)) : []),
  ]);
  return [...facts, ...dates, ...named];
}

/** The facts of which limits are shares, and those by whose size they are chosen. */
function readLimits({ steps, adoptions }: CheckPlan): Readonly<Record<"shares" | "sizes", ReadonlySet<string>>> {
  const asked = [...steps, ...adoptions.flatMap(({ otherwise }) => otherwise ?? [])];
  const tolerances = asked.flatMap(({ requirements }) => requirements.flatMap(({ tolerance }) => tolerance ?? []));
  const stated = tolerances.flatMap(({ quantity, bands }) =>
    bands.flatMap(({ accept, caution }) => [accept, ...caution].flat().map(({ limit }) => parseLimit(limit, quantity))),
  );
  // Why any dimension: a share is read as one whatever it is a share of, and only shares are looked for.
  const adopted = adoptions.flatMap(({ accept = [] }) => accept.map(({ limit }) => parseLimit(limit, "pressure")));
  return {
    shares: new Set([...stated, ...adopted].flatMap((limit) => (limit.form === "share" ? [limit.fact] : []))),
    sizes: new Set(tolerances.flatMap(({ by }) => by ?? [])),
  };
}

function describeValue(
  { kind, dimension }: PreparedFact,
  values: ValueSchemas,
  least: "above-nothing" | "nothing" | undefined,
): JsonSchema {
  if (kind === "quantity") return dimension === undefined ? {} : values.quantity(dimension, least);
  return values[kind];
}

/** On the subject where its kind may be that of the interval, on each member of its list where it may be another. */
function describeDates(
  { of, date }: Pick<IntervalPlan, "of" | "date">,
  { subject }: CheckPlan,
  schema: JsonSchema,
): readonly JsonSchema[] {
  const own = nest(["subject", date], schema);
  const listed = nest(["subject", `${of}s`], { items: nest([date], schema) });
  if (subject === undefined) return [own, listed];
  if (subject.kind === of) return [own];
  return subject.formerly.includes(of) ? [own, listed] : [listed];
}

function nestNamed(name: string | undefined, schema: JsonSchema): readonly JsonSchema[] {
  return name?.startsWith("subject.") === true ? [nest(["subject", name.slice("subject.".length)], schema)] : [];
}

/** A schema of what stands under keys, or in places of lists, whatever stands beside it. */
function nest(keys: readonly string[], schema: JsonSchema): JsonSchema {
  return keys.reduceRight<JsonSchema>((inner, key) => {
    const place = /^(0|[1-9]\d*)$/.test(key) ? Number(key) : LONGEST_LIST;
    const listed = place < LONGEST_LIST ? { prefixItems: [...new Array<JsonSchema>(place).fill({}), inner] } : {};
    return { properties: { [key]: inner }, ...listed };
  }, schema);
}
