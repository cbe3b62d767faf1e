import { type Dimension, unitSymbolsOf } from "../quantities/index.js";
import { STEP_RESULTS } from "../terms/index.js";

/** One thing that a form asks for at a step: the record key that it fills, and what may stand there. */
export type StepField =
  | { readonly key: string; readonly type: "choice"; readonly words: readonly string[] }
  | { readonly key: string; readonly type: "text" }
  | { readonly key: string; readonly type: "flag" }
  | { readonly key: string; readonly type: "date" }
  | { readonly key: string; readonly type: "quantity"; readonly quantity: Dimension; readonly units: readonly string[] }
  | { readonly key: string; readonly type: "places"; readonly places: readonly string[] }
  | { readonly key: string; readonly type: "events"; readonly events: readonly string[] };

export function makeQuantityField(key: string, quantity: Dimension): StepField {
  return { key, type: "quantity", quantity, units: unitSymbolsOf(quantity) };
}

export const RESULT_FIELD: StepField = { key: "result", type: "choice", words: STEP_RESULTS };
/** Whether a signal or an event came at all. */
export const OCCURRED_FIELD: StepField = { key: "occurred", type: "flag" };
