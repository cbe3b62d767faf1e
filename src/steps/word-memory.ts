import type { LimitWords } from "../words/index.js";
import type { PreparedInstrument } from "./prepared-instrument.js";
import type { RowWords } from "./row-words.js";

/** Readings of one limit take some hundred values; a hostile history must not fill the memory. */
const MOST_REMEMBERED = 1024;

/** Words that were made before for the same value, read on the same instruments, in the same language. */
export interface WordMemory {
  /** `make` must depend on nothing else; what it gives is shared, so nobody may change it. */
  remember(key: string, instruments: readonly PreparedInstrument[], words: LimitWords, make: () => RowWords): RowWords;
}

export function createWordMemory(): WordMemory {
  let language: LimitWords | undefined;
  let count = 0;
  const known = new Map<readonly PreparedInstrument[], Map<string, RowWords>>();
  return {
    remember(key, instruments, words, make) {
      if (language !== words || count >= MOST_REMEMBERED) {
        known.clear();
        count = 0;
        language = words;
      }
      let texts = known.get(instruments);
      if (texts === undefined) {
        texts = new Map();
        known.set(instruments, texts);
      }
      const before = texts.get(key);
      if (before !== undefined) return before;
      const made = make();
      texts.set(key, made);
      count += 1;
      return made;
    },
  };
}
