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

/** A visible character of ASCII. Why: the kernel asks of every text whether it has blanks around it, and hardly one has any. */
function isVisible(code: number): boolean {
  return code > SPACE && code < DELETE;
}

/** Without blanks around it. */
export function trimText(text: string): string {
  return isVisible(text.charCodeAt(0)) && isVisible(text.charCodeAt(text.length - 1)) ? text : text.trim();
}

function isBlank(text: string): boolean {
  return !isVisible(text.charCodeAt(0)) && text.trim() === "";
}

/** `null`, blank text and an empty list say nothing. */
export function isMissing(value: unknown): boolean {
  if (value === undefined || value === null) return true;
  if (typeof value === "string") return isBlank(value);
  return Array.isArray(value) && value.length === 0;
}
