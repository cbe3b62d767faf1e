import { findStringEnd } from "./parse-json.js";

/** One member of a JSON array as text, and where it begins in the text of the array. */
export interface ListMember {
  readonly text: string;
  readonly offset: number;
}

/** Cuts the text of a JSON array into its members. The text must be sound JSON and an array. */
export function splitList(text: string): readonly ListMember[] {
  const members: ListMember[] = [];
  let depth = 0;
  let start = 0;
  const take = (end: number): void => {
    const member = text.slice(start, end);
    if (member.trim() !== "") members.push({ text: member, offset: start });
    start = end + 1;
  };
  for (let offset = 0; offset < text.length; offset += 1) {
    const character = text.charAt(offset);
    if (character === '"') offset = findStringEnd(text, offset);
    else if (character === "[" || character === "{") {
      depth += 1;
      if (depth === 1) start = offset + 1;
    } else if (character === "]" || character === "}") {
      depth -= 1;
      if (depth === 0) take(offset);
    } else if (character === "," && depth === 1) take(offset);
  }
  return members;
}
