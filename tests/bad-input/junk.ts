/** Values of every type that may stand where another is wanted; the maps hold keys of built-ins of their own. */
export const JUNK: readonly (readonly [name: string, value: unknown])[] = [
  ["null", null],
  ["true", true],
  ["false", false],
  ["0", 0],
  ["-1", -1],
  ["1.5", 1.5],
  ["1e308", 1e308],
  ["an empty text", ""],
  ["a blank", " "],
  ["x", "x"],
  ["constructor", "constructor"],
  ["__proto__", "__proto__"],
  ["half a character", "\ud800"],
  ["a control character", "\u0000"],
  ["an empty list", []],
  ["an empty map", {}],
  ["a list in a list", [[]]],
  ["a map", { a: 1 }],
  ["a list of a map", [{}]],
  ["a map with a prototype in it", JSON.parse('{ "__proto__": { "result": "satisfactory", "polluted": true } }')],
  ["a long text", "9".repeat(20_000)],
];

export type Path = readonly string[];

/** Every path to a map, a list or a leaf in it, the root left out. */
export function listPaths(value: unknown, path: Path = []): readonly Path[] {
  const here = path.length === 0 ? [] : [path];
  if (typeof value !== "object" || value === null) return here;
  return [...here, ...Object.entries(value).flatMap(([key, member]) => listPaths(member, [...path, key]))];
}

/** The value with another one in its place at a path; everything else stays as it is. */
export function replaceAt(value: unknown, [key, ...rest]: Path, put: unknown): unknown {
  if (key === undefined) return put;
  if (Array.isArray(value))
    return value.map((member, index) => (String(index) === key ? replaceAt(member, rest, put) : member));
  return Object.fromEntries(
    Object.entries(Object(value)).map(([name, member]) => [name, name === key ? replaceAt(member, rest, put) : member]),
  );
}

/** The JSON Pointer of a path. Source: RFC 6901, section 3. */
export function pointTo(path: Path): string {
  return path.map((part) => `/${part.replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

export function readAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((here, key) => (Object.hasOwn(Object(here), key) ? Object(here)[key] : undefined), value);
}

/** Every so many-th of all pairs of a place and a wrong value, so that about `count` are tried; all with a high TENBAR_RUNS. */
export function* pickSpoilt(data: unknown, count: number): Generator<{ path: Path; name: string; spoilt: unknown }> {
  const paths = listPaths(data);
  const stride = Math.max(1, Math.floor((paths.length * JUNK.length) / count));
  for (let index = 0; index < paths.length * JUNK.length; index += stride) {
    // Why: the wrong values go round with the places, so that a stride never meets the same value only.
    const path = paths[index % paths.length] ?? [];
    const [name, value] = JUNK[(Math.floor(index / paths.length) + index) % JUNK.length] ?? ["null", null];
    yield { path, name, spoilt: replaceAt(data, path, value) };
  }
}
