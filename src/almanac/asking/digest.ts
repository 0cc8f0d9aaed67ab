import type { Count } from '../../visit/count.ts';
import { type Entry, type EntryTaxon, isAbsence, nameOf, taxonKey } from '../../visit/entry.ts';
import { placeKey } from '../../visit/place.ts';
import { type Sum, type SumRule, totals } from '../../visit/sums.ts';
import { dateOf, epochOf } from '../../visit/time.ts';
import { standing, type Visit, watched } from '../../visit/visit.ts';

/** A standing entry, as far as the almanac asks for it. */
export interface EntryDigest {
  number: number;
  time: string;
  /** Null for an unnamed entry. */
  taxon: EntryTaxon | null;
  /** Of `taxonKey`; null for an unnamed entry. */
  key: string | null;
  /** The name to show; the observer's own words where there is no other. */
  name: string;
  uncertain: boolean;
  count: Count;
  description: string | null;
}

/** A taxon that a visit has on record: seen, and the observer sure of the name. */
interface Sighting {
  key: string;
  taxon: EntryTaxon;
  /** What its counts come to in this visit, without uncertain entries. */
  total: Sum;
  rule: SumRule;
  /** Number of the earliest entry of it. */
  entry: number;
}

/**
 * All that the almanac keeps of a visit. It hangs on that visit alone, so an index can hold digests
 * and make anew only those of visits that changed.
 */
export interface VisitDigest {
  id: string;
  /** Of the start: epoch milliseconds, and the local date. */
  epoch: number;
  date: string;
  place: { key: string; name: string } | null;
  /** Milliseconds less the pauses; null for a visit that has no end yet. */
  watched: number | null;
  /** Metres. */
  distance: number | null;
  observers: number | null;
  /** Was everything noticed logged, for `groups` or, where it is null, for all? */
  complete: boolean;
  groups: readonly string[] | null;
  description: string | null;
  entries: readonly EntryDigest[];
  seen: readonly Sighting[];
  /** Taxa (by `taxonKey`) of which the observer noted that there was none. */
  notFound: readonly string[];
  /** How many changes the visit has had, which tells the newer of two copies. */
  changes: number;
}

/** What the almanac keeps of a visit. */
export function digestOf(visit: Visit): VisitDigest {
  const { id, start, end, place, effort, description } = visit;
  const entries = standing(visit);
  const seen = sightings(visit, entries);
  const onRecord = new Set(seen.map(({ key }) => key));
  const none = entries.flatMap((entry) =>
    entry.taxon !== null && isAbsence(entry) ? taxonKey(entry.taxon) : [],
  );
  return {
    id,
    epoch: epochOf(start),
    date: dateOf(start),
    place: place && { key: placeKey(place.name), name: place.name },
    watched: end === null ? null : watched(visit, epochOf(end)),
    distance: effort.distance,
    observers: effort.observers,
    complete: effort.complete === true,
    groups: effort.groups,
    description,
    entries: entries.map(entryDigest),
    seen,
    notFound: [...new Set(none)].filter((key) => !onRecord.has(key)),
    changes: visit.changes.length,
  };
}

function entryDigest(entry: Entry): EntryDigest {
  const { number, time, taxon, uncertain, count, description } = entry;
  const key = taxon && taxonKey(taxon);
  return { number, time, taxon, key, name: nameOf(entry), uncertain, count, description };
}

function sightings(visit: Visit, entries: readonly Entry[]): Sighting[] {
  const sure = entries.filter(({ uncertain }) => !uncertain);
  const byNumber = new Map(sure.map((entry) => [entry.number, entry]));
  return totals({ ...visit, entries: sure }).flatMap(
    ({ key, count, rounded, parts, rule, ...of }) => {
      const records = of.entries
        .flatMap((number) => byNumber.get(number) ?? [])
        .filter((entry) => !isAbsence(entry))
        .sort((one, two) => one.number - two.number);
      const [first] = records;
      if (!first?.taxon) return [];
      return {
        key,
        taxon: first.taxon,
        total: { count, rounded, parts },
        rule,
        entry: first.number,
      };
    },
  );
}
