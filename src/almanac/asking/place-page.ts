import type { VisitDigest } from './digest.ts';
import { type FirstRecord, firstRecords } from './firsts.ts';
import { speciesCount, type TaxonSeen, taxaSeen, threatenedSeen } from './taxa-seen.ts';

/** What the visits say of one place. */
export interface PlacePage {
  key: string;
  /** As it was last written. */
  name: string;
  visits: number;
  first: string;
  last: string;
  /** Milliseconds of the visits that have an end. */
  watched: number;
  species: number;
  /** Those in most visits first. */
  taxa: TaxonSeen[];
  threatened: TaxonSeen[];
  /** What was met here for the first time in the notebook, or here, in the order of time. */
  firsts: FirstRecord[];
}

/** The page of a place (by its key) over visits in the order of time; null where none was made there. */
export function placePage(visits: readonly VisitDigest[], key: string): PlacePage | null {
  const here = visits.filter(({ place }) => place?.key === key);
  const [first, last] = [here[0], here.at(-1)];
  if (!first || !last) return null;
  const taxa = taxaSeen(here);
  return {
    key,
    name: last.place?.name ?? key,
    visits: here.length,
    first: first.date,
    last: last.date,
    watched: here.reduce((sum, { watched }) => sum + (watched ?? 0), 0),
    species: speciesCount(taxa),
    taxa,
    threatened: threatenedSeen(here),
    firsts: firstRecords(visits).filter(
      (record) => record.place?.key === key && record.first !== 'first this year',
    ),
  };
}

/** Every place with its visits, those with most first. */
export function placesVisited(
  visits: readonly VisitDigest[],
): { key: string; name: string; visits: number; last: string }[] {
  const places = new Map<string, { key: string; name: string; visits: number; last: string }>();
  for (const { date, place } of visits)
    if (place !== null)
      places.set(place.key, {
        ...place,
        visits: (places.get(place.key)?.visits ?? 0) + 1,
        last: date,
      });
  return [...places.values()].sort(
    (one, two) => two.visits - one.visits || (one.key < two.key ? -1 : 1),
  );
}
