import { describe, expect, test } from 'vitest';
import { ENTRY_COLUMNS } from '../../src/outputs/entries-table.ts';
import type { Count } from '../../src/visit/count.ts';
import { updateVisit } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import type { Weather } from '../../src/visit/weather.ts';
import { minutesIn, POCHARD, placeOf } from '../visit/made.ts';
import { at, table } from './given.ts';

const READING: Weather = {
  time: minutesIn(0),
  ...{ verbatim: '7c f3 sw 6/8', temperature: 7, windForce: 3, windSpeed: 4.2, windFrom: 'SW' },
  ...{ cloud: 6, precipitation: null, visibility: 'good', remarks: 'after frost' },
};

describe('a row of the table of entries', () => {
  test('says all that was seen', () => {
    const logged = at(placeOf({ habitat: 'reedbed', uncertainty: 50 }), {
      words: 'mall',
      count: { kind: 'exact', value: 5 },
      parts: [
        { letter: 'm', value: 3 },
        { letter: 'a', value: 1 },
      ],
      uncertain: true,
      description: 'asleep by the raft',
      heading: 'SW',
    });
    const visit: Visit = {
      ...logged,
      end: minutesIn(95),
      description: 'a cold morning',
      weather: [READING],
      effort: {
        ...logged.effort,
        ...{ distance: 3200, observers: 2, method: 'line transect', complete: true },
        groups: ['birds', 'mammals'],
        pauses: [{ start: minutesIn(10), end: minutesIn(15) }],
      },
    };
    expect(table(visit).rows).toEqual([
      {
        entryNumber: '1',
        eventID: `urn:uuid:${visit.id}`,
        eventDate: '2026-11-14',
        eventTime: '07:41+00:00',
        timeFromSun: '9 min after sunrise',
        locality: 'Sallow Mere',
        habitat: 'reedbed',
        decimalLatitude: '51.12345',
        decimalLongitude: '-2.85432',
        coordinateUncertaintyInMeters: '50',
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
        heading: 'SW',
        redListCategory: 'LC',
        threatened: '',
        first: '',
        occurrenceRemarks: 'asleep by the raft',
        temperature: '7',
        windForce: '3',
        windSpeed: '4.2',
        windFrom: 'SW',
        cloud: '6',
        precipitation: '',
        visibility: 'good',
        weatherRemarks: 'after frost',
        visitStart: '2026-11-14T07:40:00+00:00',
        visitEnd: '2026-11-14T09:15:00+00:00',
        minutes: '90',
        distance: '3200',
        observers: '2',
        samplingProtocol: 'line transect',
        complete: 'yes',
        completeFor: 'birds | mammals',
        visitDescription: 'a cold morning',
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
    const { rows } = table(at(placeOf(), { taxon: POCHARD }, {}, {}));
    expect(rows.map((row) => [row.redListCategory, row.threatened, row.first])).toEqual([
      ['VU', 'threatened', 'first'],
      ['LC', '', 'first'],
      ['LC', '', ''],
    ]);
  });

  test('is left out for a struck entry, whose number nobody else gets', () => {
    const logged = at(placeOf(), {}, { taxon: POCHARD, description: 'secret' }, {});
    const visit = updateVisit(logged, { do: 'strike', number: 2, time: minutesIn(9) });
    const { rows, csv } = table(visit);
    expect(rows.map((row) => row.entryNumber)).toEqual(['1', '3']);
    expect(csv).not.toMatch(/Pochard|secret/);
    expect(rows[0]?.locality).toBe('Sallow Mere');
  });

  test('has the weather of the last reading before it, else of the first', () => {
    const readings = [2, 4].map((minute, at) => ({
      ...READING,
      time: minutesIn(minute),
      temperature: 5 + at,
    }));
    const visit = { ...at(placeOf(), {}, {}, {}, {}, {}), weather: readings };
    expect(table(visit).rows.map((row) => row.temperature)).toEqual(['5', '5', '5', '6', '6']);
  });

  test('has an entry where its own position is, with an uncertainty that nobody knows', () => {
    const own = { latitude: 51.2, longitude: -2.7 };
    const [row] = table(at(placeOf({ uncertainty: 40 }), { position: own })).rows;
    expect(row).toMatchObject({
      decimalLatitude: '51.2',
      decimalLongitude: '-2.7',
      coordinateUncertaintyInMeters: '',
    });
  });

  test('can be written with semicolons and decimal commas, for spreadsheets that read so', () => {
    const form = { separator: ';', decimal: ',', apostrophes: true } as const;
    const { csv, rows } = table(at(placeOf(), { description: 'a; b, c' }), false, form);
    expect(rows[0]).toMatchObject({ decimalLongitude: '-2,85432', occurrenceRemarks: 'a; b, c' });
    expect(csv.split('\r\n')[0]?.split(';')).toHaveLength(ENTRY_COLUMNS.length);
  });
});

test('every column has a name of its own and a sentence', () => {
  const names = ENTRY_COLUMNS.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const { sentence } of ENTRY_COLUMNS) expect(sentence).toMatch(/\.$/);
});
