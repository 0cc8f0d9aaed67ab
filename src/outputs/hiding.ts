import { plainWords } from '../taxa/names.ts';
import { isThreatened } from '../taxa/red-list.ts';
import { type Entry, isAbsence } from '../visit/entry.ts';
import type { Place } from '../visit/place.ts';

/** How many decimals of a degree may be given out; null: as held. */
export type Decimals = 1 | 2 | 3 | null;

/**
 * How exactly a place may be given beside an entry. The levels are those of Chapman 2020 (table 5):
 * high 0.1°, medium 0.01°, low 0.001°. Critically endangered and endangered species count as high and
 * vulnerable ones as medium, which is the project's own choice. `extreme` gets no place at all: 0.
 */
export function decimalsFor(entry: Entry): Decimals | 0 {
  const { taxon } = entry;
  if (taxon === null || isAbsence(entry)) return null;
  if (taxon.sensitivity === 'extreme') return 0;
  const { redListCategory: category } = taxon;
  if (taxon.sensitivity === 'high' || category === 'CR' || category === 'EN') return 1;
  if (taxon.sensitivity === 'medium' || isThreatened(category)) return 2;
  return taxon.sensitivity === 'low' ? 3 : null;
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
