import { type Entry, isAbsence } from '../visit/entry.ts';
import { type Place, placeKey } from '../visit/place.ts';
import { dateOf, epochOf } from '../visit/time.ts';
import { standing, type Visit } from '../visit/visit.ts';
import type { Prior } from './search.ts';

interface Seen {
  visits: number;
  /** Local date of the last visit that has it. */
  last: string;
  /** Visits by month, January first. */
  months: number[];
}

interface KnownTaxon extends Seen {
  years: Set<number>;
  here: Map<string, Seen>;
}

/** What the visits of a notebook tell of its taxa and places. */
export interface Known {
  /** By scientific name. */
  taxa: Map<string, KnownTaxon>;
  /** By place key, with the place as it last stood. */
  places: Map<string, { place: Place; visits: number; last: string }>;
  /** Place of the latest visit that has one. */
  lastPlace: Place | null;
  visits: number;
}

/** Gathers what visits know. Uncertain, unnamed and struck entries and zero counts make no record. */
export function knownFrom(visits: Iterable<Visit>): Known {
  const known: Known = { taxa: new Map(), places: new Map(), lastPlace: null, visits: 0 };
  const inOrder = [...visits].sort((one, two) => epochOf(one.start) - epochOf(two.start));
  for (const visit of inOrder) {
    known.visits += 1;
    const date = dateOf(visit.start);
    const key = visit.place === null ? null : placeKey(visit.place.name);
    if (visit.place !== null && key !== null) {
      known.lastPlace = visit.place;
      known.places.set(key, {
        place: visit.place,
        visits: (known.places.get(key)?.visits ?? 0) + 1,
        last: date,
      });
    }
    for (const name of recorded(visit)) {
      const taxon = known.taxa.get(name) ?? { ...nothingSeen(), years: new Set(), here: new Map() };
      known.taxa.set(name, taxon);
      see(taxon, date);
      taxon.years.add(yearOf(date));
      if (key === null) continue;
      const here = taxon.here.get(key) ?? nothingSeen();
      taxon.here.set(key, here);
      see(here, date);
    }
  }
  return known;
}

function recorded(visit: Visit): Set<string> {
  return new Set(
    standing(visit)
      .filter(isRecord)
      .map((entry) => entry.taxon?.scientificName ?? ''),
  );
}

function isRecord(entry: Entry): boolean {
  return entry.taxon !== null && !entry.uncertain && entry.struck === null && !isAbsence(entry);
}

function nothingSeen(): Seen {
  return { visits: 0, last: '', months: Array.from({ length: 12 }, () => 0) };
}

function see(seen: Seen, date: string): void {
  seen.visits += 1;
  seen.last = date > seen.last ? date : seen.last;
  const month = Number(date.slice(5, 7)) - 1;
  seen.months[month] = (seen.months[month] ?? 0) + 1;
}

function yearOf(date: string): number {
  return Number(date.slice(0, 4));
}

export type First = 'first' | 'first here' | 'first this year';

/**
 * Whether an entry is the first record of its taxon in the notebook, at this place or in this year:
 * the rarest that holds. `before` knows the visits before this one; of several entries of a taxon in
 * one visit only the earliest is a first.
 */
export function firstOf(before: Known, visit: Visit, entry: Entry): First | null {
  const name = entry.taxon?.scientificName;
  if (name === undefined || !isRecord(entry)) return null;
  const earlier = visit.entries.some(
    (other) =>
      other.number < entry.number && other.taxon?.scientificName === name && isRecord(other),
  );
  if (earlier) return null;
  const known = before.taxa.get(name);
  if (!known) return 'first';
  if (visit.place !== null && !known.here.has(placeKey(visit.place.name))) return 'first here';
  return known.years.has(yearOf(dateOf(visit.start))) ? null : 'first this year';
}

/**
 * What to expect at a place (its key, or null) on a date: most, what was seen here in the months
 * around; less, what was seen here at all or elsewhere in the season; a little, what is common in the
 * region. From 0 to 20. The weights are the project's own choice.
 */
export function priorFor(known: Known | null, place: string | null, date: string): Prior {
  const month = Number(date.slice(5, 7)) - 1;
  return (taxon) => {
    const common = (4 - taxon.frequency) * 2;
    const seen = known?.taxa.get(taxon.scientificName);
    if (!seen) return common;
    const here = place === null ? undefined : seen.here.get(place);
    const seasonHere = here ? around(here.months, month) : 0;
    const season = around(seen.months, month);
    return (
      common +
      7 * part(seasonHere) +
      2.5 * part(here?.visits ?? 0) +
      2.5 * part(season) +
      2 * part(seen.visits)
    );
  };
}

/** Visits in a month and its neighbours; the year is a circle. */
function around(months: readonly number[], month: number): number {
  return [-1, 0, 1].reduce((sum, step) => sum + (months[(month + step + 12) % 12] ?? 0), 0);
}

/** From none (0) towards all (1): the first visits tell most. */
function part(visits: number): number {
  return visits / (visits + 1);
}
