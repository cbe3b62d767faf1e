import type { FactPlan, PolicyDocument } from "../model/index.js";
import type { FactType } from "../steps/index.js";
import { BUILT_IN_FACTS, findNearest } from "../terms/index.js";
import type { PlanContext } from "./plan-context.js";

type PolicyFact = NonNullable<PolicyDocument["facts"]>[string];
type Shared = Pick<PlanContext, "resolved" | "diagnostics">;

const TEXT = { kind: "text" } as const;
const BUILT_IN_TYPES: Readonly<Record<(typeof BUILT_IN_FACTS)[number], FactType>> = {
  kind: TEXT,
  class: TEXT,
  station: TEXT,
  competence: TEXT,
  "rated-pressure": { kind: "quantity", dimension: "pressure" },
  "water-capacity": { kind: "quantity", dimension: "volume" },
};

/** Facts that the policy declares; one that takes a built-in name, or does not say what it holds, is reported. */
export function compileFacts(shared: Shared): readonly FactPlan[] {
  const entries = Object.entries(shared.resolved.document.facts ?? {});
  return entries.flatMap(([name, fact]) => compileFact(name, fact, shared) ?? []);
}

/** What each fact holds that limits, scopes and rules may name. */
export function listFactTypes(facts: readonly FactPlan[]): ReadonlyMap<string, FactType> {
  const declared = facts.map(({ name, kind, words, quantity }): [string, FactType] => {
    if (kind === "quantity" && quantity !== undefined) return [name, { kind, dimension: quantity }];
    if (kind === "text") return [name, words === undefined ? TEXT : { kind, words }];
    return [name, { kind: kind === "flag" ? "flag" : "date" }];
  });
  return new Map([...Object.entries(BUILT_IN_TYPES), ...declared]);
}

function compileFact(name: string, fact: PolicyFact, { resolved, diagnostics }: Shared): FactPlan | undefined {
  const pointer = `/facts/${name}`;
  const place = resolved.place(pointer, "key");
  if (BUILT_IN_FACTS.some((known) => known === name)) {
    diagnostics.report("plan/shadowed-name", place, { thing: "fact", name });
    return undefined;
  }
  const { at, "one-of": words, quantity, value, each, take } = fact;
  const given = (["one-of", "quantity", "value"] as const).filter((key) => fact[key] !== undefined);
  if (given.length !== 1) {
    diagnostics.report("plan/needs-one-of", place, { keys: ["one-of", "quantity", "value"], given });
    return undefined;
  }
  if (take !== undefined && each === undefined) {
    diagnostics.report("plan/half-stated", resolved.place(`${pointer}/take`, "key"), {
      present: "take",
      absent: "each",
    });
    return undefined;
  }
  const kind = quantity === undefined ? (words === undefined ? (value ?? "text") : "text") : "quantity";
  if (take !== undefined && take !== "only" && kind !== "quantity" && kind !== "date") {
    diagnostics.report("plan/take-without-size", resolved.place(`${pointer}/take`), { take, kind });
    return undefined;
  }
  return {
    name,
    at,
    ...(each === undefined ? {} : { each }),
    take: take ?? "only",
    kind,
    ...(words === undefined ? {} : { words: [...words] }),
    ...(quantity === undefined ? {} : { quantity }),
  };
}

/** The text facts, with the values that they may have where those are declared. */
export function listTextFacts(
  types: ReadonlyMap<string, FactType>,
): ReadonlyMap<string, readonly string[] | undefined> {
  return new Map(
    [...types].flatMap(([name, type]): [string, readonly string[] | undefined][] =>
      type.kind === "text" ? [[name, type.words]] : [],
    ),
  );
}

/** The known name closest to `name` among text facts. */
export function findNearestFact(name: string, types: ReadonlyMap<string, FactType>): string | undefined {
  return findNearest(name, listTextFacts(types).keys());
}
