/** Whole numbers from 0, without end, each of which makes one choice. */
export interface Picks {
  readonly next: () => number;
}

/** The same choices for the same seed. Source: the generator "mulberry32" by Tommy Ettinger (public domain), from memory. */
export function createPicks(seed: number): Picks {
  let state = seed | 0;
  return {
    next: () => {
      state = (state + 0x6d2b79f5) | 0;
      const first = Math.imul(state ^ (state >>> 15), state | 1);
      const second = first ^ (first + Math.imul(first ^ (first >>> 7), first | 61));
      return (second ^ (second >>> 14)) >>> 0;
    },
  };
}

/** One of a list; undefined where it is empty. */
export function pickFrom<T>(list: readonly T[], picks: Picks): T | undefined {
  return list[picks.next() % Math.max(1, list.length)];
}
