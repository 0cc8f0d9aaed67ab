/** Draws that the same seed always gives in the same order. */
export interface Random {
  /** From 0 up to, not including, 1. */
  next(): number;
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  chance(share: number): boolean;
  pick<Item>(items: readonly Item[]): Item;
  /** Roughly normal, mean 0, standard deviation 1: twelve draws added up (Irwin-Hall). */
  bell(): number;
  /** A UUID of version 4 and variant 1 in form (RFC 9562, section 5.4); not secret. */
  uuid(): string;
}

/**
 * The generator mulberry32 by Tommy Ettinger, put into the public domain (from memory): 32 bits of
 * state, good enough for invented walks and for nothing secret.
 */
export function randomFrom(seed: number): Random {
  let state = seed | 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  return {
    next,
    whole,
    chance: (share) => next() < share,
    pick(items) {
      const item = items[whole(0, items.length - 1)];
      if (item === undefined) throw new Error('There is nothing to pick from.');
      return item;
    },
    bell: () => Array.from({ length: 12 }, next).reduce((sum, draw) => sum + draw, -6),
    uuid() {
      const digits = Array.from({ length: 32 }, () => whole(0, 15));
      digits[12] = 4;
      digits[16] = 8 + ((digits[16] ?? 0) % 4);
      const text = digits.map((digit) => digit.toString(16)).join('');
      return [
        [0, 8],
        [8, 12],
        [12, 16],
        [16, 20],
        [20, 32],
      ]
        .map(([from, to]) => text.slice(from, to))
        .join('-');
    },
  };
}
