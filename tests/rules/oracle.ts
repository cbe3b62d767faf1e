import jsonLogic from "json-logic-js";

jsonLogic.add_operation("abs", (value: number) => Math.abs(value));
jsonLogic.add_operation("length", (list: readonly unknown[]) => list.length);

/** What json-logic-js 2.0.5 makes of a rule, read as JsonLogic reads truth. */
export function judgePlainly(plain: unknown, data: unknown): boolean {
  return Boolean(jsonLogic.apply(plain, data));
}
