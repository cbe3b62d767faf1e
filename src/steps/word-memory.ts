import type { LimitWords } from "../words/index.js";
import type { PreparedInstrument } from "./prepared-instrument.js";
import type { RowWords } from "./row-words.js";

/** Readings of one limit take some hundred values; a hostile history must not fill the memory. */
const MOST_REMEMBERED = 1024;

/** Words that were made before for the same value, read on the same instruments, in the same language. */
export interface WordMemory {
  /**
   * `make` must depend on nothing else; what it gives is shared, so nobody may change it.
   *
   * @param key the numbers that the words depend on
   */
  remember(
    key: readonly number[],
    instruments: readonly PreparedInstrument[],
    words: LimitWords,
    make: () => RowWords,
  ): RowWords;
}

/** What is remembered under the numbers read so far. */
interface Shelf {
  words: RowWords | undefined;
  readonly next: Map<number, Shelf>;
}

/** Why: a tree of numbers, since to write out a key of large ones takes longer than to judge the reading. */
export function createWordMemory(): WordMemory {
  let language: LimitWords | undefined;
  let count = 0;
  const shelves = new Map<readonly PreparedInstrument[], Shelf>();
  return {
    remember(key, instruments, words, make) {
      if (language !== words || count >= MOST_REMEMBERED) {
        shelves.clear();
        count = 0;
        language = words;
      }
      let shelf = findShelf(shelves, instruments);
      for (const number of key) shelf = findShelf(shelf.next, number);
      if (shelf.words !== undefined) return shelf.words;
      shelf.words = make();
      count += 1;
      return shelf.words;
    },
  };
}

function findShelf<K>(shelves: Map<K, Shelf>, key: K): Shelf {
  const known = shelves.get(key);
  if (known !== undefined) return known;
  const shelf: Shelf = { words: undefined, next: new Map() };
  shelves.set(key, shelf);
  return shelf;
}
