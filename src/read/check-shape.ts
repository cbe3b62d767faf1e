import { findNearest } from "../terms/index.js";
import { checkBlankTexts } from "./check-blank-texts.js";
import { checkKeys } from "./check-keys.js";
import { checkValue } from "./check-value.js";
import { describeExpected, describeWords, listTags } from "./describe-expected.js";
import type { DocumentWalk } from "./document-walk.js";
import { findShape, listChoices, readDiscriminator, resolveSchema, type Shape } from "./find-shape.js";
import { type ShapeError, validatePolicy } from "./generated/policy-validator.js";
import { extendPointer } from "./json-pointer.js";
import { isPlainMap, type PlainMap } from "./plain-map.js";
import { createShapeReport, type ShapeReport } from "./shape-report.js";
import { shortenText } from "./text-report.js";

/**
 * Checks a document against the policy schema and reports each mistake once, with what the schema knows about the
 * place.
 * Invariant: a document that the validator refuses never goes without an error, whatever is made of its errors.
 */
export function checkShape(walk: DocumentWalk, document: unknown): void {
  const output = createShapeReport(walk);
  if (validatePolicy(document)) {
    checkBlankTexts(output, document);
    return;
  }
  // Why: the validator keeps its errors in one place for all callers.
  const errors = [...(validatePolicy.errors ?? [])];
  // Invariant: what holds others is looked at before them, so that a mistake of its own can silence theirs.
  const groups = [...groupErrors(errors)].sort(([one], [other]) => one.length - other.length);
  for (const [pointer, group] of groups) checkEntry(output, document, pointer, group);
  checkBlankTexts(output, document);
  if (walk.output.hasErrors) return;
  const [first] = errors;
  output.report("read/wrong-shape", first?.instancePath ?? "", "value", { keyword: first?.keyword ?? "" });
}

function groupErrors(errors: readonly ShapeError[]): ReadonlyMap<string, readonly ShapeError[]> {
  const groups = new Map<string, ShapeError[]>();
  for (const error of errors) {
    const group = groups.get(error.instancePath);
    if (group === undefined) groups.set(error.instancePath, [error]);
    else group.push(error);
  }
  return groups;
}

function checkEntry(output: ShapeReport, document: unknown, pointer: string, errors: readonly ShapeError[]): void {
  const shape = findShape(document, pointer);
  if (shape === undefined) return;
  if (isPlainMap(shape.value) && (shape.schema["type"] === "object" || readDiscriminator(shape.schema) !== undefined)) {
    checkNames(output, pointer, shape.schema, errors);
    checkKeys(output, pointer, shape, shape.value, errors);
    checkTag(output, pointer, shape, errors);
  } else {
    checkValue(output, pointer, shape, errors);
  }
}

/** May add `read/bad-name` at a key that its author chose. */
function checkNames(output: ShapeReport, pointer: string, schema: PlainMap, errors: readonly ShapeError[]): void {
  const names = schema["propertyNames"];
  if (!isPlainMap(names)) return;
  const { pattern } = resolveSchema(names);
  for (const { keyword, params } of errors) {
    const key = params["propertyName"];
    if (keyword !== "propertyNames" || typeof key !== "string") continue;
    const nearest = mendName(key, typeof pattern === "string" ? pattern : "");
    const expected = describeExpected(names, output.words);
    output.report("read/bad-name", extendPointer(pointer, key), "key", {
      key: shortenText(key),
      found: shortenText(key),
      expected,
      nearest,
    });
  }
}

/** The name with capitals, blanks and underscores mended, where that makes it a good one. */
function mendName(name: string, pattern: string): string | undefined {
  const mended = name
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, "-");
  return mended !== name && pattern !== "" && new RegExp(pattern, "u").test(mended) ? shortenText(mended) : undefined;
}

/** May add `read/unknown-kind` or `read/no-value` at the tag's value; a tag that is not there is a missing key. */
function checkTag(output: ShapeReport, pointer: string, { schema, value }: Shape, errors: readonly ShapeError[]): void {
  const tag = readDiscriminator(schema);
  if (tag === undefined || !isPlainMap(value) || !Object.hasOwn(value, tag)) return;
  if (!errors.some(({ keyword }) => keyword === "discriminator")) return;
  const at = extendPointer(pointer, tag);
  const written = output.readWritten(at);
  const known = listTags(listChoices(schema, "oneOf"), tag);
  if (written === "") {
    output.report("read/no-value", at, "key", { key: tag, expected: describeWords(known, output.words) });
    return;
  }
  const text = typeof value[tag] === "string" ? value[tag] : written;
  const nearest = findNearest(text, known);
  const params = { key: tag, value: shortenText(text), found: shortenText(written), known, nearest };
  output.report("read/unknown-kind", at, "value", params);
}
