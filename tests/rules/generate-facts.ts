import fc from "fast-check";
import { FACTS, FIELDS, type Generated, LIST, VALUES } from "./generate-rules.js";
import { makeFacts } from "./rule-samples.js";

/** Every fact that a rule may read, and 1 to 3 members of the list. */
export interface GeneratedFacts {
  readonly values: Readonly<Record<string, Generated>>;
  readonly members: readonly Readonly<Record<string, Generated>>[];
}

/** Keeps or empties a slot: a fact by its name, a field by the member's place, the whole list. */
export type KeepsSlot = (slot: string) => boolean;

function generateValues(names: Readonly<Record<string, readonly string[]>>) {
  const entries = Object.entries(VALUES).flatMap(([kind, values]) =>
    (names[kind] ?? []).map((name) => [name, values] as const),
  );
  return fc.record(Object.fromEntries(entries));
}

export const COMPLETE_FACTS: fc.Arbitrary<GeneratedFacts> = fc.record({
  values: generateValues(FACTS),
  members: fc.array(generateValues(FIELDS), { minLength: 1, maxLength: 3 }),
});

export function listSlots({ values, members }: GeneratedFacts): readonly string[] {
  const fields = members.flatMap((member, place) => Object.keys(member).map((field) => `${LIST}/${place}/${field}`));
  return [...Object.keys(values), LIST, ...fields];
}

/** The facts as the judge reads them. */
export function readFacts({ values, members }: GeneratedFacts, keeps: KeepsSlot = () => true) {
  const kept = members.map((member, place) => pick(member, (field) => keeps(`${LIST}/${place}/${field}`)));
  return makeFacts(
    Object.fromEntries(pick(values, keeps).map(([name, { term }]) => [name, toText(term)])),
    keeps(LIST)
      ? { [LIST]: kept.map((fields) => Object.fromEntries(fields.map(([field, { term }]) => [field, toText(term)]))) }
      : {},
  );
}

/** The facts as json-logic-js reads them: nested by the dots of their names. */
export function plainFacts({ values, members }: GeneratedFacts, keeps: KeepsSlot = () => true): unknown {
  const data: Record<string, Record<string, unknown> | unknown> = {};
  const put = (name: string, value: unknown) => {
    const [first = "", second] = name.split(".");
    if (second === undefined) data[first] = value;
    else data[first] = { ...(typeof data[first] === "object" ? data[first] : {}), [second]: value };
  };
  for (const [name, { plain }] of pick(values, keeps)) put(name, plain);
  const kept = members.map((member, place) =>
    Object.fromEntries(
      pick(member, (field) => keeps(`${LIST}/${place}/${field}`)).map(([field, { plain }]) => [field, plain]),
    ),
  );
  if (keeps(LIST)) put(LIST, kept);
  return data;
}

function pick(values: Readonly<Record<string, Generated>>, keeps: KeepsSlot) {
  return Object.entries(values).filter(([name]) => keeps(name));
}

function toText(value: unknown): string | number | boolean {
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return value;
  throw new Error("the test's own facts are texts, numbers and flags");
}
