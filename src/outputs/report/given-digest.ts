import type { VisitDigest } from '../../almanac/asking/digest.ts';
import { isAbsence, taxonKey, taxonName } from '../../visit/entry.ts';
import { placeKey } from '../../visit/place.ts';
import { sumOf } from '../../visit/sums.ts';
import { dateOf, epochOf } from '../../visit/time.ts';
import type { GivenEntry } from '../given-entry.ts';
import type { GivenVisit } from '../given-visit.ts';
import { WITHHELD } from '../hiding.ts';

const MINUTE = 60_000;

/**
 * What the almanac's figures need of a visit, made of what may be given out of it and of nothing else: a
 * place that is withheld is none, and descriptions stay away.
 */
export function givenDigest(visit: GivenVisit): VisitDigest {
  const { id, start, hiding, locality, effort, entries } = visit;
  const seen = sightings(visit);
  const onRecord = new Set(seen.map(({ key }) => key));
  const none = entries.flatMap(({ taxon, ...entry }) =>
    taxon !== null && isAbsence(entry) ? taxonKey(taxon) : [],
  );
  return {
    id,
    epoch: epochOf(start),
    date: dateOf(start),
    place: hiding !== null || locality === '' ? null : { key: placeKey(locality), name: locality },
    watched: effort.minutes === null ? null : effort.minutes * MINUTE,
    distance: effort.distance,
    observers: effort.observers,
    complete: effort.complete === true,
    groups: effort.groups?.filter((group) => group !== WITHHELD) ?? null,
    description: null,
    entries: entries.map(({ number, time, taxon, uncertain, count }) => ({
      ...{ number, time, taxon, uncertain, count },
      key: taxon && taxonKey(taxon),
      name: taxon === null ? '' : taxonName(taxon),
      description: null,
    })),
    seen,
    notFound: [...new Set(none)].filter((key) => !onRecord.has(key)),
    changes: 0,
  };
}

/** The taxa on record, with what their sure counts come to, as the almanac reckons them. */
function sightings({ entries, totals }: GivenVisit): VisitDigest['seen'] {
  const rules = new Map(totals.map(({ key, rule }) => [key, rule]));
  const sure = new Map<string, GivenEntry[]>();
  for (const entry of entries) {
    if (entry.taxon === null || entry.uncertain) continue;
    const key = taxonKey(entry.taxon);
    sure.set(key, [...(sure.get(key) ?? []), entry]);
  }
  return [...sure].flatMap(([key, all]) => {
    const rule = rules.get(key) ?? 'adds up';
    const first = all.find((entry) => !isAbsence(entry));
    if (!first?.taxon) return [];
    return [{ key, taxon: first.taxon, total: sumOf(all, rule), rule, entry: first.number }];
  });
}
