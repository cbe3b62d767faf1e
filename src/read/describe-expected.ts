import type { PolicyTextWords } from "../words/index.js";
import { listChoices, readDiscriminator, readTag, resolveSchema } from "./find-shape.js";
import { isPlainMap, type PlainMap } from "./plain-map.js";

/** What a schema accepts, in words: "name (lower-case words joined by hyphens, such as `leak-drop`)". */
export function describeExpected(unresolved: PlainMap, words: PolicyTextWords): string {
  const schema = resolveSchema(unresolved);
  const values = listValues(schema);
  if (values.length > 0) return describeWords(values, words);
  const title = typeof schema["title"] === "string" ? sayText(schema["title"], words) : undefined;
  const details =
    schema["type"] === "string" || schema["anyOf"] !== undefined ? describeDetails(schema, words) : undefined;
  if (schema["type"] === "object" || schema["type"] === "array") {
    const kind = words.types[schema["type"]];
    return title === undefined ? kind : `${kind} (${title})`;
  }
  if (title !== undefined) return details === undefined ? title : `${title} (${details})`;
  const choices = listChoices(schema, "anyOf");
  if (choices.length > 0) return words.oneOf(choices.map((choice) => describeExpected(choice, words)));
  const { type } = schema;
  return details ?? words.types[isTypeName(type, words) ? type : "any"];
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
function describeDetails(schema: PlainMap, words: PolicyTextWords): string | undefined {
  const { description } = schema;
  if (typeof description !== "string") return undefined;
  const sentence = sayText(description.split(/\.(?:\s|$)/)[0] ?? "", words);
  const example = findExample(schema);
  return sentence.includes("`") || example === undefined ? sentence : words.suchAs(sentence, example);
}

/** Why: an abbreviation such as ISO keeps its capitals. */
function lowerFirst(text: string): string {
  return /^[A-Z][^A-Z]/.test(text) ? `${text.charAt(0).toLowerCase()}${text.slice(1)}` : text;
}

/** "`hold`, `match` or `timing`". */
export function describeWords(values: readonly string[], words: PolicyTextWords): string {
  return words.oneOf(values.map((value) => `\`${value}\``));
}

/** A title or a sentence of the schema; one that the language lacks is said as the schema has it. */
function sayText(text: string, { schema }: PolicyTextWords): string {
  if (schema === "as-written") return lowerFirst(text);
  const known: Readonly<Record<string, string>> = schema;
  return Object.hasOwn(known, text) ? (known[text] ?? text) : lowerFirst(text);
}

function isTypeName(type: unknown, { types }: PolicyTextWords): type is keyof PolicyTextWords["types"] {
  return typeof type === "string" && Object.hasOwn(types, type);
}
