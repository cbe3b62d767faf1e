import type { Dimension } from "../quantities/index.js";

/** What a fact holds. */
export type FactType =
  | { readonly kind: "text"; readonly words?: readonly string[] }
  | { readonly kind: "flag" }
  | { readonly kind: "date" }
  | { readonly kind: "quantity"; readonly dimension: Dimension };

/** What a quantity fact measures; undefined for a name that is none. */
export function findFactDimension(name: string, types: ReadonlyMap<string, FactType>): Dimension | undefined {
  const type = types.get(name);
  return type?.kind === "quantity" ? type.dimension : undefined;
}

/** The names of the quantity facts. */
export function listQuantityFacts(types: ReadonlyMap<string, FactType>): readonly string[] {
  return [...types].flatMap(([name, { kind }]) => (kind === "quantity" ? [name] : []));
}
