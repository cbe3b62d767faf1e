export type Path = readonly (string | number)[];

export const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export function listMaps(value: unknown): readonly Record<string, unknown>[] {
  return Array.isArray(value) ? value.filter(isMap) : [];
}

export function readAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((here, part) => (typeof here === "object" ? Object(here)[part] : undefined), value);
}

/** A copy with another value at a path that exists; `undefined` takes the key away. */
export function replaceAt(value: unknown, path: Path, replacement: unknown): unknown {
  const copy = structuredClone(value);
  const owner = Object(readAt(copy, path.slice(0, -1)));
  const last = path[path.length - 1];
  if (last === undefined) throw new Error("a path leads somewhere");
  if (replacement === undefined && !Array.isArray(owner)) delete owner[last];
  else owner[last] = replacement;
  return copy;
}

/** Every path to a value that is neither a map nor a list. */
export function* walkLeaves(value: unknown, path: Path = []): Generator<Path> {
  if (typeof value !== "object" || value === null) yield path;
  else
    for (const [key, member] of Object.entries(value))
      yield* walkLeaves(member, [...path, Array.isArray(value) ? Number(key) : key]);
}
