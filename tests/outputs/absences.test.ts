import { describe, expect, test } from 'vitest';
import {
  absenceOccurrences,
  absentFrom,
  meetSpecies,
  type SpeciesMet,
} from '../../src/outputs/absences.ts';
import type { Observation } from '../../src/visit/entry.ts';
import { MALLARD, minutesIn, POCHARD, placeOf, taxonOf } from '../visit/made.ts';
import { ABOUT, at, FACTS, given, OTTER } from './given.ts';

const met: SpeciesMet = new Map();
meetSpecies(met, given(at(placeOf(), {}, { taxon: POCHARD }, { taxon: OTTER })));

function complete(groups: string[] | null, ...seen: Partial<Observation>[]) {
  const visit = at(placeOf(), ...seen);
  return given({ ...visit, effort: { ...visit.effort, complete: true, groups } });
}

function absent(groups: string[] | null, ...seen: Partial<Observation>[]): string[] {
  return absentFrom(complete(groups, ...seen), met, FACTS).map((taxon) => taxon.scientificName);
}

const genus = (scientificName: string) =>
  taxonOf({ scientificName, taxonRank: 'genus', identificationQualifier: 'sp.' });

describe('a species is absent from a visit', () => {
  test('that is complete for its group and does not have it', () => {
    expect(absent(['Birds'], { taxon: MALLARD })).toEqual(['Aythya ferina']);
    expect(absent(['birds', 'mammals'], {})).toEqual(['Aythya ferina', 'Lutra lutra']);
  });

  test('but not from one that is not said to be complete, or not for which groups', () => {
    const visit = at(placeOf(), {});
    expect(absentFrom(given(visit), met, FACTS)).toEqual([]);
    const partial = { ...visit, effort: { ...visit.effort, complete: false, groups: ['birds'] } };
    expect(absentFrom(given(partial), met, FACTS)).toEqual([]);
    expect(absent(null, {})).toEqual([]);
  });

  test.each<[string, Partial<Observation>]>([
    ['of it, if not for certain', { taxon: POCHARD, uncertain: true }],
    ['that has no name', { taxon: null }],
    ['of its genus', { taxon: genus('Aythya') }],
    ['of its family', { taxon: { ...genus('Anatidae'), taxonRank: 'family' } }],
    ['of a subspecies of it', { taxon: taxonOf({ scientificName: 'Aythya ferina ferina' }) }],
    [
      'that says itself that there was none',
      { taxon: POCHARD, count: { kind: 'exact', value: 0 } },
    ],
  ])('and not where the visit has an entry %s', (_, entry) => {
    expect(absent(['birds'], {}, entry)).toEqual([]);
  });

  test('also where another genus was not named further', () => {
    expect(absent(['birds'], {}, { taxon: genus('Larus') })).toEqual(['Aythya ferina']);
  });

  test('with an identifier that is the same in every export', () => {
    const visit = { ...complete(['birds'], {}), end: minutesIn(60) };
    const [row] = absenceOccurrences(visit, absentFrom(visit, met, FACTS), ABOUT);
    expect(row).toMatchObject({
      occurrenceID: `urn:uuid:${visit.id}#absent-Aythya%20ferina`,
      individualCount: 0,
      occurrenceStatus: 'absent',
      eventDate: '2026-11-14T07:40:00+00:00/2026-11-14T08:40:00+00:00',
    });
  });
});
