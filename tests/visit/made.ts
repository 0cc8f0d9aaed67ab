import type { Entry, EntryTaxon, Observation } from '../../src/visit/entry.ts';
import type { Place } from '../../src/visit/place.ts';
import { updateVisit } from '../../src/visit/update.ts';
import { newVisit, type Visit } from '../../src/visit/visit.ts';

/** Parts for tests; places and people are invented, species and their categories are real. */

export const START = '2026-11-14T07:40:00+00:00';

/** A stamp so many minutes after `START`, within its hours. */
export function minutesIn(minutes: number): string {
  const ofDay = 7 * 60 + 40 + minutes;
  const two = (number: number) => String(number).padStart(2, '0');
  return `2026-11-14T${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}:00+00:00`;
}

/** A made-up UUID that ends in a number. */
export function idOf(number: number): string {
  return `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;
}

export function placeOf(over: Partial<Place> = {}): Place {
  return {
    name: 'Sallow Mere',
    position: { latitude: 51.12345, longitude: -2.85432 },
    verbatimCoordinates: '51.12345, -2.85432',
    uncertainty: null,
    habitat: null,
    protection: null,
    timeZone: 'Europe/London',
    ...over,
  };
}

export function visitAt(place: Place | null = placeOf(), start = START, id = 1): Visit {
  return newVisit({ id: idOf(id), timeZone: 'Europe/London', start, place });
}

export function taxonOf(over: Partial<EntryTaxon> = {}): EntryTaxon {
  return {
    scientificName: 'Anas platyrhynchos',
    identificationQualifier: null,
    vernacularName: 'Mallard',
    taxonRank: 'species',
    establishmentMeans: 'native',
    redListCategory: 'LC',
    redListSource: 'IUCN',
    sensitivity: null,
    list: 'birds',
    ...over,
  };
}

export const MALLARD = taxonOf();
/** Vulnerable, without special care of its own in the list. */
export const POCHARD = taxonOf({
  scientificName: 'Aythya ferina',
  vernacularName: 'Pochard',
  redListCategory: 'VU',
});

export function observed(over: Partial<Observation> = {}): Observation {
  return {
    typed: 'mallard 3',
    taxon: MALLARD,
    words: 'mallard',
    uncertain: false,
    count: { kind: 'exact', value: 3 },
    parts: [],
    description: null,
    position: null,
    heading: null,
    ...over,
  };
}

/** The visit with the observations logged, a minute apart. */
export function withLogged(visit: Visit, ...observations: Partial<Observation>[]): Visit {
  return observations.reduce<Visit>((so, over) => {
    const number = so.entries.length + 1;
    const time = minutesIn(number);
    return updateVisit(so, {
      do: 'log',
      time,
      id: idOf(100 + number),
      observation: observed(over),
    });
  }, visit);
}

export function entryOf(visit: Visit, number: number): Entry {
  const entry = visit.entries.find((each) => each.number === number);
  if (!entry) throw new Error(`no entry ${number}`);
  return entry;
}
