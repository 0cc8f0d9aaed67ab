import { yearOf } from '../asking/days.ts';
import type { VisitDigest } from '../asking/digest.ts';
import type { Figure } from './figure.ts';

const HOUR = 3_600_000;

/** The first and last dates of a taxon in a year, with how much was looked. */
export interface YearDates {
  year: number;
  /** Local dates; null in a year that has visits without it. */
  first: string | null;
  last: string | null;
  /** Dates of the first and last visits of the year: nobody looked before and after. */
  looked: readonly [from: string, to: string];
  visits: number;
  visitsWith: number;
  /** Hours of the visits that have an end. */
  hours: number;
}

/** The first and last dates of a taxon (by `taxonKey`) in each year that has visits. */
export function firstAndLast(
  visits: readonly VisitDigest[],
  key: string,
): Figure<{ years: YearDates[] }> {
  const years = new Map<number, YearDates>();
  for (const { date, seen, watched } of visits) {
    const year = yearOf(date);
    const so = years.get(year) ?? nothingIn(year, date);
    const has = seen.some((each) => each.key === key);
    years.set(year, {
      year,
      first: has ? earlier(so.first, date) : so.first,
      last: has ? later(so.last, date) : so.last,
      looked: [earlier(so.looked[0], date), later(so.looked[1], date)],
      visits: so.visits + 1,
      visitsWith: so.visitsWith + (has ? 1 : 0),
      hours: so.hours + (watched ?? 0) / HOUR,
    });
  }
  const rows = [...years.values()].sort((one, two) => one.year - two.year);
  if (rows.every(({ visitsWith }) => visitsWith === 0))
    return { refused: 'No visit has it on record, so it has no dates.' };
  const edge = rows.filter(({ first, looked }) => first !== null && first === looked[0]);
  return {
    years: rows,
    notes:
      edge.length === 0
        ? []
        : [
            `On record at the first visit of ${edge.map(({ year }) => year).join(', ')}: it may have been there before.`,
          ],
  };
}

function nothingIn(year: number, date: string): YearDates {
  return {
    year,
    first: null,
    last: null,
    looked: [date, date],
    visits: 0,
    visitsWith: 0,
    hours: 0,
  };
}

function earlier(one: string | null, two: string): string {
  return one !== null && one < two ? one : two;
}

function later(one: string | null, two: string): string {
  return one !== null && one > two ? one : two;
}
