import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Cell, csvRows, type TableForm } from '../../src/outputs/csv-rows.ts';
import { ENTRY_COLUMNS } from '../../src/outputs/entries-table.ts';
import type { Observation } from '../../src/visit/entry.ts';
import { at, table } from '../outputs/given.ts';
import { placeOf } from '../visit/made.ts';

const COLUMNS = ENTRY_COLUMNS.map(({ name }) => name);

function tableOf(observations: Partial<Observation>[], place = placeOf()): string {
  return table(at(place, ...observations)).csv;
}

/** Read by another library's reader, strictly: one record delimiter, the same field count everywhere. */
function rowsOf(csv: string): Record<string, string>[] {
  return parse(csv, { columns: true, record_delimiter: '\r\n' });
}

// RFC 4180 (2005), section 2, as a grammar; TEXTDATA taken to mean all but comma, quote, CR and LF.
const RECORD = /(?:"(?:[^"]|"")*"|[^",\r\n]*)(?:,(?:"(?:[^"]|"")*"|[^",\r\n]*))*\r\n/y;
function isRfc4180(csv: string): boolean {
  RECORD.lastIndex = 0;
  for (let at = 0; at < csv.length; at = RECORD.lastIndex) if (!RECORD.test(csv)) return false;
  return true;
}

/** OWASP, CSV injection: cells that start so get an apostrophe; with the full-width forms of the signs. */
const FORMULA = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
const safe = (text: string) => (FORMULA.test(text) ? `'${text}` : text);

describe('the table of entries, by RFC 4180', () => {
  test('has the header and one record an entry, each ended by CRLF', () => {
    const csv = tableOf([{}, {}]);
    expect(csv.split('\r\n')).toHaveLength(4);
    expect(csv.split('\r\n')[0]).toBe(COLUMNS.join(','));
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('of a visit without entries is the header alone', () => {
    expect(tableOf([])).toBe(`${COLUMNS.join(',')}\r\n`);
  });

  test.each([
    ['a comma', 'grey, with a cap', '"grey, with a cap"'],
    ['a quote', 'called "chack"', '"called ""chack"""'],
    ['a line break', 'asleep\nby the raft', '"asleep\nby the raft"'],
    ['a carriage return', 'asleep\rby the raft', '"asleep\rby the raft"'],
    ['all of them', '"a",\r\n"b"', '"""a"",\r\n""b"""'],
  ])('quotes a description with %s', (_, description, written) => {
    const csv = tableOf([{ description }]);
    expect(csv).toContain(`,${written},`);
    expect(isRfc4180(csv)).toBe(true);
    expect(rowsOf(csv)[0]?.occurrenceRemarks).toBe(description);
  });

  test('gives every entry back exactly, whatever the observer wrote', () => {
    const bits = fc.constantFrom(
      '"',
      ',',
      '\r',
      '\n',
      '\r\n',
      '=',
      '+',
      '-',
      '@',
      '\t',
      "'",
      ' ',
      'a',
      'é',
      '＝',
      ';',
    );
    const text = fc.oneof(
      fc.array(bits, { minLength: 1, maxLength: 8 }).map((all) => all.join('')),
      fc.string({ unit: 'grapheme', minLength: 1 }),
    );
    const observation = fc.record({ words: text, description: fc.option(text, { nil: null }) });
    fc.assert(
      fc.property(fc.array(observation, { maxLength: 6 }), text, (observations, name) => {
        const csv = tableOf(observations, placeOf({ name }));
        expect(isRfc4180(csv)).toBe(true);
        const rows = rowsOf(csv);
        expect(rows.map((row) => row.entryNumber)).toEqual(
          observations.map((_, at) => `${at + 1}`),
        );
        for (const [at, row] of rows.entries()) {
          expect(Object.keys(row)).toEqual(COLUMNS);
          expect(row.locality).toBe(safe(name));
          expect(row.verbatimIdentification).toBe(safe(observations[at]?.words ?? ''));
          expect(row.occurrenceRemarks).toBe(safe(observations[at]?.description ?? ''));
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('the table of entries, by OWASP on CSV injection', () => {
  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '＝1', '＋1', '－1', '＠x'])(
    '%j is no formula',
    (text) => {
      const [row] = rowsOf(tableOf([{ words: text, description: text }], placeOf({ name: text })));
      const cells = [row?.verbatimIdentification, row?.occurrenceRemarks, row?.locality];
      expect(cells).toEqual(Array(3).fill(`'${text}`));
    },
  );

  test.each(['1+1', 'a=b', ' =1', "'=1", '~', '3-4'])('%j is text and stays as it is', (text) => {
    const [row] = rowsOf(tableOf([{ words: text, description: text }]));
    expect([row?.verbatimIdentification, row?.occurrenceRemarks]).toEqual([text, text]);
  });

  test('numbers stay numbers: a longitude in the west keeps its sign and gets no apostrophe', () => {
    const csv = tableOf([{}]);
    expect(csv).toContain(',51.12345,-2.85432,');
    expect(rowsOf(csv)[0]).toMatchObject({ decimalLongitude: '-2.85432', individualCount: '3' });
  });
});

describe('a table in any form', () => {
  const form: fc.Arbitrary<TableForm> = fc.record({
    separator: fc.constantFrom(',' as const, ';' as const, '\t' as const),
    decimal: fc.constantFrom('.' as const, ',' as const),
    apostrophes: fc.boolean(),
  });
  const cell: fc.Arbitrary<Cell> = fc.oneof(
    fc.string({ unit: fc.constantFrom('"', ',', ';', '\t', '\r', '\n', '=', '-', 'a', 'é', '1') }),
    fc.integer(),
    fc.integer({ min: -1e6, max: 1e6 }).map((value) => value / 1e4),
  );

  test('gives back every cell, numbers with the decimal sign that was asked for', () => {
    const rows = fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(rows, form, (cells, how) => {
        const read: string[][] = parse(csvRows(cells, how), {
          record_delimiter: '\r\n',
          delimiter: how.separator,
        });
        const want = cells.map((row) =>
          row.map((each) => {
            if (typeof each === 'number') return String(each).replace('.', how.decimal);
            return how.apostrophes ? safe(each) : each;
          }),
        );
        expect(read).toEqual(want);
      }),
    );
  });

  test('writes a very small number without an exponent', () => {
    const how = { separator: ',', decimal: '.', apostrophes: true } as const;
    expect(csvRows([[1e-7, 2]], how)).toBe('0.0000001,2\r\n');
  });
});
