import type { Known } from '../../taxa/known.ts';
import type { TaxonIndex } from '../../taxa/taxon-index.ts';
import { isSpecies, taxonName } from '../../visit/entry.ts';
import { yearOf } from '../asking/days.ts';
import type { VisitDigest } from '../asking/digest.ts';
import { type FirstRecord, firstRecords } from '../asking/firsts.ts';
import { likelyHere } from '../asking/likely.ts';
import { type PlacePage, placePage } from '../asking/place-page.ts';

const BEST_DAYS = 5;
const LIKELY = 8;

/** What is told of a place: its page, its best days, what was new there, and what to look for today. */
export interface PlaceReport extends Omit<PlacePage, 'firsts'> {
  /** Days with most species, the earlier first of equal ones. */
  bestDays: { date: string; species: number }[];
  /** The year of `newThere`. */
  newIn: number;
  /** First in the notebook or first here, in the order of time. */
  newThere: FirstRecord[];
  likely: { name: string; visits: number; visitsHere: number }[];
}

/** What is needed to tell what is likely; null leaves it out. */
export interface Expecting {
  index: TaxonIndex;
  known: Known;
  /** Local date. */
  today: string;
}

/**
 * The report of a place (by its key) over the visits `asked` for; `all` tell what was new in a year.
 * Null where none was made there.
 */
export function placeReport(
  key: string,
  asked: readonly VisitDigest[],
  all: readonly VisitDigest[],
  year: number,
  expecting: Expecting | null,
): PlaceReport | null {
  const page = placePage(asked, key);
  if (page === null) return null;
  const { firsts: _, ...rest } = page;
  const newThere = firstRecords(all).filter(
    ({ first, place, date }) =>
      first !== 'first this year' && place?.key === key && yearOf(date) === year,
  );
  return {
    ...rest,
    bestDays: bestDays(asked.filter(({ place }) => place?.key === key)),
    newIn: year,
    newThere,
    likely: expecting === null ? [] : likelyAt(key, expecting),
  };
}

function bestDays(visits: readonly VisitDigest[]): PlaceReport['bestDays'] {
  const days = new Map<string, Set<string>>();
  for (const { date, seen } of visits) {
    const keys = days.get(date) ?? new Set();
    days.set(date, keys);
    for (const { key, taxon } of seen) if (isSpecies(taxon)) keys.add(key);
  }
  return [...days]
    .map(([date, keys]) => ({ date, species: keys.size }))
    .filter(({ species }) => species > 0)
    .sort((one, two) => two.species - one.species || (one.date < two.date ? -1 : 1))
    .slice(0, BEST_DAYS);
}

function likelyAt(place: string, { index, known, today }: Expecting): PlaceReport['likely'] {
  const occasion = { place, date: today, today: new Map<string, number>() };
  return likelyHere(index, known, occasion, LIKELY).map(({ taxon, visits, visitsHere }) => ({
    name: taxonName(taxon),
    visits,
    visitsHere,
  }));
}
