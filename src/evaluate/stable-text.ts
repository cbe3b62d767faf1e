/**
 * JSON text with keys in code-unit order, so that equal values give equal texts whatever the order of their keys.
 *
 * The value must not nest deeper than the envelope allows.
 */
export function writeStableText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(writeStableText).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const members = Object.entries(value)
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([key, member]) => `${JSON.stringify(key)}:${writeStableText(member)}`);
  return `{${members.join(",")}}`;
}
