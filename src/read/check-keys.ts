import { findNearest } from "../terms/index.js";
import type { PolicyTextWords } from "../words/index.js";
import { describeExpected, describeWords, listKnownKeys, listTags } from "./describe-expected.js";
import { listChoices, readDiscriminator, type Shape } from "./find-shape.js";
import type { ShapeError } from "./generated/policy-validator.js";
import { extendPointer, parentPointer, splitPointer } from "./json-pointer.js";
import { isPlainMap, type PlainMap } from "./plain-map.js";
import type { ShapeReport } from "./shape-report.js";
import { shortenText } from "./text-report.js";

/** Keys by which a member of a list is known. */
const NAMING_KEYS = ["step", "rule", "id", "place"] as const;

/**
 * The keys of one map: those that are not known, those that are missing, and whether there is any. A key that was
 * misspelt is one mistake, not an unknown key and a missing one.
 * May add `read/unknown-key`, `read/missing-key` and `read/empty-map`.
 */
export function checkKeys(
  output: ShapeReport,
  pointer: string,
  shape: Shape,
  map: PlainMap,
  errors: readonly ShapeError[],
): void {
  const known = listKnownKeys(shape.schema);
  const unused = known.filter((key) => !Object.hasOwn(map, key));
  const unknown = listParams(errors, "additionalProperties", "additionalProperty");
  const isOpen = readDiscriminator(shape.schema) !== undefined;
  const candidates = isOpen ? Object.keys(map).filter((key) => !known.includes(key)) : unknown;
  const nearestOf = new Map(candidates.map((key) => [key, findNearest(key, unused) ?? findNearest(key, known)]));
  const missing = listParams(errors, "required", "missingProperty");
  const misspelt = candidates.filter((key) => missing.includes(nearestOf.get(key) ?? ""));
  for (const key of new Set([...unknown, ...misspelt])) {
    const nearest = nearestOf.get(key);
    const belongsTo = nearest === undefined ? listOwners(shape, key) : undefined;
    const shown = shortenText(key);
    const params = { key: shown, found: shown, known: isOpen ? missing : known, nearest, belongsTo };
    output.report("read/unknown-key", extendPointer(pointer, key), "key", params);
  }
  if (output.walk.incomplete.has(pointer)) return;
  const meant = new Set(misspelt.map((key) => nearestOf.get(key)));
  for (const key of missing) if (!meant.has(key)) reportMissing(output, pointer, shape.schema, key, map);
  if (errors.some(({ keyword }) => keyword === "minProperties")) {
    output.report("read/empty-map", pointer, "value", {
      owner: nameOwner(pointer, map, output.words),
      found: "{}",
      known,
    });
  }
}

function reportMissing(output: ShapeReport, pointer: string, schema: PlainMap, key: string, map: PlainMap): void {
  const properties = schema["properties"];
  const member = isPlainMap(properties) && Object.hasOwn(properties, key) ? properties[key] : undefined;
  const tags = listTags(listChoices(schema, "oneOf"), key);
  const expected = isPlainMap(member) ? describeExpected(member, output.words) : describeWords(tags, output.words);
  const at = findOwnerPlace(pointer, map);
  const params = { key, owner: nameOwner(pointer, map, output.words), expected };
  output.report("read/missing-key", at, "key", params);
}

/** The entry whose key stands for a map: its own, or its first one where it has none. */
function findOwnerPlace(pointer: string, map: PlainMap): string {
  const isMember = pointer === "" || /^\d+$/.test(splitPointer(pointer).at(-1) ?? "");
  const [first] = Object.keys(map);
  return isMember && first !== undefined ? extendPointer(pointer, first) : pointer;
}

function nameOwner(pointer: string, map: PlainMap, words: PolicyTextWords): string {
  const last = splitPointer(pointer).at(-1);
  if (last === undefined) return words.thePolicy;
  if (!/^\d+$/.test(last)) return `\`${shortenText(last)}\``;
  for (const key of NAMING_KEYS) {
    const name = map[key];
    if (typeof name === "string") return `${key} \`${shortenText(name)}\``;
  }
  return words.member(Number(last) + 1, shortenText(splitPointer(parentPointer(pointer)).at(-1) ?? ""));
}

/** The kinds beside the chosen one that do have a key. */
function listOwners({ schema, siblings }: Shape, key: string): readonly string[] | undefined {
  const owners = siblings.filter((sibling) => sibling !== schema && listKnownKeys(sibling).includes(key));
  return owners.length === 0 ? undefined : listTags(owners, "kind");
}

function listParams(errors: readonly ShapeError[], keyword: string, name: string): readonly string[] {
  return errors
    .filter((error) => error.keyword === keyword)
    .map(({ params }) => params[name])
    .filter((value) => typeof value === "string");
}
