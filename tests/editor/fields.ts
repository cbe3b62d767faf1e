/** A JSON object whose members are looked at one by one. */
export type Fields = Readonly<Record<string, unknown>>;

/** The members of a JSON object; anything else is a defect of the test or of the server. */
export function readFields(value: unknown): Fields {
  if (!isFields(value)) throw new Error(`not an object: ${JSON.stringify(value)}`);
  return value;
}

export function readList(value: unknown): readonly unknown[] {
  if (!Array.isArray(value)) throw new Error(`not a list: ${JSON.stringify(value)}`);
  return value;
}

export function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
