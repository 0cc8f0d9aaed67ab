import fc from 'fast-check';
import { almanacOf, visitsIn } from '../../src/almanac/asking/almanac.ts';
import { groupsFrom } from '../../src/almanac/asking/complete.ts';
import type { VisitDigest } from '../../src/almanac/asking/digest.ts';
import type { Abundances } from '../../src/almanac/figures/abundance.ts';
import type { Count } from '../../src/visit/count.ts';
import type { EntryTaxon, Observation } from '../../src/visit/entry.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { placeOf, taxonOf, visitAt, withLogged } from '../visit/made.ts';

/** Parts for tests of the almanac; places are invented, species and their categories are real. */

const MERE = placeOf();
export const DROVE = placeOf({ name: 'Withy Drove', position: null });

function species(
  scientificName: string,
  vernacularName: string,
  over: Partial<EntryTaxon> = {},
): EntryTaxon {
  return taxonOf({ scientificName, vernacularName, list: 'ashwick-birds', ...over });
}

export const MALLARD = species('Anas platyrhynchos', 'Mallard');
export const POCHARD = species('Aythya ferina', 'Pochard', { redListCategory: 'VU' });
export const COMMON_TERN = species('Sterna hirundo', 'Common Tern');
export const ARCTIC_TERN = species('Sterna paradisaea', 'Arctic Tern');
export const BRIMSTONE = species('Gonepteryx rhamni', 'Brimstone', { list: 'ashwick-butterflies' });
export const GULL = species('Larus', 'gull', {
  taxonRank: 'genus',
  identificationQualifier: 'sp.',
  redListCategory: 'NE',
});
const TAXA = [MALLARD, POCHARD, COMMON_TERN, ARCTIC_TERN, BRIMSTONE, GULL];

export const groupOf = groupsFrom({
  'ashwick-birds': 'birds',
  'ashwick-butterflies': 'butterflies',
});

export const exactly = (value: number): Count => ({ kind: 'exact', value });
export const PRESENT: Count = { kind: 'present' };

let made = 0;

interface Outing {
  place?: Visit['place'];
  /** Hours until its end; null for a visit that goes on. */
  hours?: number | null;
  complete?: boolean | null;
  groups?: string[] | null;
  distance?: number | null;
  description?: string;
  highest?: string[];
  id?: number;
}

/** A visit from eight o'clock on a date; complete for all, two hours at Sallow Mere if not told. */
export function outing(
  date: string,
  seen: readonly (Partial<Observation> | [EntryTaxon, number | Count])[],
  over: Outing = {},
): Visit {
  const { hours = 2, complete = true, groups = null, distance = null } = over;
  made += 1;
  const place = over.place === undefined ? MERE : over.place;
  const visit = visitAt(place, `${date}T08:00:00+00:00`, over.id ?? made);
  const ended = {
    ...visit,
    end: hours === null ? null : `${date}T${String(8 + hours).padStart(2, '0')}:00:00+00:00`,
    description: over.description ?? null,
    highest: over.highest ?? [],
    effort: { ...visit.effort, complete, groups, distance },
  };
  const observations = seen.map((each): Partial<Observation> => {
    if (!Array.isArray(each)) return each;
    const [taxon, count] = each;
    return { taxon, count: typeof count === 'number' ? exactly(count) : count };
  });
  return withLogged(ended, ...observations);
}

/** Visits as the almanac has them, in the order of time. */
export function digests(...visits: Visit[]): VisitDigest[] {
  return visitsIn(almanacOf(visits));
}

/** Species of these numbers. */
export function abundances(...numbers: (number | null)[]): Abundances {
  return {
    species: numbers.map((number, at) => ({ key: `${at}`, name: `species ${at}`, number })),
    notes: [],
  };
}

/** The days from 1 January 2025 on, in months of 28 days. */
export function dayFrom(at: number): string {
  const two = (number: number) => String(number).padStart(2, '0');
  return `2025-${two(Math.floor(at / 28) + 1)}-${two((at % 28) + 1)}`;
}

const counts: fc.Arbitrary<Count> = fc.oneof(
  fc.nat(40).map(exactly),
  fc.nat(40).map((value): Count => ({ kind: 'about', value })),
  fc.nat(40).map((value): Count => ({ kind: 'at least', value })),
  fc.nat(9).map((low): Count => ({ kind: 'range', low, high: low + 5 })),
  fc.constant(PRESENT),
);

const observation: fc.Arbitrary<Partial<Observation>> = fc.record({
  taxon: fc.oneof({ weight: 6, arbitrary: fc.constantFrom(...TAXA) }, fc.constant(null)),
  words: fc.constantFrom('brown thing', 'grass'),
  count: counts,
  uncertain: fc.oneof({ weight: 5, arbitrary: fc.constant(false) }, fc.constant(true)),
  description: fc.constantFrom(null, 'asleep by the raft'),
});

/** A notebook of a few visits, each with an id of its own from `ids` on. */
export function notebooks(ids: number, least = 0): fc.Arbitrary<Visit[]> {
  const date = fc
    .tuple(
      fc.integer({ min: 2022, max: 2025 }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 28 }),
    )
    .map(([year, ...rest]) =>
      [year, ...rest.map((part) => String(part).padStart(2, '0'))].join('-'),
    );
  const one = fc.record({
    date,
    seen: fc.array(observation, { maxLength: 5 }),
    place: fc.constantFrom(MERE, DROVE, null),
    complete: fc.constantFrom<boolean | null>(true, false, null),
    groups: fc.constantFrom<string[] | null>(null, ['birds'], ['Butterflies']),
    highest: fc.constantFrom<string[]>([], ['Anas platyrhynchos']),
  });
  return fc
    .array(one, { minLength: least, maxLength: 8 })
    .map((all) =>
      all.map(({ date: on, seen, ...rest }, at) => outing(on, seen, { ...rest, id: ids + at })),
    );
}
