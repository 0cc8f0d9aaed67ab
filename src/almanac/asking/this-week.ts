import { taxonName } from '../../visit/entry.ts';
import { daysApartInYear, daysBetween, yearOf } from './days.ts';
import type { VisitDigest } from './digest.ts';

/** So many days to either side make the week. */
const TO_EITHER_SIDE = 3;
/** Nearer than this is the same season's week, not that of an earlier year. */
const HALF_A_YEAR = 180;

export interface SeenThisWeek {
  key: string;
  name: string;
  /** Latest first. */
  years: number[];
  last: string;
}

/** What was on record in the week around a date in earlier years, most years first. */
export function thisWeekBefore(visits: readonly VisitDigest[], date: string): SeenThisWeek[] {
  const taxa = new Map<string, SeenThisWeek>();
  const then = visits.filter(
    (visit) =>
      daysApartInYear(visit.date, date) <= TO_EITHER_SIDE &&
      daysBetween(visit.date, date) > HALF_A_YEAR,
  );
  for (const visit of then)
    for (const { key, taxon } of visit.seen) {
      const years = taxa.get(key)?.years ?? [];
      const year = yearOf(visit.date);
      taxa.set(key, {
        key,
        name: taxonName(taxon),
        years: years.includes(year) ? years : [year, ...years],
        last: visit.date,
      });
    }
  return [...taxa.values()].sort(
    (one, two) =>
      two.years.length - one.years.length ||
      two.last.localeCompare(one.last) ||
      (one.key < two.key ? -1 : 1),
  );
}
