import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { barRows } from '../../src/almanac/plots/bars.ts';
import { calendarRows } from '../../src/almanac/plots/calendar.ts';
import { lineRows, topOf, valueAt } from '../../src/almanac/plots/lines.ts';
import { MONTHS, YEARS } from './plotted.ts';

const COLUMNS = 60;

describe('Rows of text', () => {
  test('Bars are as long as their values, and a gap is no bar of length 0.', () => {
    expect(barRows(MONTHS, 40)).toEqual([
      'April |######                  1 of 4',
      'May   |####################### 12 of 12',
      'June  |                        0 of 3',
      'July  |                        no visits',
    ]);
  });

  test('A stepped line keeps its value until the next, each line has its sign and its name.', () => {
    expect(lineRows(YEARS, { columns: 40, rows: 11 })).toEqual([
      '50 |',
      '   |                                   o',
      '   |                                   x',
      '   |',
      '   |                ooooooooooooooooooo',
      '25 |',
      '   |    xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx',
      '   |',
      '   |oooooooooooooooo',
      '   |',
      ' 0 |',
      '   +------------------------------------',
      '    Jan             Jun              Dec',
      '    o 2025',
      '    x 2024',
    ]);
  });

  test('A year of visits has a row a month, as many signs as the month has days.', () => {
    const dates = [
      '2024-02-29',
      '2024-02-29',
      '2024-05-01',
      '2023-05-01',
      ...Array.from({ length: 11 }, () => '2024-12-31'),
    ];
    const rows = calendarRows(dates, 2024);
    expect(rows).toHaveLength(14);
    expect(rows[1]?.indexOf('30')).toBe(4 + 29);
    expect(rows[3]).toBe(`Feb ${'.'.repeat(28)}2       2`);
    expect(rows[6]).toBe(`May 1${'.'.repeat(30)}     1`);
    expect(rows[13]).toBe(`Dec ${'.'.repeat(30)}+    11`);
    expect(calendarRows([], 2023)[3]).toBe(`Feb ${'.'.repeat(28)}`);
  });

  const bars = fc.array(
    fc.record({
      label: fc.oneof(
        fc.constant('Tufted Duck'),
        fc.string({ maxLength: 40, unit: 'grapheme-ascii' }),
      ),
      value: fc.oneof(fc.constant(null), fc.double({ min: 0, max: 1e6, noNaN: true })),
      beside: fc.constantFrom('1 of 4', '', 'highest 1200 at Sallow Mere on 2025-05-01'),
    }),
    { maxLength: 12 },
  );

  test('No row of bars is wider than it may be, and all are ASCII.', () => {
    fc.assert(
      fc.property(bars, fc.integer({ min: 30, max: 120 }), (all, columns) => {
        const rows = barRows(all, columns);
        expect(rows).toHaveLength(all.length);
        for (const row of rows) {
          expect(stringWidth(row)).toBeLessThanOrEqual(columns);
          expect(row).toMatch(/^[\x20-\x7e]*$/);
        }
      }),
    );
  });

  test('A longer bar never stands for a smaller value, and any value has a sign.', () => {
    fc.assert(
      fc.property(bars, (all) => {
        // A sign in a label would be taken for a part of the bar.
        const plain = all.map((bar) => ({ ...bar, label: 'x' }));
        const lengths = barRows(plain, COLUMNS).map((row) => (row.match(/#/g) ?? []).length);
        for (const [at, one] of plain.entries()) {
          expect((lengths[at] ?? 0) > 0).toBe((one.value ?? 0) > 0);
          for (const [other, two] of plain.entries())
            if ((one.value ?? 0) > (two.value ?? 0))
              expect(lengths[at]).toBeGreaterThanOrEqual(lengths[other] ?? 0);
        }
      }),
    );
  });

  test('Wide letters in labels keep the bars in line.', () => {
    const rows = barRows(
      [
        { label: 'マガモ', value: 1, beside: '' },
        { label: 'Mallard', value: 1, beside: '' },
      ],
      COLUMNS,
    );
    const [one, two] = rows.map((row) => stringWidth(row.slice(0, row.indexOf('|'))));
    expect(one).toBe(two);
  });

  test('Lines stay within their columns, whatever their points.', () => {
    const points = fc
      .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 365 }), fc.integer({ min: 0, max: 5000 })), {
        selector: ([x]) => x,
        maxLength: 9,
      })
      .map((all) => all.sort(([one], [two]) => one - two));
    fc.assert(
      fc.property(fc.array(points, { maxLength: 8 }), fc.boolean(), (all, stepped) => {
        const series = all.map((each, at) => ({ name: `the year ${2000 + at}`, points: each }));
        const plot = { ...YEARS, series, from: 0, to: 365, stepped };
        for (const row of lineRows(plot, { columns: COLUMNS, rows: 12 }))
          expect(row.length).toBeLessThanOrEqual(COLUMNS);
        for (const [, y] of all.flat()) expect(y).toBeLessThanOrEqual(topOf(series));
      }),
    );
  });

  test('Between points a line is straight or stays, before the first there is none.', () => {
    const points = [
      [2, 10],
      [4, 20],
    ] as const;
    expect([1, 2, 3, 4, 5].map((x) => valueAt(points, x, false))).toEqual([null, 10, 15, 20, null]);
    expect([1, 2, 3, 4, 5].map((x) => valueAt(points, x, true))).toEqual([null, 10, 10, 20, null]);
  });
});
