import { type Entry, isAbsence, isSpecies, taxonKey } from '../visit/entry.ts';
import { type Place, placeKey } from '../visit/place.ts';
import { dateOf, epochOf } from '../visit/time.ts';
import { standing, type Visit } from '../visit/visit.ts';

interface Seen {
  visits: number;
  /** Local date of the last visit that has it. */
  last: string;
}

interface KnownTaxon extends Seen {
  years: Set<number>;
  here: Map<string, Seen>;
}

/** What the visits of a notebook tell of its taxa and places. */
export interface Known {
  /** By `taxonKey`. */
  taxa: Map<string, KnownTaxon>;
  /** By place key, with the place as it last stood. */
  places: Map<string, { place: Place; visits: number; last: string }>;
  /** Place of the latest visit that has one. */
  lastPlace: Place | null;
  visits: number;
  /** Each visit in the order of time: local date, key of its place, keys of the taxa on record. */
  records: { date: string; place: string | null; taxa: ReadonlySet<string> }[];
}

/** Gathers what visits know. Uncertain, unnamed and struck entries and zero counts make no record. */
export function knownFrom(visits: Iterable<Visit>): Known {
  const known: Known = {
    taxa: new Map(),
    places: new Map(),
    lastPlace: null,
    visits: 0,
    records: [],
  };
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
    const names = recorded(visit);
    known.records.push({ date, place: key, taxa: names });
    for (const name of names) {
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
      .flatMap(({ taxon }) => (taxon === null ? [] : taxonKey(taxon))),
  );
}

function isRecord(entry: Entry): boolean {
  return entry.taxon !== null && !entry.uncertain && entry.struck === null && !isAbsence(entry);
}

function nothingSeen(): Seen {
  return { visits: 0, last: '' };
}

function see(seen: Seen, date: string): void {
  seen.visits += 1;
  seen.last = date > seen.last ? date : seen.last;
}

function yearOf(date: string): number {
  return Number(date.slice(0, 4));
}

export type First = 'first' | 'first here' | 'first this year';

/**
 * Whether an entry is the first record of its taxon in the notebook, at this place or in this year:
 * the rarest that holds. A genus, a pair or a hybrid is no first. `before` knows the visits before this one; of several entries of a taxon in
 * one visit only the earliest is a first.
 */
export function firstOf(before: Known, visit: Visit, entry: Entry): First | null {
  if (entry.taxon === null || !isSpecies(entry.taxon) || !isRecord(entry)) return null;
  const name = taxonKey(entry.taxon);
  const earlier = visit.entries.some(
    (other) =>
      other.number < entry.number &&
      other.taxon !== null &&
      taxonKey(other.taxon) === name &&
      isRecord(other),
  );
  if (earlier) return null;
  const known = before.taxa.get(name);
  if (!known) return 'first';
  if (visit.place !== null && !known.here.has(placeKey(visit.place.name))) return 'first here';
  return known.years.has(yearOf(dateOf(visit.start))) ? null : 'first this year';
}
