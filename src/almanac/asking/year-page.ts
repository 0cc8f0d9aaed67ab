import { isSpecies } from '../../visit/entry.ts';
import { dayInYear, yearOf } from './days.ts';
import type { VisitDigest } from './digest.ts';

/** A day on which a year's species became more. */
interface RunningStep {
  date: string;
  species: number;
}

/** A year's species by date, and how many there were by the same day. */
export interface YearSoFar {
  year: number;
  visits: number;
  steps: RunningStep[];
  /** By the day that was asked for. */
  byThen: number;
}

/**
 * Each year's running total of species by date, earliest year first, with the total by one day of the
 * year (`MM-DD`), so that this year so far can be set beside the others by then.
 */
export function runningTotals(visits: readonly VisitDigest[], day = '12-31'): YearSoFar[] {
  const years = new Map<number, YearSoFar & { seen: Set<string> }>();
  for (const visit of visits) {
    const year = yearOf(visit.date);
    const so = years.get(year) ?? { year, visits: 0, steps: [], byThen: 0, seen: new Set() };
    years.set(year, so);
    so.visits += 1;
    const before = so.seen.size;
    for (const { key, taxon } of visit.seen) if (isSpecies(taxon)) so.seen.add(key);
    if (so.seen.size === before) continue;
    const last = so.steps.at(-1);
    if (last?.date === visit.date) last.species = so.seen.size;
    else so.steps.push({ date: visit.date, species: so.seen.size });
    if (dayInYear(visit.date) <= day) so.byThen = so.seen.size;
  }
  return [...years.values()]
    .map(({ year, visits, steps, byThen }) => ({ year, visits, steps, byThen }))
    .sort((one, two) => one.year - two.year);
}
