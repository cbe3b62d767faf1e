import { areWrittenAlike } from "../terms/index.js";
import { listTextFacts } from "./compile-facts.js";
import type { PlanContext } from "./plan-context.js";

/** A word that the policy compares a fact with, and where it is written. */
interface ComparedWord {
  readonly fact: string;
  readonly word: string;
  readonly pointer: string;
}

const COMPARISONS: ReadonlySet<string> = new Set(["==", "!=", "in"]);

/**
 * Warns of two words for one fact that differ only in how they are written: a record that states the one leaves open what asks for the
 * other. Facts with a list of their own words are left out, since those are compared exactly.
 */
export function checkAlikeWords({ resolved, diagnostics, factTypes }: PlanContext): void {
  const open = new Set([...listTextFacts(factTypes)].flatMap(([name, words]) => (words === undefined ? [name] : [])));
  const { document } = resolved;
  const found = [...listScopes(document, ""), ...listRuleWords(document.rules, "/rules")];
  for (const [name, { subject, competence }] of Object.entries(document.checks ?? {})) {
    const kind = typeof subject === "string" ? { word: subject, below: "" } : { word: subject?.kind, below: "/kind" };
    const pointer = `/checks/${name}`;
    found.push(...listWords("kind", kind.word, `${pointer}/subject${kind.below}`));
    found.push(...listWords("competence", competence, `${pointer}/competence`));
  }
  const seen: ComparedWord[] = [];
  for (const one of found.filter(({ fact }) => open.has(fact))) {
    if (seen.some(({ fact, word }) => fact === one.fact && word === one.word)) continue;
    const other = seen.find(({ fact, word }) => fact === one.fact && areWrittenAlike(word, one.word));
    seen.push(one);
    if (other === undefined) continue;
    // Why: what is inherited is the parent's to mend.
    const [here, there] = resolved.isInherited(one.pointer) ? [other, one] : [one, other];
    const related = [{ message: diagnostics.words.related.otherOne, place: resolved.place(there.pointer) }];
    const params = { fact: here.fact, word: here.word, other: there.word };
    diagnostics.report("plan/words-alike", resolved.place(here.pointer), params, related);
  }
}

/** The words of every scope, wherever it stands. */
function listScopes(value: unknown, pointer: string): readonly ComparedWord[] {
  return listMembers(value).flatMap(([key, member]) => {
    const below = `${pointer}/${key}`;
    if (key !== "for" && key !== "only") return listScopes(member, below);
    return listMembers(member).flatMap(([fact, words]) => listWords(fact, words, `${below}/${fact}`));
  });
}

/** What rules compare facts with, however deep in a term the one and the other stand. */
function listRuleWords(value: unknown, pointer: string): readonly ComparedWord[] {
  return listMembers(value).flatMap(([key, member]) => {
    const below = `${pointer}/${key}`;
    if (!COMPARISONS.has(key)) return listRuleWords(member, below);
    const terms = listTerms(member, below);
    const facts = terms.flatMap(({ fact }) => fact ?? []);
    return terms.flatMap(({ word, pointer: at }) => facts.flatMap((fact) => listWords(fact, word, at)));
  });
}

interface Term {
  readonly fact?: string;
  readonly word?: string;
  readonly pointer: string;
}

function listTerms(value: unknown, pointer: string): readonly Term[] {
  if (typeof value === "string") return [{ word: value, pointer }];
  return listMembers(value).flatMap(([key, member]) => {
    const below = `${pointer}/${key}`;
    return key === "var" && typeof member === "string" ? [{ fact: member, pointer: below }] : listTerms(member, below);
  });
}

function listWords(fact: string, words: unknown, pointer: string): readonly ComparedWord[] {
  if (typeof words === "string") return [{ fact, word: words, pointer }];
  return listMembers(words).flatMap(([key, word]) =>
    typeof word === "string" ? [{ fact, word, pointer: `${pointer}/${key}` }] : [],
  );
}

function listMembers(value: unknown): readonly [string, unknown][] {
  return typeof value === "object" && value !== null ? Object.entries(value) : [];
}
