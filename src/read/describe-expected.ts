import { listChoices, readDiscriminator, readTag, resolveSchema } from "./find-shape.js";
import { isPlainMap, type PlainMap } from "./plain-map.js";

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: "a text",
  number: "a number",
  integer: "a whole number",
  boolean: "`true` or `false`",
  null: "`null`",
  array: "a list",
  object: "a map of keys",
};

/** What a schema accepts, in words: "name (lower-case words joined by hyphens, such as `leak-drop`)". */
export function describeExpected(unresolved: PlainMap): string {
  const schema = resolveSchema(unresolved);
  const values = listValues(schema);
  if (values.length > 0) return describeWords(values);
  const title = typeof schema["title"] === "string" ? lowerFirst(schema["title"]) : undefined;
  const details = schema["type"] === "string" || schema["anyOf"] !== undefined ? describeDetails(schema) : undefined;
  if (schema["type"] === "object" || schema["type"] === "array") {
    const words = TYPE_WORDS[String(schema["type"])] ?? "";
    return title === undefined ? words : `${words} (${title})`;
  }
  if (title !== undefined) return details === undefined ? title : `${title} (${details})`;
  const choices = listChoices(schema, "anyOf");
  if (choices.length > 0) return joinWords(choices.map(describeExpected));
  return details ?? TYPE_WORDS[String(schema["type"])] ?? "a value";
}

/** The values of a closed list, of a constant, or of the tag of a choice, as they are written. */
export function listValues(schema: PlainMap): readonly string[] {
  if (Array.isArray(schema["enum"])) return schema["enum"].map(String);
  if (schema["const"] !== undefined) return [String(schema["const"])];
  return [];
}

/** The words that the tag of a choice may have. */
export function listTags(choices: readonly PlainMap[], tag: string): readonly string[] {
  return choices.map((choice) => String(readTag(choice, tag)));
}

/** The keys that a map may have; those of all members where the choice is still open. */
export function listKnownKeys(schema: PlainMap): readonly string[] {
  const choices = readDiscriminator(schema) === undefined ? [] : listChoices(schema, "oneOf");
  const properties = isPlainMap(schema["properties"]) ? Object.keys(schema["properties"]) : [];
  return [...new Set([...properties, ...choices.flatMap(listKnownKeys)])];
}

/** The first example of a text. */
export function findExample({ examples }: PlainMap): string | undefined {
  const example: unknown = Array.isArray(examples) ? examples[0] : undefined;
  return typeof example === "string" ? example : undefined;
}

/** The first sentence of a text's description, with an example where the sentence gives none. */
function describeDetails(schema: PlainMap): string | undefined {
  const { description } = schema;
  if (typeof description !== "string") return undefined;
  const sentence = lowerFirst(description.split(/\.(?:\s|$)/)[0] ?? "");
  const example = findExample(schema);
  return sentence.includes("`") || example === undefined ? sentence : `${sentence}, such as \`${example}\``;
}

/** Why: an abbreviation such as ISO keeps its capitals. */
function lowerFirst(text: string): string {
  return /^[A-Z][^A-Z]/.test(text) ? `${text.charAt(0).toLowerCase()}${text.slice(1)}` : text;
}

/** "`hold`, `match` or `timing`". */
export function describeWords(words: readonly string[]): string {
  return joinWords(words.map((word) => `\`${word}\``));
}

function joinWords(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}
