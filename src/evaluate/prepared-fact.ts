import type { FactPlan } from "../model/index.js";
import type { Dimension } from "../quantities/index.js";

/** A fact ready to be read: its pointers split into keys once. */
export interface PreparedFact {
  readonly kind: FactPlan["kind"];
  readonly at: readonly string[];
  readonly each: readonly string[] | undefined;
  readonly take: FactPlan["take"];
  readonly words: ReadonlySet<string> | undefined;
  readonly dimension: Dimension | undefined;
  /** Whether it is the kind of the subject, under whatever name. */
  readonly isKind: boolean;
}

const BUILT_IN: readonly FactPlan[] = [
  { name: "kind", at: "/subject/kind", kind: "text", take: "only" },
  { name: "class", at: "/subject/class", kind: "text", take: "only" },
  { name: "station", at: "/station", kind: "text", take: "only" },
  { name: "competence", at: "/by/competence", kind: "text", take: "only" },
];

/** The facts of a policy by name, with those that every policy may name. */
export function prepareFacts(plans: readonly FactPlan[]): ReadonlyMap<string, PreparedFact> {
  return new Map([...BUILT_IN, ...plans].map((plan) => [plan.name, prepareFact(plan)]));
}

function prepareFact({ kind, at, each, take, words, quantity }: FactPlan): PreparedFact {
  return {
    kind,
    at: splitPointer(at),
    each: each === undefined ? undefined : splitPointer(each),
    take,
    words: words === undefined ? undefined : new Set(words),
    dimension: quantity,
    isKind: at === "/subject/kind" && each === undefined,
  };
}

/** The keys of a JSON Pointer. Source: RFC 6901, section 3. */
function splitPointer(pointer: string): readonly string[] {
  return pointer
    .split("/")
    .slice(1)
    .map((token) => token.replaceAll("~1", "/").replaceAll("~0", "~"));
}
