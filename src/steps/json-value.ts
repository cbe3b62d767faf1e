/** Any JSON object of a record; nothing is known of its members. */
export type JsonObject = Readonly<Record<string, unknown>>;

export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** A member by a name that the record's author chose; prototype names such as `constructor` are ordinary names. */
export function readMember(object: JsonObject, name: string): unknown {
  return Object.hasOwn(object, name) ? object[name] : undefined;
}

const SPACE = 32;
const DELETE = 127;

/** Why: the kernel asks this of every value that it reads, and nearly every text begins with a letter or a digit. */
function isBlank(text: string): boolean {
  const first = text.charCodeAt(0);
  if (first > SPACE && first < DELETE) return false;
  return text.trim() === "";
}

/** `null`, blank text and an empty list say nothing. */
export function isMissing(value: unknown): boolean {
  if (value === undefined || value === null) return true;
  if (typeof value === "string") return isBlank(value);
  return Array.isArray(value) && value.length === 0;
}
