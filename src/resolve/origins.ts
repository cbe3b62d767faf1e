import type { ParsedPolicy } from "../read/index.js";
import type { Place } from "../source/index.js";
import type { ResolvedPolicy } from "./resolved-policy.js";

/** Which text states which part of a merged policy. */
export interface Origins {
  fromChild(pointer: string, own: string): void;
  fromParent(pointer: string, own: string): void;
  place(pointer: string, part?: "key" | "value"): Place;
}

interface Origin {
  readonly owner: Pick<ResolvedPolicy, "place">;
  readonly pointer: string;
}

/** Parts that nothing is said of are the child's, under the same pointer. */
export function createOrigins(child: ParsedPolicy, parent: ResolvedPolicy): Origins {
  const origins = new Map<string, Origin>();
  const owner = { place: (pointer: string, part?: "key" | "value") => child.place(pointer, part) };
  return {
    fromChild: (pointer, own) => void origins.set(pointer, { owner, pointer: own }),
    fromParent: (pointer, own) => void origins.set(pointer, { owner: parent, pointer: own }),
    place(pointer, part) {
      for (let prefix = pointer; prefix !== ""; prefix = prefix.slice(0, prefix.lastIndexOf("/"))) {
        const origin = origins.get(prefix);
        if (origin !== undefined) return origin.owner.place(`${origin.pointer}${pointer.slice(prefix.length)}`, part);
      }
      return owner.place(pointer, part);
    },
  };
}
