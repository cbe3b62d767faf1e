import { READ_SHAPE_CODES } from "./read-shape-codes.js";
import { READ_TEXT_CODES } from "./read-text-codes.js";

/** Codes of a policy text that cannot be read, or does not have the shape of a policy. */
export const READ_CODES = { ...READ_TEXT_CODES, ...READ_SHAPE_CODES };
