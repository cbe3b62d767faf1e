import { describeExpected } from "./describe-expected.js";
import { findShape } from "./find-shape.js";
import { extendPointer } from "./json-pointer.js";
import type { ShapeReport } from "./shape-report.js";

/** White space and characters that show nothing, such as a zero-width space. */
const BLANK = /^[\s\p{Cf}]+$/u;
/** Terms of rules, in which any text is a word to compare with. */
const RULE_TERM = /^\/rules\/\d+\/(?:when|require)$/;

/**
 * A text of blanks says nothing, wherever a policy wants one: an order without a number, a sentence without a word.
 * May add `read/empty-text`.
 */
export function checkBlankTexts(output: ShapeReport, document: unknown): void {
  const visit = (value: unknown, pointer: string): void => {
    if (typeof value === "string" && BLANK.test(value)) reportBlank(output, document, pointer);
    if (typeof value !== "object" || value === null || RULE_TERM.test(pointer)) return;
    for (const [key, member] of Object.entries(value)) visit(member, extendPointer(pointer, key));
  };
  visit(document, "");
}

function reportBlank(output: ShapeReport, document: unknown, pointer: string): void {
  const shape = findShape(document, pointer);
  if (shape === undefined || output.walk.reported.has(pointer)) return;
  const expected = describeExpected(shape.schema, output.words);
  output.report("read/empty-text", pointer, "value", { found: output.readWritten(pointer), expected });
}
