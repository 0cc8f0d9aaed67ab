import * as z from 'zod';
import type { Declared } from './declared.ts';

/** The highest count that is kept. */
export const MOST = 9_999_999;
const whole = z.number().int().min(0).max(MOST);

/**
 * How many, as honestly as the observer could tell. `present` means seen and not counted; it is never
 * turned into 1 by any sum.
 */
export const Count = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('exact'), value: whole }),
  z.looseObject({ kind: z.literal('at least'), value: whole }),
  z.looseObject({ kind: z.literal('about'), value: whole }),
  z.looseObject({ kind: z.literal('range'), low: whole, high: whole }),
  z.looseObject({ kind: z.literal('present') }),
]);
export type Count = Declared<z.infer<typeof Count>>;

/** Letters for a part of a count, with the Darwin Core term and word each stands for. */
export const PART_LETTERS = {
  m: { term: 'sex', word: 'male' },
  f: { term: 'sex', word: 'female' },
  j: { term: 'lifeStage', word: 'juvenile' },
  a: { term: 'lifeStage', word: 'adult' },
} as const;
export type PartLetter = keyof typeof PART_LETTERS;

/** Some of the counted individuals by sex or age: `3m` is three males. */
export const CountPart = z.looseObject({
  letter: z.enum(['m', 'f', 'j', 'a']),
  value: whole,
});
export type CountPart = Declared<z.infer<typeof CountPart>>;

/** The usual steps of the group size, from one bird by the practice of counting flocks in blocks. */
export const GROUP_SIZES: readonly number[] = [1, 2, 5, 10, 20, 50, 100];

const COUNT_FORM = /^(?:~\s*(\d{1,7})|(\d{1,7})\+|(\d{1,7})[-–](\d{1,7})|(\d{1,7}))$/;

/** Reads `12`, `12+`, `~12` or `10-15`; null for anything else. A range typed high to low is turned. */
export function readCount(text: string): Count | null {
  const found = COUNT_FORM.exec(text);
  if (!found) return null;
  const [, about, atLeast, from, to, exact] = found;
  if (about !== undefined) return { kind: 'about', value: Number(about) };
  if (atLeast !== undefined) return { kind: 'at least', value: Number(atLeast) };
  if (from !== undefined && to !== undefined) {
    const ends = [Number(from), Number(to)] as const;
    if (ends[0] === ends[1]) return { kind: 'exact', value: ends[0] };
    return { kind: 'range', low: Math.min(...ends), high: Math.max(...ends) };
  }
  return { kind: 'exact', value: Number(exact) };
}

/** A count in the form in which it is typed, so that it can be read back; empty for `present`. */
export function countText(count: Count): string {
  switch (count.kind) {
    case 'exact':
      return String(count.value);
    case 'at least':
      return `${count.value}+`;
    case 'about':
      return `~${count.value}`;
    case 'range':
      return `${count.low}-${count.high}`;
    case 'present':
      return '';
  }
}

/** A count to look at: as typed, but in words where there is no number to read. */
export function countShown(count: Count): string {
  if (count.kind === 'present') return 'present';
  return count.kind === 'exact' && count.value === 0 ? 'none' : countText(count);
}

/** A count's parts as typed: `3m 2f`. */
export function partsText(parts: readonly CountPart[]): string {
  return parts.map((part) => `${part.value}${part.letter}`).join(' ');
}

/** The most that a count can hold, or null where it has no upper end. */
export function mostOf(count: Count): number | null {
  if (count.kind === 'exact') return count.value;
  if (count.kind === 'range') return count.high;
  return null;
}

/**
 * The group size of `sizes` one step up (1) or down (-1) from a count. A count between two steps goes to the
 * next step in that direction; its kind (about, at least) stays, and a range becomes one number.
 * Past either end the count stays as it is.
 */
export function stepCount(
  count: Count,
  direction: 1 | -1,
  sizes: readonly number[] = GROUP_SIZES,
): Count {
  if (count.kind === 'present')
    return direction === 1 ? { kind: 'exact', value: sizes[0] ?? 1 } : count;
  const from = count.kind === 'range' ? (direction === 1 ? count.high : count.low) : count.value;
  const value =
    direction === 1 ? sizes.find((size) => size > from) : sizes.findLast((size) => size < from);
  if (value === undefined) return count;
  return count.kind === 'range' ? { kind: 'exact', value } : { ...count, value };
}
