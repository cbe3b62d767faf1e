/** Edits allowed for each this many characters of the longer word; one edit is always allowed. */
const CHARACTERS_PER_EDIT = 3;
const MOST_EDITS = 4;

/**
 * The known word that was probably meant, or none when nothing is close: up to one edit for every three characters
 * (a letter missing, added, replaced, or two neighbours swapped). Case, blanks and underscores count as slips that
 * cost nothing. Of equally close words the first is taken.
 *
 * @param most edits allowed however long the word is
 * Source: the restricted edit distance of Damerau and Levenshtein ("optimal string alignment").
 */
export function findNearest(word: string, known: Iterable<string>, most: number = MOST_EDITS): string | undefined {
  const plain = fold(word);
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const other = fold(candidate);
    const longer = Math.max(plain.length, other.length);
    const allowed = Math.min(Math.max(Math.floor(longer / CHARACTERS_PER_EDIT), 1), most);
    if (plain.length === 0 || Math.abs(plain.length - other.length) > allowed) continue;
    const edits = measureDistance(plain, other);
    // Why: a word of one or two letters is one edit away from too many others.
    if (edits > allowed || edits >= least || edits >= Math.min(plain.length, other.length)) continue;
    nearest = candidate;
    least = edits;
  }
  return nearest;
}

function fold(word: string): string {
  return word.toLowerCase().replaceAll(/[\s_-]+/g, "-");
}

function measureDistance(one: string, other: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1];
      const swapped = one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      const replace = at(last, column - 1) + (same ? 0 : 1);
      const swap = swapped ? at(beforeLast, column - 2) + 1 : Number.POSITIVE_INFINITY;
      current.push(Math.min(replace, swap, at(last, column) + 1, at(current, column - 1) + 1));
    }
    beforeLast = last;
    last = current;
  }
  return at(last, other.length);
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Number.POSITIVE_INFINITY;
}
