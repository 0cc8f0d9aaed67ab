import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COLUMNS } from '../../src/outputs/visit-table.ts';
import type { EntryTaxon } from '../../src/visit/entry.ts';
import { MALLARD, POCHARD, placeOf, taxonOf, visitAt, withLogged } from '../visit/made.ts';
import { at, table } from './table.ts';

const OTTER = taxonOf({
  scientificName: 'Lutra lutra',
  vernacularName: 'Otter',
  sensitivity: 'high',
});

describe('a place that is withheld', () => {
  test('is not so for a species of which there was none', () => {
    const none = { taxon: POCHARD, count: { kind: 'exact' as const, value: 0 } };
    const { rows, hidden } = table(at(placeOf(), {}, none));
    expect(hidden).toBe(0);
    expect(rows.at(-1)).toMatchObject({ occurrenceStatus: 'absent', redListCategory: 'VU' });
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
    const { rows, hidden } = table(at(placeOf(), {}, { taxon: taxonOf(over) }, { taxon: null }));
    expect(hidden).toBe(1);
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
    }
  });

  test.each(['NT', 'LC', 'DD', 'NE', 'EX', 'EW'] as const)('is none for %s', (redListCategory) => {
    const { rows, hidden } = table(at(placeOf(), { taxon: taxonOf({ redListCategory }) }));
    expect(hidden).toBe(0);
    expect(rows[0]).toMatchObject({ locality: 'Sallow Mere', decimalLatitude: '51.12345' });
  });

  test('goes by the most sensitive of several species, also an uncertain one', () => {
    const { rows } = table(at(placeOf(), { taxon: POCHARD }, { taxon: OTTER, uncertain: true }));
    expect(rows.map((row) => row.decimalLatitude)).toEqual(['51.1', '51.1']);
  });

  test('stays withheld without coordinates', () => {
    const [row] = table(at(placeOf({ position: null }), { taxon: OTTER })).rows;
    expect(row).toMatchObject({
      locality: 'withheld',
      decimalLatitude: '',
      dataGeneralizations: '',
    });
  });

  test('is written in full where exact places were asked for', () => {
    const seen = { taxon: OTTER, words: 'otter at Sallow Mere', description: 'holt by the sluice' };
    const { rows, hidden } = table(at(placeOf(), seen), true);
    expect(hidden).toBe(0);
    expect(rows[0]).toMatchObject({
      locality: 'Sallow Mere',
      decimalLatitude: '51.12345',
      verbatimIdentification: 'otter at Sallow Mere',
      occurrenceRemarks: 'holt by the sluice',
      informationWithheld: '',
    });
  });
});

describe('the words of the observer, where a place is withheld', () => {
  test('are withheld on the sensitive species, with a word in their place, and stay on others', () => {
    const { rows } = table(
      at(
        placeOf(),
        { taxon: OTTER, description: 'holt under the ash' },
        { description: 'asleep' },
        { taxon: OTTER },
      ),
    );
    expect(rows.map((row) => row.occurrenceRemarks)).toEqual(['withheld', 'asleep', '']);
    expect(rows[0]?.informationWithheld).toContain('remarks withheld');
    expect(rows[1]?.informationWithheld).not.toContain('remarks');
  });

  test('are withheld on a sensitive species also where the visit has no place', () => {
    const visit = withLogged(visitAt(null), { taxon: OTTER, description: 'holt at Sallow Mere' });
    expect(table(visit).rows[0]).toMatchObject({ occurrenceRemarks: 'withheld', locality: '' });
    expect(table(visit).csv).not.toContain('Sallow');
  });

  test.each([
    'mallards on Sallow Mere',
    'SALLOW-MERE, east side',
    'sallowmere',
    'Sällow  Mere',
    'flew to 51.12345 -2.85432',
    'at 51.123',
    'near 51,1234 N',
  ])('are withheld on any species where they tell the place: %j', (telling) => {
    const { rows, csv } = table(
      at(placeOf(), { taxon: OTTER }, { description: telling }, { taxon: null, words: telling }),
    );
    expect(rows[1]?.occurrenceRemarks).toBe('withheld');
    expect(rows[2]?.verbatimIdentification).toBe('withheld');
    expect(rows[2]?.informationWithheld).toContain('it tells the place');
    expect(csv).not.toContain(telling);
  });

  test.each(['3 m up in a sallow', 'the mere was still', 'wing 9.4 cm', 'call "sal-low"'])(
    'stay where they do not: %j',
    (harmless) => {
      const { rows } = table(at(placeOf(), { taxon: OTTER }, { description: harmless }));
      expect(rows[1]?.occurrenceRemarks).toBe(harmless);
    },
  );

  test('no cell tells the place, whatever was written and wherever it stands', () => {
    const { position } = placeOf();
    const telling = [
      'Sallow Mere',
      '51.12345',
      '2.85432',
      'by the raft',
      'asleep',
      ', ',
      '=',
      '\n',
      '"',
    ];
    const text = fc
      .array(fc.constantFrom(...telling), { maxLength: 4 })
      .map((all) => all.join(' '));
    const seen = fc.record({
      taxon: fc.constantFrom(MALLARD, POCHARD, OTTER, null),
      words: text,
      description: fc.option(text, { nil: null }),
    });
    fc.assert(
      fc.property(fc.array(seen, { maxLength: 4 }), (others) => {
        const { csv, rows } = table(
          at(placeOf({ position }), { taxon: OTTER, description: 'Sallow Mere' }, ...others),
        );
        expect(csv).not.toMatch(/Sallow|51\.12|2\.85/);
        expect(rows).toHaveLength(others.length + 1);
        for (const row of rows) expect(Object.keys(row)).toEqual(COLUMNS);
      }),
    );
  });
});
