/** UTF-8 bytes of a policy text, inclusive. */
export const MAX_BYTES = 1_048_576;
/** Levels of maps and lists inside each other, inclusive; the outermost map is the first. */
export const MAX_DEPTH = 64;
/** Keys and values of a policy, maps and lists among them, inclusive. */
export const MAX_NODES = 100_000;
/** Mistakes of one text that are listed singly; the rest are counted. */
export const MAX_LISTED = 500;
