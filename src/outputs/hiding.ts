import { plainWords } from '../taxa/names.ts';
import { sensitivityOf } from '../taxa/sensitivity.ts';
import { type Entry, isAbsence } from '../visit/entry.ts';
import type { Place } from '../visit/place.ts';

/** How many decimals of a degree may be given out; null: as held. */
export type Decimals = 1 | 2 | 3 | null;

/** Decimals of a degree by the levels of sensitivity of Chapman 2020 (table 5); 0 for no place at all. */
const DECIMALS = { extreme: 0, high: 1, medium: 2, low: 3 } as const;

/** How exactly a place may be given beside an entry; null: as held. */
export function decimalsFor(entry: Entry): Decimals | 0 {
  if (entry.taxon === null || isAbsence(entry)) return null;
  const level = sensitivityOf(entry.taxon);
  return level === null ? null : DECIMALS[level];
}

/**
 * The decimals for a whole visit: those of its most sensitive entry, since every row of a visit
 * happened at one place and an exact row beside a hidden one would give it away.
 */
export function decimalsForAll(entries: readonly Entry[]): Decimals | 0 {
  const limits = entries.map(decimalsFor).filter((decimals) => decimals !== null);
  return limits.length === 0 ? null : (Math.min(...limits) as 0 | 1 | 2 | 3);
}

/** Degrees within which a number in a text is taken for one of the place's coordinates. */
const NEAR_COORDINATE = 0.2;

/**
 * Does a text tell the place: by its name, however it is spaced and spelt, or by a decimal number that
 * is one of its coordinates, also cut short?
 */
export function tellsPlace(text: string, { name, position }: Place): boolean {
  const bare = (words: string) => plainWords(words).join('') || words.trim();
  if (bare(text).includes(bare(name))) return true;
  if (position === null) return false;
  const degrees = [position.latitude, position.longitude].map(Math.abs);
  const numbers = text.match(/\d+[.,]\d+/g) ?? [];
  return numbers
    .map((digits) => Number(digits.replace(',', '.')))
    .some((number) => degrees.some((each) => Math.abs(number - each) < NEAR_COORDINATE));
}
