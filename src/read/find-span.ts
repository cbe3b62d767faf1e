import type { Span } from "../source/index.js";
import { parentPointer } from "./json-pointer.js";
import type { EntryPart, Position } from "./parsed-policy.js";

/** The stretch of a pointer's entry, or of the nearest holder that is known. Never throws. */
export function findSpan(positions: ReadonlyMap<string, Position>, pointer: string, part: EntryPart = "value"): Span {
  let known = pointer;
  while (known !== "" && !positions.has(known)) known = parentPointer(known);
  const position = positions.get(known);
  if (position === undefined) return { start: 0, end: 0 };
  const { key = position.value, value } = position;
  if (part === "key" || value.start === value.end) return key;
  return part === "value" ? value : { start: key.start, end: value.end };
}
