import { CATEGORY_WORDS, isThreatened } from '../../taxa/red-list.ts';
import { RED_LIST_CATEGORIES } from '../../visit/entry.ts';
import { MONTHS } from './days.ts';
import type { Part } from './query.ts';

/** The most words that one of these can have: `extinct in the wild`. */
export const MOST_WORDS = 4;

/**
 * The part that words of the language mean, whatever is in the notebook: a month (its name or first
 * three letters), a year, a date to the month or the day (ISO 8601), a category by letters or words,
 * `threatened`, `first`, `unnamed`; null for others.
 */
export function fixedPart(said: string): Part | null {
  const plain = said.toLocaleLowerCase('en');
  if (plain === 'unnamed') return { kind: 'unnamed', said };
  if (plain === 'first' || plain === 'firsts') return { kind: 'first', said, first: 'first' };
  if (plain === 'first here' || plain === 'first this year')
    return { kind: 'first', said, first: plain };
  if (/^(?:1[6-9]|20)\d{2}$/.test(plain)) return { kind: 'year', said, year: Number(plain) };
  if (/^\d{4}-(?:0[1-9]|1[0-2])(?:-\d{2})?$/.test(plain))
    return { kind: 'date', said, date: plain };
  const month = monthIn(plain);
  if (month !== null) return { kind: 'month', said, month };
  const categories = categoriesIn(plain);
  return categories.length === 0 ? null : { kind: 'category', said, categories };
}

function monthIn(plain: string): number | null {
  const at = MONTHS.findIndex((name) => {
    const month = name.toLowerCase();
    return plain === month || plain === month.slice(0, 3) || (plain === 'sept' && month[0] === 's');
  });
  return at < 0 ? null : at + 1;
}

function categoriesIn(plain: string) {
  if (plain === 'threatened') return RED_LIST_CATEGORIES.filter(isThreatened);
  return RED_LIST_CATEGORIES.filter(
    (letters) => letters.toLowerCase() === plain || CATEGORY_WORDS[letters] === plain,
  );
}
