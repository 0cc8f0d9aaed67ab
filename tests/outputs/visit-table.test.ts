import { describe, expect, test } from 'vitest';
import type { Count } from '../../src/visit/count.ts';
import { updateVisit } from '../../src/visit/update.ts';
import { minutesIn, POCHARD, placeOf } from '../visit/made.ts';
import { at, table } from './table.ts';

describe('a row of the visit table', () => {
  test('says all that was seen', () => {
    const visit = at(placeOf(), {
      words: 'mall',
      count: { kind: 'exact', value: 5 },
      parts: [
        { letter: 'm', value: 3 },
        { letter: 'a', value: 1 },
      ],
      uncertain: true,
      description: 'asleep by the raft',
    });
    expect(table(visit).rows).toEqual([
      {
        entryNumber: '1',
        eventDate: '2026-11-14',
        eventTime: '07:41+00:00',
        locality: 'Sallow Mere',
        decimalLatitude: '51.12345',
        decimalLongitude: '-2.85432',
        coordinateUncertaintyInMeters: '',
        vernacularName: 'Mallard',
        scientificName: 'Anas platyrhynchos',
        taxonRank: 'species',
        verbatimIdentification: 'mall',
        identificationQualifier: '?',
        count: '5',
        individualCount: '5',
        occurrenceStatus: 'present',
        sex: '3 male',
        lifeStage: '1 adult',
        redListCategory: 'LC',
        threatened: '',
        first: '',
        occurrenceRemarks: 'asleep by the raft',
        informationWithheld: '',
        dataGeneralizations: '',
      },
    ]);
  });

  test.each<[Count, string, string]>([
    [{ kind: 'exact', value: 0 }, '0', '0'],
    [{ kind: 'at least', value: 12 }, 'at least 12', ''],
    [{ kind: 'about', value: 12 }, 'about 12', ''],
    [{ kind: 'range', low: 10, high: 15 }, '10 to 15', ''],
    [{ kind: 'present' }, 'present', ''],
  ])(
    'has the count %j in words that no spreadsheet takes for a date',
    (count, words, individuals) => {
      const [row] = table(at(placeOf(), { count })).rows;
      expect([row?.count, row?.individualCount]).toEqual([words, individuals]);
    },
  );

  test('of an unnamed entry has the words of the observer and no name or category', () => {
    const [row] = table(at(placeOf(), { taxon: null, words: 'small brown' })).rows;
    expect(row).toMatchObject({
      verbatimIdentification: 'small brown',
      vernacularName: '',
      scientificName: '',
      redListCategory: '',
      threatened: '',
    });
  });

  test('says in a word what is threatened and what is a first', () => {
    const rows = table(at(placeOf(), { taxon: POCHARD }, {}, {})).rows;
    expect(rows.map((row) => [row.redListCategory, row.threatened, row.first])).toEqual([
      ['VU', 'threatened', 'first'],
      ['LC', '', 'first'],
      ['LC', '', ''],
    ]);
  });

  test('is left out for a struck entry, whose number nobody else gets', () => {
    const logged = at(placeOf(), {}, { taxon: POCHARD, description: 'secret' }, {});
    const visit = updateVisit(logged, { do: 'strike', number: 2, time: minutesIn(9) });
    const { rows, csv, hidden } = table(visit);
    expect(rows.map((row) => row.entryNumber)).toEqual(['1', '3']);
    expect(hidden).toBe(0);
    expect(csv).not.toMatch(/Pochard|secret/);
    expect(rows[0]?.locality).toBe('Sallow Mere');
  });
});
