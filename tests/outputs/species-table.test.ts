import { describe, expect, test } from 'vitest';
import { csvRows, USUAL_FORM } from '../../src/outputs/csv-rows.ts';
import { matrixOf } from '../../src/outputs/matrix-table.ts';
import { SPECIES_COLUMNS, speciesRows } from '../../src/outputs/species-table.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { idOf, MALLARD, POCHARD, placeOf, taxonOf } from '../visit/made.ts';
import { at, FACTS, given, OTTER, readRows } from './given.ts';

const TEAL = taxonOf({ scientificName: 'Anas crecca', vernacularName: 'Teal' });

function speciesTable(visit: Visit) {
  const head = SPECIES_COLUMNS.map(({ name }) => name);
  return readRows(csvRows([head, ...speciesRows(given(visit), FACTS)], USUAL_FORM));
}

describe('the table of species', () => {
  test('has a row a taxon in the order of the lists, those of no list behind', () => {
    const rows = speciesTable(at(placeOf(), { taxon: TEAL }, {}, { taxon: POCHARD }, {}));
    expect(rows.map((row) => row.vernacularName)).toEqual(['Pochard', 'Mallard', 'Teal']);
  });

  test('adds up different individuals and says by which rule', () => {
    const visit = at(
      placeOf(),
      { count: { kind: 'exact', value: 3 }, parts: [{ letter: 'm', value: 2 }] },
      { count: { kind: 'about', value: 20 }, uncertain: true },
    );
    expect(speciesTable(visit)[0]).toMatchObject({
      count: 'about 23',
      individualCount: '',
      summedBy: 'adds up',
      uncertain: '?',
      sex: '2 male',
      entries: '2',
    });
  });

  test('takes the highest count where the visit says that the same birds were seen again', () => {
    const counts = [3, 8, 5].map((value) => ({ count: { kind: 'exact' as const, value } }));
    const visit = { ...at(placeOf(), ...counts), highest: [MALLARD.scientificName] };
    expect(speciesTable(visit)[0]).toMatchObject({
      individualCount: '8',
      summedBy: 'highest',
    });
  });

  test('of some counted and some only seen says at least, and of none absent', () => {
    const present = at(placeOf(), { count: { kind: 'present' } }, {});
    expect(speciesTable(present)[0]).toMatchObject({ count: 'at least 3', individualCount: '' });
    const none = at(placeOf(), { count: { kind: 'exact', value: 0 } });
    expect(speciesTable(none)[0]).toMatchObject({ count: '0', occurrenceStatus: 'absent' });
  });
});

describe('the matrix of taxa by visits', () => {
  test('has a column a visit, a row a taxon, and an empty cell where a visit has none', () => {
    const matrix = matrixOf(FACTS);
    const second = { ...at(placeOf({ name: 'Withy Lane' }), {}), id: idOf(2) };
    matrix.add(given(at(placeOf(), { taxon: TEAL, uncertain: true })));
    matrix.add(given({ ...second, start: '2026-11-15T08:00:00+00:00' }));
    expect(matrix.rows()).toEqual([
      [
        'vernacularName',
        'scientificName',
        '2026-11-14 07:40 Sallow Mere',
        '2026-11-15 08:00 Withy Lane',
      ],
      ['Mallard', 'Anas platyrhynchos', '', 3],
      ['Teal', 'Anas crecca', '3 ?', ''],
    ]);
  });

  test('names no place that is hidden', () => {
    const matrix = matrixOf(FACTS);
    matrix.add(given(at(placeOf(), { taxon: OTTER })));
    expect(matrix.rows()[0]?.at(-1)).toBe('2026-11-14 07:40 withheld');
  });
});
