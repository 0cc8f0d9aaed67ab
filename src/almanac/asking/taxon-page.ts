import { type EntryTaxon, taxonName } from '../../visit/entry.ts';
import type { Sum, SumRule } from '../../visit/sums.ts';
import { numberOf } from '../figures/number.ts';
import { completeFor, type GroupOf } from './complete.ts';
import { monthOf, yearOf } from './days.ts';
import type { VisitDigest } from './digest.ts';

/** A month of all years together: how many visits, and how many of them saw the taxon. */
interface MonthShare {
  /** From 1. */
  month: number;
  visits: number;
  visitsWith: number;
  /** Of the visits that were complete for its group, where silence means that it was not seen. */
  complete: number;
  completeWith: number;
  /** `completeWith / complete`; null for a month without complete visits. */
  share: number | null;
}

interface HighestCount {
  total: Sum;
  /** How the counts of that visit became one. */
  rule: SumRule;
  date: string;
  place: string | null;
  visit: string;
}

/** What the visits say of one taxon. */
export interface TaxonPage {
  key: string;
  name: string;
  /** As in its latest record. */
  taxon: EntryTaxon;
  first: string;
  last: string;
  visitsWith: number;
  visits: number;
  /** Visits that noted that there was none. */
  visitsNone: number;
  /** Entries that bear the name with a question mark; they are no record. */
  uncertain: number;
  months: MonthShare[];
  /** The greatest visit total, the earliest of equal ones; null where it was never counted. */
  highest: HighestCount | null;
  places: { name: string; visitsWith: number; visits: number; last: string }[];
  years: { year: number; visitsWith: number; visits: number }[];
}

/** The page of a taxon (by `taxonKey`) over visits in the order of time; null without a record. */
export function taxonPage(
  visits: readonly VisitDigest[],
  key: string,
  groupOf: GroupOf,
): TaxonPage | null {
  const having = visits.filter((visit) => has(visit, key));
  const [first, last] = [having[0], having.at(-1)];
  const latest = last?.seen.find((each) => each.key === key);
  if (!first || !last || !latest) return null;
  const { taxon } = latest;
  return {
    key,
    name: taxonName(taxon),
    taxon,
    first: first.date,
    last: last.date,
    visitsWith: having.length,
    visits: visits.length,
    visitsNone: visits.filter(({ notFound }) => notFound.includes(key)).length,
    uncertain: visits
      .flatMap(({ entries }) => entries)
      .filter((entry) => entry.key === key && entry.uncertain).length,
    months: monthShares(visits, key, groupOf(taxon.list)),
    highest: highestCount(having, key),
    places: placesOf(visits, key),
    years: yearsOf(visits, key),
  };
}

/** For each month the visits that saw a taxon, out of those made. */
function monthShares(visits: readonly VisitDigest[], key: string, group: string): MonthShare[] {
  return Array.from({ length: 12 }, (_, at) => {
    const ofMonth = visits.filter(({ date }) => monthOf(date) === at + 1);
    const complete = ofMonth.filter((visit) => completeFor(visit, group));
    const completeWith = withIt(complete, key);
    return {
      month: at + 1,
      visits: ofMonth.length,
      visitsWith: withIt(ofMonth, key),
      complete: complete.length,
      completeWith,
      share: complete.length === 0 ? null : completeWith / complete.length,
    };
  });
}

/** The greatest visit total of a taxon; a lower bound stands above the same number. */
export function highestCount(visits: readonly VisitDigest[], key: string): HighestCount | null {
  let highest: HighestCount | null = null;
  let most = 0;
  for (const { id, date, place, seen } of visits) {
    const sighting = seen.find((each) => each.key === key);
    if (!sighting) continue;
    const { total, rule } = sighting;
    const { number, how } = numberOf(total);
    if (number === null) continue;
    const worth = number + (how === 'lower bound' ? 0.5 : 0);
    if (worth <= most) continue;
    most = worth;
    highest = { total, rule, date, place: place?.name ?? null, visit: id };
  }
  return highest;
}

function has({ seen }: VisitDigest, key: string): boolean {
  return seen.some((each) => each.key === key);
}

function withIt(visits: readonly VisitDigest[], key: string): number {
  return visits.filter((visit) => has(visit, key)).length;
}

/** The places that have it, those with most visits with it first. */
function placesOf(visits: readonly VisitDigest[], key: string): TaxonPage['places'] {
  const places = new Map<string, TaxonPage['places'][number]>();
  for (const visit of visits) {
    if (visit.place === null) continue;
    const so = places.get(visit.place.key) ?? { name: '', visitsWith: 0, visits: 0, last: '' };
    const here = has(visit, key);
    places.set(visit.place.key, {
      name: visit.place.name,
      visitsWith: so.visitsWith + (here ? 1 : 0),
      visits: so.visits + 1,
      last: here ? visit.date : so.last,
    });
  }
  return [...places.values()]
    .filter(({ visitsWith }) => visitsWith > 0)
    .sort((one, two) => two.visitsWith - one.visitsWith || (one.name < two.name ? -1 : 1));
}

function yearsOf(visits: readonly VisitDigest[], key: string): TaxonPage['years'] {
  const years = new Map<number, TaxonPage['years'][number]>();
  for (const visit of visits) {
    const year = yearOf(visit.date);
    const so = years.get(year) ?? { year, visitsWith: 0, visits: 0 };
    years.set(year, {
      year,
      visitsWith: so.visitsWith + (has(visit, key) ? 1 : 0),
      visits: so.visits + 1,
    });
  }
  return [...years.values()].sort((one, two) => one.year - two.year);
}
