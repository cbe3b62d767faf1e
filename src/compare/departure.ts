import type { PartOfPolicy } from "../words/index.js";
import type { Relation } from "./relation.js";

/** One part of a policy that differs from its parent's. */
export interface Departure {
  readonly relation: Exclude<Relation, "same">;
  readonly what: PartOfPolicy;
  /** JSON Pointers in the two resolved documents. */
  readonly here: string;
  readonly there: string;
  /** What an adoption may name to cover it. */
  readonly step?: string | undefined;
  readonly requirement?: string | undefined;
  readonly tolerances?: readonly string[] | undefined;
  readonly interval?: string | undefined;
}

export type AddDeparture = (relation: Relation, departure: Omit<Departure, "relation">) => void;
