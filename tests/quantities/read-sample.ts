import { type Dimension, parseQuantity, type Quantity } from "../../src/quantities/index.js";

/** The seed of every generated case, so that a failure can be repeated. */
export const SEED = 20260412;

/** Reads a text that the test takes for valid. */
export function readSample(text: string, dimension: Dimension): Quantity {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`the test's own text \`${text}\` is ${parsed.fault}`);
  return parsed.quantity;
}
