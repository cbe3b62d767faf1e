import { findNearest } from "../terms/index.js";
import type { HintWords, PolicyTextWords, ValueType } from "../words/index.js";
import { describeExpected, findExample, listValues } from "./describe-expected.js";
import { fitsType, listChoices, type Shape } from "./find-shape.js";
import type { ShapeError } from "./generated/policy-validator.js";
import { splitPointer } from "./json-pointer.js";
import { findKeyWithoutSpace } from "./key-without-space.js";
import { mendComparison, mendDecimalCommas } from "./mend-slip.js";
import { isPlainMap, type PlainMap } from "./plain-map.js";
import type { ShapeReport } from "./shape-report.js";
import { shortenText } from "./text-report.js";

/** Titles of texts that are a number and a unit. */
const MEASURED: ReadonlySet<unknown> = new Set(["Quantity", "Limit"]);
const WORDS_FOR_TRUE = /^(yes|on|y)$/i;
const WORDS_FOR_FALSE = /^(no|off|n)$/i;

/**
 * A value that is none of the kinds, words or forms wanted at its place; one diagnostic a value.
 * May add `read/no-value`, `read/unknown-value`, `read/unquoted-text`, `read/no-space-behind-colon`, `read/wrong-type`,
 * `read/bad-text`, `read/empty-text`, `read/too-long` and `read/wrong-count`.
 */
export function checkValue(output: ShapeReport, pointer: string, shape: Shape, errors: readonly ShapeError[]): void {
  const { schema, value } = shape;
  const written = output.readWritten(pointer);
  const isOfType = schema["anyOf"] === undefined && fitsType(schema, value);
  if (value === null && written === "") {
    reportNoValue(output, pointer, schema);
    return;
  }
  if (schema["enum"] !== undefined || schema["const"] !== undefined) {
    reportUnknownValue(output, pointer, schema, value, written);
    return;
  }
  if (!isOfType) {
    reportWrongType(output, pointer, schema, value, written);
    return;
  }
  if (Array.isArray(value)) {
    reportCount(output, pointer, schema, value.length, written);
    return;
  }
  if (typeof value === "string") reportText(output, pointer, schema, value, errors);
}

function reportNoValue(output: ShapeReport, pointer: string, schema: PlainMap): void {
  const key = shortenText(splitPointer(pointer).at(-1) ?? "");
  const cutByComment = output.walk.cutTexts.get(pointer)?.whole;
  output.report("read/no-value", pointer, "key", {
    key,
    expected: describeExpected(schema, output.words),
    cutByComment,
  });
}

function reportUnknownValue(
  output: ShapeReport,
  pointer: string,
  schema: PlainMap,
  value: unknown,
  written: string,
): void {
  const known = listValues(schema);
  const isQuoted = typeof value === "string" && known.includes(value);
  const text = typeof value === "string" && !isQuoted ? value : written;
  const nearest = typeof value === "string" && !isQuoted ? findNearest(value, known) : undefined;
  const quoted = isQuoted ? value : undefined;
  output.report("read/unknown-value", pointer, "value", {
    value: shortenText(text),
    found: shortenText(written),
    known,
    nearest,
    quoted,
  });
}

function reportWrongType(
  output: ShapeReport,
  pointer: string,
  schema: PlainMap,
  value: unknown,
  written: string,
): void {
  const key = typeof value === "string" ? findKeyWithoutSpace(value) : undefined;
  const expected = describeExpected(schema, output.words);
  const shown = shortenText(written);
  if (key !== undefined && (schema["type"] === "object" || schema["type"] === "array")) {
    output.report("read/no-space-behind-colon", pointer, "value", { key, found: shown });
    return;
  }
  if (wantsQuotes(schema, value, written)) {
    output.report("read/unquoted-text", pointer, "value", {
      text: shown,
      readAs: output.words.found[nameType(value)],
      found: shown,
    });
    return;
  }
  const found = nameFound(value, shown, output.words);
  const { hints } = output.words;
  const hint = pointer === "" ? hints.beginning : hintType(schema, value, shown, hints);
  output.report("read/wrong-type", pointer, "value", { found, expected, hint });
}

