import { type ParsedQuantity, parseQuantity } from "./parse-quantity.js";
import { DIMENSIONS, type Dimension } from "./units.js";

const MOST_REMEMBERED = 2048;
const LONGEST_REMEMBERED = 32;

/**
 * Makes a reader that gives the results of `parseQuantity` and remembers the texts it has met.
 *
 * Each reader owns its memory: at most 2048 texts of 32 characters a dimension, emptied when full. Results are frozen
 * and shared.
 */
export function createQuantityReader(): (value: unknown, dimension: Dimension) => ParsedQuantity {
  const remembered = new Map<Dimension, Map<string, ParsedQuantity>>(
    DIMENSIONS.map((dimension) => [dimension, new Map()]),
  );
  return (value, dimension) => {
    const memory = remembered.get(dimension);
    if (typeof value !== "string" || memory === undefined) return parseQuantity(value, dimension);
    const known = memory.get(value);
    if (known !== undefined) return known;
    const parsed = parseQuantity(value, dimension);
    if (value.length <= LONGEST_REMEMBERED) {
      if (memory.size >= MOST_REMEMBERED) memory.clear();
      memory.set(value, parsed);
    }
    return parsed;
  };
}
