import { areWrittenAlike } from "../terms/index.js";
import type { PreparedFact } from "./prepared-fact.js";
import type { Envelope } from "./read-envelope.js";

/**
 * Whether a scope accepts what is stated of a fact; of a kind that was renamed, either name will do. Undefined where the text is an
 * accepted word but for capitals, blanks and marks, and the fact has no closed list that would tell them apart.
 * Why it matters: taken for another word, it would be out of the scope without a finding.
 */
export function isAccepted(
  fact: PreparedFact | undefined,
  text: string,
  accepted: readonly string[],
  { formerKind }: Envelope,
): boolean | undefined {
  if (accepted.includes(text)) return true;
  if (formerKind !== undefined && fact?.isKind === true && accepted.includes(formerKind)) return true;
  return fact?.words === undefined && accepted.some((word) => areWrittenAlike(word, text)) ? undefined : false;
}
