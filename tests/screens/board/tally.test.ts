import { describe, expect, test } from 'vitest';
import type { Board } from '../../../src/screens/board/board.ts';
import { largeDigits } from '../../../src/screens/board/digits.ts';
import { fewer, intervalOf, intervalStart, more } from '../../../src/screens/board/tally.ts';
import type { Session } from '../../../src/screens/field/session.ts';
import { type Count, readCount } from '../../../src/visit/count.ts';
import { epochOf } from '../../../src/visit/time.ts';
import { press } from '../field/drive.ts';
import { opened } from './model.ts';

const count = (text: string): Count => readCount(text) ?? { kind: 'present' };
const counts = (at: Session) => at.visit.entries.map((entry) => entry.count);

describe('a stroke more', () => {
  test.each([
    ['3', 2, '5'],
    ['~40', 10, '~50'],
    ['40+', 10, '50+'],
    ['10-15', 5, '15-20'],
    ['0', 1, '1'],
    ['9999999', 1, '9999999'],
  ])('makes %s with %d more %s', (from, by, to) => {
    expect(more(count(from), by)).toEqual(count(to));
  });

  test('makes present at least so many: some were there before', () => {
    expect(more({ kind: 'present' }, 2)).toEqual(count('2+'));
  });
});

describe('a stroke fewer', () => {
  test.each([
    ['3', 2, '1'],
    ['~40', 10, '~30'],
    ['40+', 10, '30+'],
    ['10-15', 5, '5-10'],
    ['10-15', 12, '0-3'],
  ])('makes %s with %d fewer %s', (from, by, to) => {
    expect(fewer(count(from), by)).toEqual(count(to));
  });

  test.each([
    ['3', 3],
    ['3', 100],
    ['~2', 5],
    ['10-15', 15],
    ['', 1],
  ])('leaves nothing of %s with %d fewer', (from, by) => {
    expect(fewer(count(from), by)).toBeNull();
  });
});

describe('intervals', () => {
  const at = (moment: string, minutes: 5 | 10 | 15 | 60) =>
    intervalOf(moment, { heading: 'SW', minutes });

  test('begin at the full hour and last so many minutes', () => {
    expect(at('2026-10-03T07:00:00+01:00', 15)).toBe(at('2026-10-03T07:14:59+01:00', 15));
    expect(at('2026-10-03T07:15:00+01:00', 15)).toBe(at('2026-10-03T07:14:59+01:00', 15) + 1);
    expect(at('2026-10-03T07:59:59+01:00', 60) + 1).toBe(at('2026-10-03T08:00:00+01:00', 60));
  });

  test('go on past midnight', () => {
    expect(at('2026-10-04T00:00:00+01:00', 5)).toBe(at('2026-10-03T23:59:59+01:00', 5) + 1);
  });

  // Time zones of the IANA database with half and quarter hours, from memory.
  test.each(['+05:30', '+05:45', '-03:30', '+10:30', '+00:00', '-11:00'])(
    'begin at the full hour of the clock at %s too, and are told so',
    (offset) => {
      for (const minutes of [5, 10, 15, 60] as const) {
        const begun = `2026-10-03T09:00:00${offset}`;
        const passing = { heading: 'SW', minutes } as const;
        expect(at(begun, minutes)).toBe(at(`2026-10-03T08:59:59${offset}`, minutes) + 1);
        expect(intervalStart(at(begun, minutes), passing, begun)).toBe(epochOf(begun));
      }
    },
  );

  // Summer time ends at 01:00 UTC on the last Sunday of October: Directive 2000/84/EC, from memory.
  test('do not run together in the hour that comes twice when the clocks go back', () => {
    expect(at('2026-10-25T01:20:00+00:00', 60)).toBe(at('2026-10-25T01:20:00+01:00', 60) + 1);
  });
});

describe('the line of a flock', () => {
  test('takes no stroke when its name is not certain: a sure bird stands apart', () => {
    const at = press(opened(), '<enter>coot 5?<enter>qq').session;
    expect(at.visit.entries.map((entry) => [entry.count, entry.uncertain])).toEqual([
      [count('5'), true],
      [count('2'), false],
    ]);
  });

  test('keeps what was told apart by sex: no fewer than those are left', () => {
    const at = press(opened(), '<enter>mallard 5 3m 1f<enter>FF').session;
    expect(counts(at)).toEqual([count('4')]);
    expect(at.message?.words).toBe('Of Mallard 3m 1f are told apart: Esc c changes that line.');
    expect(counts(press(at, '7F').session)).toEqual([count('4')]);
    expect(press(at, '7F').session.visit.entries[0]?.struck).not.toBeNull();
  });

  test('says when a count can hold no more', () => {
    const at = press(opened(), '<enter>coot 9999999<enter>q').session;
    expect(counts(at)).toEqual([count('9999999')]);
    expect(at.message).toEqual({ kind: 'problem', words: '9999999 is the most.' });
  });

  test('has the time of its first stroke, each flock its own', () => {
    const at = press(opened(), 'aaa aa').session;
    const times = at.visit.entries.map(({ time }) => epochOf(time));
    const begun = epochOf(at.visit.start);
    // A key a second, the first two of which opened the Board.
    expect(times).toEqual([begun + 3000, begun + 7000]);
  });
});

// Segments a to g as the bits 0 to 6, the usual encoding of seven-segment digits; from memory.
const SEGMENTS = [0x3f, 0x06, 0x5b, 0x4f, 0x66, 0x6d, 0x7d, 0x07, 0x7f, 0x6f];

test('large digits light the segments of a seven-segment display', () => {
  SEGMENTS.forEach((wanted, digit) => {
    const [top = '', middle = '', foot = ''] = largeDigits(String(digit));
    const lit = [top[1], middle[2], foot[2], foot[1], foot[0], middle[0], middle[1]];
    const bits = lit.reduce((sum, sign, bit) => sum + ((sign ?? ' ') === ' ' ? 0 : 2 ** bit), 0);
    expect(bits).toBe(wanted);
  });
});

test('large digits have room for the highest total with its signs in half a window', () => {
  for (const row of largeDigits('~9999999+')) expect(row.length).toBeLessThanOrEqual(40);
  expect(largeDigits('present')).toEqual(['', '', '']);
});

test('a Board keeps its flock apart from the lines logged before it was opened', () => {
  const at = press(press(opened(), 'q<escape>b').session, '<escape>bq').session;
  expect(counts(at)).toEqual([count('1'), count('1')]);
  expect((at.board as Board).flockAfter).toBe(1);
});
