import type { FactPlan, Plan } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";
import { type ComparedWords, listComparedWords } from "./compared-words.js";

/** A fact ready to be read: its pointers split into keys once. */
export interface PreparedFact {
  readonly kind: FactPlan["kind"];
  readonly at: readonly string[];
  readonly each: readonly string[] | undefined;
  readonly take: FactPlan["take"];
  readonly words: ReadonlySet<string> | undefined;
  /** What the policy compares a text without a closed list with; undefined where it does nowhere. */
  readonly compared: ComparedWords | undefined;
  readonly dimension: Dimension | undefined;
}

const BUILT_IN: readonly FactPlan[] = [
  { name: "kind", at: "/subject/kind", kind: "text", take: "only" },
  { name: "class", at: "/subject/class", kind: "text", take: "only" },
  { name: "station", at: "/station", kind: "text", take: "only" },
  { name: "competence", at: "/by/competence", kind: "text", take: "only" },
];

/** The facts of a policy by name, with those that every policy may name. */
export function prepareFacts(plan: Plan): ReadonlyMap<string, PreparedFact> {
  const compared = listComparedWords(plan);
  return new Map([...BUILT_IN, ...plan.facts].map((fact) => [fact.name, prepareFact(fact, compared.get(fact.name))]));
}

function prepareFact({ kind, at, each, take, words, quantity }: FactPlan, compared?: ComparedWords): PreparedFact {
  return {
    kind,
    at: splitPointer(at),
    each: each === undefined ? undefined : splitPointer(each),
    take,
    words: words === undefined ? undefined : new Set(words),
    compared: words === undefined ? compared : undefined,
    dimension: quantity,
  };
}

/** The keys of a JSON Pointer. Source: RFC 6901, section 3. */
function splitPointer(pointer: string): readonly string[] {
  return pointer
    .split("/")
    .slice(1)
    .map((token) => token.replaceAll("~1", "/").replaceAll("~0", "~"));
}
