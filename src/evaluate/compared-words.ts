import type { Plan } from "../model/index.js";
import { isJsonObject } from "../steps/index.js";

/** The words that a policy compares one text fact with, and how they look without what is easily written another way. */
export interface ComparedWords {
  readonly words: Set<string>;
  readonly bare: Set<string>;
}

/** By the name of the fact, what the scopes, limits and rules of a policy compare it with. */
export function listComparedWords({ for: scope, checks }: Plan): ReadonlyMap<string, ComparedWords> {
  const compared = new Map<string, ComparedWords>();
  const add = (fact: string, found: readonly unknown[]) => {
    const known = compared.get(fact) ?? { words: new Set(), bare: new Set() };
    compared.set(fact, known);
    for (const word of found) {
      if (typeof word !== "string") continue;
      known.words.add(word);
      known.bare.add(bareWord(word));
    }
  };
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const member of value) visit(member);
    if (!isJsonObject(value)) return;
    const { for: asked, left, right, item, list } = value;
    if (isJsonObject(asked))
      for (const [fact, words] of Object.entries(asked)) if (Array.isArray(words)) add(fact, words);
    for (const side of [left, right, item]) {
      if (!isJsonObject(side) || side.op !== "fact" || typeof side.name !== "string") continue;
      const terms = [left, right, ...(Array.isArray(list) ? list : [])].filter(isJsonObject);
      add(
        side.name,
        terms.map((term) => (term.op === "text" ? term.value : undefined)),
      );
    }
    for (const member of Object.values(value)) visit(member);
  };
  visit([{ for: scope }, checks]);
  return compared;
}

/**
 * Whether a text is a compared word but for capitals, blanks and marks, as `Open Circuit` is `open-circuit`.
 * Why it matters: taken for another word, it would be out of a scope without a finding.
 */
export function isMisspelt(text: string, compared: ComparedWords | undefined): boolean {
  return compared !== undefined && !compared.words.has(text) && compared.bare.has(bareWord(text));
}

function bareWord(word: string): string {
  const bare = word
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "");
  return bare === "" ? word : bare;
}
