import type { First } from '../../taxa/known.ts';
import { isSpecies, taxonName } from '../../visit/entry.ts';
import { yearOf } from './days.ts';
import type { VisitDigest } from './digest.ts';

/** A record that is the first of its species in the notebook, at its place or in its year. */
export interface FirstRecord {
  /** The rarest that holds. */
  first: First;
  key: string;
  name: string;
  date: string;
  place: { key: string; name: string } | null;
  visit: string;
  /** Number of the entry. */
  entry: number;
}

/** The firsts of visits in the order of time, as `firstOf` tells them while a visit is logged. */
export function firstRecords(visits: readonly VisitDigest[]): FirstRecord[] {
  const known = new Map<string, { places: Set<string>; years: Set<number> }>();
  const records: FirstRecord[] = [];
  for (const { id, date, place, seen } of visits)
    for (const { key, taxon, entry } of seen) {
      if (!isSpecies(taxon)) continue;
      const before = known.get(key);
      const first: First | null = !before
        ? 'first'
        : place !== null && !before.places.has(place.key)
          ? 'first here'
          : before.years.has(yearOf(date))
            ? null
            : 'first this year';
      if (first !== null)
        records.push({ first, key, name: taxonName(taxon), date, place, visit: id, entry });
      const { places, years } = before ?? { places: new Set(), years: new Set() };
      known.set(key, { places, years });
      if (place !== null) places.add(place.key);
      years.add(yearOf(date));
    }
  return records;
}
