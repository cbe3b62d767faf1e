/** A value with named members, as far as anything is known about it. */
export type PlainMap = Readonly<Record<string, unknown>>;

export function isPlainMap(value: unknown): value is PlainMap {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
