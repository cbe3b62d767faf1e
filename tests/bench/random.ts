export interface Random {
  /** At least 0 and below 1. */
  next(): number;
  /** A whole number of 0 to `count - 1`. */
  below(count: number): number;
  chance(share: number): boolean;
  pick<T>(list: readonly T[]): T;
}

/** A generator with a seed, so that every run sees the same records. Source: mulberry32, from memory. */
export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (count: number) => Math.floor(next() * count);
  return {
    next,
    below,
    chance: (share) => next() < share,
    pick(list) {
      // Why: a loop of one round, since the list may hold undefined too.
      for (const found of list.slice(below(list.length))) return found;
      throw new Error("nothing to pick from");
    },
  };
}
