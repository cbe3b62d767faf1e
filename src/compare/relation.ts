/** How a part of a policy stands to its parent's. `looser` and `cannot-compare` may improve a verdict, the others never do. */
export type Relation = "same" | "tighter" | "looser" | "cannot-compare";

/** Whether a part may let pass what the parent's would not. */
export function isLoose(relation: Relation): boolean {
  return relation === "looser" || relation === "cannot-compare";
}

/** The relation of a whole whose parts stand in these relations. */
export function joinRelations(relations: Iterable<Relation>): Relation {
  let joined: Relation = "same";
  for (const relation of relations) {
    if (relation === "same" || relation === joined) continue;
    joined = joined === "same" ? relation : "cannot-compare";
  }
  return joined;
}

/** Of an order in which more asks more. */
export function relateNumbers(parent: number, child: number): Relation {
  if (child === parent) return "same";
  return child > parent ? "tighter" : "looser";
}

/** Of a set of what is asked for: more asks more. */
export function relateAsked(parent: readonly string[], child: readonly string[]): Relation {
  const lost = parent.some((name) => !child.includes(name));
  const gained = child.some((name) => !parent.includes(name));
  if (lost && gained) return "cannot-compare";
  if (lost) return "looser";
  return gained ? "tighter" : "same";
}

/** Of a set of what is allowed: more allows more. */
export function relateAllowed(parent: readonly string[], child: readonly string[]): Relation {
  return relateAsked(child, parent);
}

/** Of parts whose every change may work either way. */
export function relateFixed(parent: unknown, child: unknown): Relation {
  return JSON.stringify(parent) === JSON.stringify(child) ? "same" : "cannot-compare";
}
