import type { SourceText } from "../source/index.js";
import type { ParentWords } from "../words/index.js";

/** The text of a parent; or why it cannot be had, and the names of parents that can be, of which a close one is offered. */
export type FoundParent =
  | { readonly source: SourceText }
  | { readonly problem: string; readonly known?: readonly string[] };

/** Finds the text that `extends` names, seen from the file that names it. */
export type FindParent = (reference: string, fromFile: string) => FoundParent;

/** A shipped policy by name, with the major version that it is pinned to. */
export interface ShippedReference {
  readonly kind: "shipped";
  readonly name: string;
  readonly major: string | undefined;
}

export type ParentReference =
  | ShippedReference
  | { readonly kind: "file" }
  | { readonly kind: "fault"; readonly why: Exclude<keyof ParentWords, "notGiven"> };

const SHIPPED = /^([a-z0-9]+(?:-[a-z0-9]+)*(?:\/[a-z0-9]+(?:-[a-z0-9]+)*)+)(?:@([0-9]+))?$/;

/** Reads `common-practice/open-circuit@1` or `./brigade.yaml`; a path that leaves the folder of the policy is refused. */
export function readReference(reference: string): ParentReference {
  const shipped = SHIPPED.exec(reference);
  if (shipped?.[1] !== undefined) return { kind: "shipped", name: shipped[1], major: shipped[2] };
  const parts = reference.split("/");
  if (!reference.startsWith("./")) return { kind: "fault", why: "notFromOwnFolder" };
  if (parts.includes("..") || reference.includes("\\") || reference.includes("\0")) {
    return { kind: "fault", why: "leavesOwnFolder" };
  }
  return { kind: "file" };
}
