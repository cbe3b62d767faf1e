import type { Place } from "../source/index.js";

/** A name, and where it is written. */
export interface NamedPlace {
  readonly name: string;
  readonly place: Place;
}

/** Every name that stands again, with the place where it stood first. */
export function listRepeated<N extends NamedPlace>(names: readonly N[]): readonly (N & { readonly first: Place })[] {
  const places = new Map<string, Place>();
  return names.flatMap((one) => {
    const first = places.get(one.name);
    if (first === undefined) places.set(one.name, one.place);
    return first === undefined ? [] : [{ ...one, first }];
  });
}
