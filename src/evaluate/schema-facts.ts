import type { CheckPlan, IntervalPlan, Plan } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";
import { type PreparedFact, prepareFacts } from "./prepared-fact.js";

type JsonSchema = { readonly [key: string]: unknown };

/** How the values of a record are described; each may also be left out. */
export interface ValueSchemas {
  readonly text: JsonSchema;
  readonly date: JsonSchema;
  readonly flag: JsonSchema;
  readonly list: JsonSchema;
  quantity(dimension: Dimension): JsonSchema;
}

/**
 * What a policy reads of a record beside its steps: declared facts, dates from which something falls due, texts and lists of the
 * subject. One schema each, to hold all together.
 */
export function describeFacts(plan: Plan, check: CheckPlan, values: ValueSchemas): readonly JsonSchema[] {
  const prepared = prepareFacts(plan.facts);
  const facts = plan.facts.flatMap(({ name }) => {
    const fact = prepared.get(name);
    if (fact === undefined) return [];
    const value = nest(fact.at, describeValue(fact, values));
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

function describeValue({ kind, dimension }: PreparedFact, values: ValueSchemas): JsonSchema {
  if (kind === "quantity") return dimension === undefined ? {} : values.quantity(dimension);
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

/** A schema of what stands under keys, whatever stands beside it. */
function nest(keys: readonly string[], schema: JsonSchema): JsonSchema {
  return keys.reduceRight<JsonSchema>((inner, key) => ({ properties: { [key]: inner } }), schema);
}
