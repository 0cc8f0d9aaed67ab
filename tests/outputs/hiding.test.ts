import { describe, expect, test } from 'vitest';
import type { EntryTaxon } from '../../src/visit/entry.ts';
import { updateVisit } from '../../src/visit/update.ts';
import {
  minutesIn,
  observed,
  POCHARD,
  placeOf,
  taxonOf,
  visitAt,
  withLogged,
} from '../visit/made.ts';
import { at, given, OTTER, occurrenceRows, table } from './given.ts';

describe('a place that is withheld', () => {
  test('is not so for a species of which there was none', () => {
    const visit = at(placeOf(), {}, { taxon: POCHARD, count: { kind: 'exact', value: 0 } });
    expect(given(visit).hiding).toBeNull();
    expect(table(visit).rows.at(-1)).toMatchObject({
      occurrenceStatus: 'absent',
      redListCategory: 'VU',
    });
  });

  // Levels: Chapman 2020, doi 10.15468/doc-5jp4-5g10, table 5. Which category counts as which level is
  // the project's own choice.
  test.each<[string, Partial<EntryTaxon>, string, string]>([
    ['extreme', { sensitivity: 'extreme' }, '', ''],
    ['high', { sensitivity: 'high' }, '51.1', '-2.9'],
    ['CR', { redListCategory: 'CR' }, '51.1', '-2.9'],
    ['EN', { redListCategory: 'EN', sensitivity: 'low' }, '51.1', '-2.9'],
    ['medium', { sensitivity: 'medium' }, '51.12', '-2.85'],
    ['VU', { redListCategory: 'VU' }, '51.12', '-2.85'],
    ['VU and low', { redListCategory: 'VU', sensitivity: 'low' }, '51.12', '-2.85'],
    ['low', { sensitivity: 'low' }, '51.123', '-2.854'],
  ])('for %s is so in every row of the visit', (_, over, latitude, longitude) => {
    const { rows } = table(at(placeOf(), {}, { taxon: taxonOf(over) }, { taxon: null }));
    expect(rows).toHaveLength(3);
    for (const row of rows) {
      expect(row).toMatchObject({
        locality: 'withheld',
        decimalLatitude: latitude,
        decimalLongitude: longitude,
      });
      expect(row.informationWithheld).toContain('withheld');
      expect(row.dataGeneralizations === '').toBe(latitude === '');
      expect(row.coordinateUncertaintyInMeters === '').toBe(latitude === '');
      expect(row.timeFromSun).toBe(latitude === '' ? '' : 'about 9 min after sunrise');
    }
  });

  test.each(['NT', 'LC', 'DD', 'NE', 'EX', 'EW'] as const)('is none for %s', (redListCategory) => {
    const { rows } = table(at(placeOf(), { taxon: taxonOf({ redListCategory }) }));
    expect(rows[0]).toMatchObject({ locality: 'Sallow Mere', decimalLatitude: '51.12345' });
  });

  test('is none for a threatened species where people brought it', () => {
    const rabbit = taxonOf({ redListCategory: 'EN', establishmentMeans: 'introduced' });
    expect(given(at(placeOf(), { taxon: rabbit })).hiding).toBeNull();
  });

  test('goes by the most sensitive of several species, also an uncertain one', () => {
    const { rows } = table(at(placeOf(), { taxon: POCHARD }, { taxon: OTTER, uncertain: true }));
    expect(rows.map((row) => row.decimalLatitude)).toEqual(['51.1', '51.1']);
  });

  test.each(['private', 'protected'] as const)(
    'is so on %s ground, to a hundredth of a degree, whatever was seen',
    (protection) => {
      const [row] = table(at(placeOf({ protection }), {})).rows;
      expect(row).toMatchObject({ locality: 'withheld', decimalLatitude: '51.12' });
      expect(row?.informationWithheld).toContain(`the place is ${protection}`);
      const [coarser] = table(at(placeOf({ protection }), { taxon: OTTER })).rows;
      expect(coarser?.decimalLatitude).toBe('51.1');
    },
  );

  test('stays withheld without coordinates', () => {
    const [row] = table(at(placeOf({ position: null }), { taxon: OTTER })).rows;
    expect(row).toMatchObject({
      locality: 'withheld',
      decimalLatitude: '',
      dataGeneralizations: '',
    });
  });

  test('takes every word that was written by hand with it, and says so', () => {
    const seen = { words: 'mallards by the sluice', description: 'asleep' };
    const visit = {
      ...at(placeOf({ habitat: 'reedbed' }), { taxon: OTTER, ...seen }, seen),
      description: 'a walk',
    };
    for (const row of table(visit).rows)
      expect(row).toMatchObject({
        verbatimIdentification: 'withheld',
        occurrenceRemarks: 'withheld',
        habitat: 'withheld',
        visitDescription: 'withheld',
        informationWithheld: expect.stringContaining('notes withheld'),
      });
  });

  test('is withheld on a sensitive species also where the visit has no place', () => {
    const visit = withLogged(visitAt(null), { taxon: OTTER, description: 'holt at Sallow Mere' });
    expect(table(visit).rows[0]).toMatchObject({ occurrenceRemarks: 'withheld', locality: '' });
    expect(table(visit).csv).not.toContain('Sallow');
  });

  test('is written in full where exact places were asked for', () => {
    const seen = { taxon: OTTER, words: 'otter at Sallow Mere', description: 'holt by the sluice' };
    expect(table(at(placeOf(), seen), true).rows[0]).toMatchObject({
      locality: 'Sallow Mere',
      decimalLatitude: '51.12345',
      verbatimIdentification: 'otter at Sallow Mere',
      occurrenceRemarks: 'holt by the sluice',
      informationWithheld: '',
    });
  });
});

describe('an earlier name of an entry', () => {
  function renamed(from: EntryTaxon, to: EntryTaxon) {
    const logged = at(placeOf(), { taxon: from });
    const observation = observed({ taxon: to });
    return updateVisit(logged, { do: 'amend', number: 1, time: minutesIn(5), observation });
  }

  test('stands in previousIdentifications', () => {
    const [row] = occurrenceRows(renamed(taxonOf({ scientificName: 'Anas crecca' }), taxonOf()));
    expect(row?.previousIdentifications).toBe('Anas crecca');
  });

  test('is none where it was taken back', () => {
    const visit = updateVisit(renamed(taxonOf({ scientificName: 'Anas crecca' }), taxonOf()), {
      do: 'undo',
      time: minutesIn(6),
    });
    const [row] = occurrenceRows(visit);
    expect(row).toMatchObject({ scientificName: 'Anas crecca', previousIdentifications: '' });
  });

  test('is withheld where it is that of a sensitive species beside an exact place', () => {
    const visit = renamed(OTTER, taxonOf());
    const [row] = occurrenceRows(visit);
    expect(row).toMatchObject({
      locality: 'Sallow Mere',
      previousIdentifications: '',
      informationWithheld: 'an earlier identification is withheld',
    });
    expect(occurrenceRows(visit, true)[0]?.previousIdentifications).toBe('Lutra lutra');
  });
});
