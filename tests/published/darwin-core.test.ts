import { describe, expect, test } from 'vitest';
import { ENTRY_COLUMNS } from '../../src/outputs/entries-table.ts';
import { EFFORT_COLUMNS, WEATHER_COLUMNS } from '../../src/outputs/visit-columns.ts';
import { TaxonRow } from '../../src/taxa/taxon.ts';
import { table } from '../outputs/given.ts';
import { placeOf, visitAt, withLogged } from '../visit/made.ts';

// TDWG, Darwin Core List of Terms, http://rs.tdwg.org/dwc/doc/list/ (2026-05-26): the current terms that
// the table uses.
const TERMS = [
  ...[
    'eventID',
    'eventDate',
    'eventTime',
    'habitat',
    'samplingProtocol',
    'locality',
    'decimalLatitude',
    'decimalLongitude',
  ],
  ...['coordinateUncertaintyInMeters', 'vernacularName', 'scientificName', 'taxonRank'],
  ...[
    'verbatimIdentification',
    'identificationQualifier',
    'individualCount',
    'occurrenceStatus',
    'sex',
    'lifeStage',
  ],
  ...['occurrenceRemarks', 'informationWithheld', 'dataGeneralizations'],
];
/** Columns of our own, for which Darwin Core has no term. */
const OWN = [
  ...['entryNumber', 'timeFromSun', 'count', 'heading', 'redListCategory', 'threatened', 'first'],
  ...WEATHER_COLUMNS.map(({ name }) => name),
  ...EFFORT_COLUMNS.map(({ name }) => name).filter((name) => name !== 'samplingProtocol'),
];

function rowOf(...given: Parameters<typeof withLogged>): Record<string, string> {
  return table(withLogged(...given)).rows[0] ?? {};
}

describe('the columns of the table of entries', () => {
  test('are current Darwin Core terms, or columns of our own', () => {
    expect(ENTRY_COLUMNS.map(({ name }) => name).sort()).toEqual([...TERMS, ...OWN].sort());
  });

  test('species lists use the terms for what they have in common', () => {
    const terms = [
      'scientificName',
      'vernacularName',
      'taxonRank',
      'kingdom',
      'class',
      'order',
      'family',
    ];
    expect(Object.keys(TaxonRow.shape)).toEqual(
      expect.arrayContaining([...terms, 'establishmentMeans']),
    );
  });
});

describe('the cells of the table of entries, by the comments on the terms', () => {
  const parts = [
    { letter: 'm' as const, value: 3 },
    { letter: 'f' as const, value: 2 },
    { letter: 'j' as const, value: 4 },
  ];

  test('dates and times are those of ISO 8601-1, with the offset', () => {
    const row = rowOf(visitAt(), {});
    expect(row.eventDate).toBe('2026-11-14');
    expect(row.eventTime).toMatch(/^\d\d:\d\d[+-]\d\d:\d\d$/);
  });

  test('occurrenceStatus is absent where none were counted, and present else', () => {
    expect(rowOf(visitAt(), { count: { kind: 'exact', value: 0 } }).occurrenceStatus).toBe(
      'absent',
    );
    expect(rowOf(visitAt(), { count: { kind: 'present' } }).occurrenceStatus).toBe('present');
  });

  test('individualCount is a whole number, and empty where no exact count was made', () => {
    expect(rowOf(visitAt(), { count: { kind: 'exact', value: 0 } }).individualCount).toBe('0');
    expect(rowOf(visitAt(), { count: { kind: 'at least', value: 12 } }).individualCount).toBe('');
    expect(rowOf(visitAt(), { count: { kind: 'present' } }).individualCount).toBe('');
  });

  test('lists are separated by a bar with a space on either side', () => {
    const row = rowOf(visitAt(), { parts });
    expect(row.sex).toBe('3 male | 2 female');
    expect(row.lifeStage).toBe('4 juvenile');
  });

  test('the doubt stands in identificationQualifier and never in scientificName', () => {
    const row = rowOf(visitAt(), { uncertain: true });
    expect(row).toMatchObject({
      identificationQualifier: '?',
      scientificName: 'Anas platyrhynchos',
    });
  });

  test('coordinateUncertaintyInMeters is empty where unknown, since zero is no valid value', () => {
    expect(rowOf(visitAt(), {}).coordinateUncertaintyInMeters).toBe('');
    expect(rowOf(visitAt(placeOf({ position: null })), {}).coordinateUncertaintyInMeters).toBe('');
  });
});