/** A number, true, false or null that would be a good text here if it stood in quotes. */
function wantsQuotes(schema: PlainMap, value: unknown, written: string): boolean {
  if (typeof value === "object" && value !== null) return false;
  if (typeof value === "string" || MEASURED.has(schema["title"])) return false;
  return [schema, ...listChoices(schema, "anyOf")].some(
    ({ type, pattern }) => type === "string" && (typeof pattern !== "string" || new RegExp(pattern, "u").test(written)),
  );
}

function hintType(schema: PlainMap, value: unknown, shown: string, hints: HintWords): string | undefined {
  const { type, title } = schema;
  const example = findExample(schema);
  if (typeof value === "number" && MEASURED.has(title) && example !== undefined) {
    return hints.unitBehind(example);
  }
  if (type === "boolean" && typeof value === "string") {
    if (WORDS_FOR_TRUE.test(value) || value === "true") return hints.withoutQuotes("true");
    if (WORDS_FOR_FALSE.test(value) || value === "false") return hints.withoutQuotes("false");
  }
  const compared = type === "object" && typeof value === "string" ? mendComparison(value) : undefined;
  if (compared !== undefined) return hints.writeThis(`{ ${compared} }`);
  if (type === "array" && typeof value !== "object") return hints.asList(shown);
  if (type === "array" && isPlainMap(value)) return hints.hyphens;
  return example === undefined ? undefined : hints.writtenLike(example);
}

function nameFound(value: unknown, shown: string, { found }: PolicyTextWords): string {
  if (Array.isArray(value)) return found.list;
  return isPlainMap(value) ? found.map : `${found[nameType(value)]} (\`${shown}\`)`;
}

function nameType(value: unknown): ValueType {
  if (value === null) return "nothing";
  if (typeof value === "number") return "number";
  return typeof value === "boolean" ? "flag" : "text";
}

function reportCount(output: ShapeReport, pointer: string, schema: PlainMap, count: number, written: string): void {
  const { minItems, maxItems } = schema;
  const pointed = mendDecimalCommas(written);
  if (pointed !== undefined && typeof maxItems === "number" && pointed.split(",").length === maxItems) {
    const text = shortenText(written);
    const expected = output.words.membersWithPoints(maxItems);
    output.report("read/bad-text", pointer, "value", { text, found: text, expected, nearest: shortenText(pointed) });
    // Why: what a comma cut off is no member, so nothing is said of the pieces.
    output.walk.silenced.add(pointer);
    return;
  }
  output.report("read/wrong-count", pointer, "value", {
    count,
    found: `${count}`,
    least: typeof minItems === "number" ? minItems : undefined,
    most: typeof maxItems === "number" ? maxItems : undefined,
  });
}

function reportText(
  output: ShapeReport,
  pointer: string,
  schema: PlainMap,
  text: string,
  errors: readonly ShapeError[],
): void {
  const { pattern, maxLength } = schema;
  const expected = describeExpected(schema, output.words);
  if (text === "") {
    output.report("read/empty-text", pointer, "value", { found: shortenText(output.readWritten(pointer)), expected });
    return;
  }
  if (errors.some(({ keyword }) => keyword === "maxLength") && typeof maxLength === "number") {
    output.report("read/too-long", pointer, "value", { found: shortenText(text), most: maxLength });
    return;
  }
  if (typeof pattern !== "string") return;
  const shown = shortenText(text);
  const example = findExample(schema);
  const hint = example === undefined ? undefined : output.words.hints.writtenLike(example);
  const nearest = mendText(text, pattern);
  output.report("read/bad-text", pointer, "value", { text: shown, found: shown, expected, nearest, hint });
}

/** The text with capitals, blanks, underscores or dots in place of slashes mended, where that gives it the form. */
function mendText(text: string, pattern: string): string | undefined {
  const form = new RegExp(pattern, "u");
  const words = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, "-");
  const mended = [text.trim(), words, text.trim().toUpperCase(), `/${text.trim().replaceAll(".", "/")}`].find(
    (attempt) => form.test(attempt),
  );
  return mended === undefined ? undefined : shortenText(mended);
}
